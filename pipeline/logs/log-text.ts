// The text of a log, of which no more than a block is held: read in order by its rows, and by line where a finding speaks of one.
import { isAscii } from 'node:buffer';
import { type Finding, type Lines, nameInRecord, type Place } from '../places/index.js';
import { Blocks, usualBlock } from './blocks.js';
import { type Bytes, bytesOf, stretch } from './bytes.js';
import { CsvStream } from './csv-stream.js';
import { badUtf8, chooseEncoding, type Encoding, invalid } from './encoding.js';
import type { LogLayout } from './layout.js';

export class LogText implements Lines {
  readonly file: string;
  readonly #bytes: Bytes;
  readonly #blocks: Blocks;
  readonly #said: Encoding;
  readonly #mark: number;
  /** Lines whose position is known, ascending, and these positions. */
  #anchors: { lines: ArrayLike<number>; positions: ArrayLike<number>; count: number } = { lines: [1], positions: [0], count: 1 };

  private constructor(file: string, bytes: Bytes, blocks: Blocks, said: Encoding, mark: number) {
    this.file = file;
    this.#bytes = bytes;
    this.#blocks = blocks;
    this.#said = said;
    this.#mark = mark;
  }

  /** `block` is how many bytes are held at a time. */
  static open(file: string, from: Bytes | Uint8Array, encoding?: Encoding, block = usualBlock): LogText | Finding {
    const bytes = bytesOf(from);
    const chosen = chooseEncoding(file, stretch(bytes, 0, 200), bytes.size, encoding);
    if ('code' in chosen) return chosen;
    return new LogText(file, bytes, new Blocks(bytes, chosen.label, chosen.mark, block), chosen.said, chosen.mark);
  }

  /** How many lines it has, if they are all like the first ones. */
  get likelyLines(): number {
    const head = stretch(this.#bytes, 0, usualBlock);
    let ends = 1;
    for (const b of head) if (b === 10) ends++;
    return Math.ceil((this.#bytes.size * ends) / Math.max(1, head.length));
  }

  /** Where others can read it as it is; undefined where it is not plain UTF-8 on the disk. */
  get plainFile(): { path: string; size: number } | undefined {
    const { path, size } = this.#bytes;
    return path === undefined || this.#said !== 'utf-8' || this.#mark > 0 ? undefined : { path, size };
  }

  /** Whether its bytes still are those that were read, looked at anew. */
  unchanged(): boolean {
    stretch(this.#bytes, 0, 1);
    return this.trouble === undefined;
  }

  /** Its rows from the start, the text being held to its encoding. */
  rows(layout: LogLayout): CsvStream {
    return new CsvStream(this.#blocks, layout, 0, 1, this.#said === 'utf-8' ? utf8Check() : undefined);
  }

  /** Its rows from one on that stands at a known position. */
  rowsFrom(layout: LogLayout, position: number, line: number): CsvStream {
    return new CsvStream(this.#blocks, layout, position, line);
  }

  /** Why its bytes can no longer be had, if so: then nothing that was read of it counts. */
  get trouble(): Finding | undefined {
    const { trouble } = this.#bytes;
    return trouble === undefined ? undefined : { code: 'file-missing', severity: 'error', place: this.top(), said: this.file, subject: this.file, message: `The file ${nameInRecord(this.file)} cannot be read: ${trouble}` };
  }

  /** That, or that it is not in its encoding, once `stream` has been read to the end. */
  troubleIn(stream: CsvStream): Finding | undefined {
    if (this.trouble) return this.trouble;
    if (!stream.broken && !(this.#said === 'utf-8' && this.#endsCut())) return undefined;
    return this.#said === 'utf-8' ? this.#badByte() : invalid(this.file, this.#said);
  }

  anchor(lines: ArrayLike<number>, positions: ArrayLike<number>, count: number): void {
    if (count > 0) this.#anchors = { lines, positions, count };
  }

  /** One line (from 1) without its line end; empty beyond the last. */
  line(n: number): string {
    const { lines, positions, count } = this.#anchors;
    let low = 0;
    let high = count - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (lines[middle]! <= n) low = middle;
      else high = middle - 1;
    }
    const known = lines[low]! <= n;
    const stream = new CsvStream(this.#blocks, {}, known ? positions[low] : 0, known ? lines[low] : 1);
    while (stream.line < n) if (!stream.overLine()) return '';
    return stream.restOfLine();
  }

  /** The whole of one line as a place, without its line end. */
  wholeLine(n: number): Place {
    return { file: this.file, line: n, column: 1, endLine: n, endColumn: this.line(n).length + 1 };
  }

  /** Whether its last line has a line end. */
  get isEnded(): boolean {
    const { size } = this.#bytes;
    const wide = this.#said.startsWith('utf-16');
    return size === 0 || stretch(this.#bytes, Math.max(0, size - (wide ? 2 : 1)), size).some((b) => b === 10 || b === 13);
  }

  top(): Place {
    return { file: this.file, line: 1, column: 1, endLine: 1, endColumn: 1 };
  }

  #endsCut(): boolean {
    const tail = stretch(this.#bytes, Math.max(this.#mark, this.#bytes.size - 4), this.#bytes.size);
    let i = tail.length - 1;
    while (i > 0 && tail[i]! >= 0x80 && tail[i]! < 0xc0) i--;
    const lead = tail[i] ?? 0;
    return lead >= 0xc0 && tail.length - i < (lead >= 0xf0 ? 4 : lead >= 0xe0 ? 3 : 2);
  }

  /** Looked for again, line by line, so that nothing need be kept for the case. */
  #badByte(): Finding {
    const size = usualBlock;
    let lineStart = 0;
    let lines = 0;
    for (let from = 0; from < this.#bytes.size; from += size) {
      const part = stretch(this.#bytes, lineStart, from + size + 4);
      if (!goesOn(part, from + size + 4 >= this.#bytes.size)) return badUtf8(this.file, part, lines);
      const block = stretch(this.#bytes, from, from + size + 1);
      for (let i = 0; i < Math.min(size, block.length); i++) {
        if (block[i] !== 10 && (block[i] !== 13 || block[i + 1] === 10)) continue;
        lines++;
        lineStart = from + i + 1;
      }
    }
    return badUtf8(this.file, stretch(this.#bytes, lineStart, this.#bytes.size), lines);
  }
}

/** Whether a stretch is good UTF-8; one that is not the last may break off within a character. */
function goesOn(bytes: Uint8Array, last: boolean): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: !last });
    return true;
  } catch {
    return false;
  }
}

function utf8Check(): (block: Uint8Array) => boolean {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let plain = true;
  return (block) => {
    const ascii = isAscii(block);
    if (ascii && plain) return true;
    try {
      decoder.decode(block, { stream: true });
      plain = ascii;
      return true;
    } catch {
      return false;
    }
  };
}

