// Where something stands in a file a person wrote.

/** Lines and columns count from 1; columns are UTF-16 units; the end is exclusive. `file` is relative to the project folder. */
export interface Place {
  file: string;
  line: number;
  column: number;
  endLine: number;
  endColumn: number;
}

/** A text of which single lines can be had. */
export interface Lines {
  readonly file: string;
  /** The text of one line (from 1) without its line end; empty beyond the last. */
  line(line: number): string;
  /** The whole of one line (from 1) as a place, without its line end. */
  wholeLine(line: number): Place;
}

/** A text with its name, able to turn offsets (UTF-16 units from 0) into places. */
export class Source implements Lines {
  readonly file: string;
  readonly text: string;
  #starts: number[] | undefined;

  constructor(file: string, text: string) {
    this.file = file;
    this.text = text;
  }

  /** The place of the half-open span of offsets [start, end). */
  place(start: number, end = start): Place {
    const a = this.#at(start);
    const b = this.#at(Math.max(start, end));
    return { file: this.file, line: a.line, column: a.column, endLine: b.line, endColumn: b.column };
  }

  /** The offset of a line and column, as `place` counts them; held within the text. */
  offset(line: number, column: number): number {
    const starts = this.#lines();
    const from = starts[Math.min(Math.max(line, 1), starts.length) - 1]!;
    return line > starts.length ? this.text.length : Math.min(from + column - 1, this.text.length);
  }

  /** The whole of one line (from 1) as a place, without its line end. */
  wholeLine(line: number): Place {
    const text = this.line(line);
    return { file: this.file, line, column: 1, endLine: line, endColumn: text.length + 1 };
  }

  /** The text of one line (from 1) without its line end; empty beyond the last. */
  line(line: number): string {
    const starts = this.#lines();
    const from = starts[line - 1];
    if (from === undefined) return '';
    return this.text.slice(from, starts[line] ?? this.text.length).replace(/\r?\n$|\r$/, '');
  }

  #at(offset: number): { line: number; column: number } {
    const starts = this.#lines();
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (starts[middle]! <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: offset - starts[low]! + 1 };
  }

  #lines(): number[] {
    if (this.#starts) return this.#starts;
    const starts = [0];
    for (let i = 0; i < this.text.length; i++) {
      const c = this.text.charCodeAt(i);
      if (c === 10 || (c === 13 && this.text.charCodeAt(i + 1) !== 10)) starts.push(i + 1);
    }
    return (this.#starts = starts);
  }
}

/** The name of an episode's file as its record writes it: what can be said of it wherever one works. */
export function nameInRecord(file: string): string {
  return file.split('/').slice(2).join('/') || file;
}

export function comparePlaces(a: Place, b: Place): number {
  return (a.file < b.file ? -1 : a.file > b.file ? 1 : 0) || a.line - b.line || a.column - b.column;
}
