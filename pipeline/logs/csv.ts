// A strict reader of comma-separated values (RFC 4180) that knows where every cell stands and goes on after a fault.
// Other delimiters, lone CR or LF line ends, blank lines and comment lines are taken too; nothing is ever repaired.
import type { Place, Source } from '../places/index.js';

export interface CsvOptions {
  /** One character; a comma by default. */
  delimiter?: string;
  /** Lines that begin with this are passed over. */
  comment?: string;
  /** Whole lines passed over at the start. */
  skip?: number;
}

export interface CsvFault {
  message: string;
  start: number;
  end: number;
  /** A quote never closed: the rest of the text is swallowed. */
  open?: boolean;
}

const quote = 34;
const cr = 13;
const lf = 10;

/**
 * Calls `row` with the cells of each record, the line it begins on (from 1) and its offset; `row` may return false to stop.
 * A record against the grammar is reported to `fault` and left out.
 */
export function scanCsv(
  text: string, options: CsvOptions,
  row: (cells: string[], line: number, offset: number) => boolean | void,
  fault: (f: CsvFault) => void,
): void {
  const delimiter = (options.delimiter ?? ',').charCodeAt(0);
  const { comment } = options;
  let at = 0;
  let line = 1;
  const end = text.length;
  const toNextLine = () => {
    while (at < end && text.charCodeAt(at) !== lf && text.charCodeAt(at) !== cr) at++;
    overLineEnd();
  };
  const overLineEnd = () => {
    if (at >= end) return;
    if (text.charCodeAt(at) === cr && text.charCodeAt(at + 1) === lf) at++;
    at++;
    line++;
  };
  for (let i = 0; i < (options.skip ?? 0) && at < end; i++) toNextLine();
  while (at < end) {
    const first = text.charCodeAt(at);
    if (first === lf || first === cr) {
      overLineEnd();
      continue;
    }
    if (comment && text.startsWith(comment, at)) {
      toNextLine();
      continue;
    }
    const start = at;
    const startLine = line;
    const cells: string[] = [];
    let bad: CsvFault | undefined;
    for (;;) {
      if (text.charCodeAt(at) === quote && at < end) {
        const opened = at++;
        let from = at;
        let cell = '';
        for (;;) {
          if (at >= end) {
            bad ??= { message: 'A quote is opened here and never closed', start: opened, end: opened + 1, open: true };
            break;
          }
          const c = text.charCodeAt(at);
          if (c === quote) {
            if (text.charCodeAt(at + 1) !== quote) break;
            cell += text.slice(from, at + 1);
            at += 2;
            from = at;
          } else {
            if (c === lf || (c === cr && text.charCodeAt(at + 1) !== lf)) line++;
            at++;
          }
        }
        cells.push(cell ? cell + text.slice(from, at) : text.slice(from, at));
        at = Math.min(end, at + 1);
        const next = at < end ? text.charCodeAt(at) : lf;
        if (next !== delimiter && next !== lf && next !== cr) {
          bad ??= { message: 'Text follows a closing quote; a quote inside a quoted cell is written twice', start: at, end: at + 1 };
          while (at < end && text.charCodeAt(at) !== delimiter && text.charCodeAt(at) !== lf && text.charCodeAt(at) !== cr) at++;
        }
      } else {
        const from = at;
        let c = -1;
        while (at < end && (c = text.charCodeAt(at)) !== delimiter && c !== lf && c !== cr) {
          if (c === quote) bad ??= { message: 'A quote stands inside a cell that does not begin with one; quote the whole cell and write inner quotes twice', start: at, end: at + 1 };
          at++;
        }
        cells.push(text.slice(from, at));
      }
      if (at < end && text.charCodeAt(at) === delimiter) at++;
      else break;
    }
    overLineEnd();
    if (bad) fault(bad);
    else if (row(cells, startLine, start) === false) return;
  }
}

/** The place of one cell (from 0) of the record that begins at `offset`; the whole record's end where it has no such cell. */
export function cellPlace(source: Source, offset: number, index: number, delimiter = ','): Place {
  const { text } = source;
  let at = offset;
  for (let i = 0; ; i++) {
    const from = at;
    if (text[at] === '"') {
      at++;
      while (at < text.length && (text[at] !== '"' || text[at + 1] === '"')) at += text[at] === '"' ? 2 : 1;
      at++;
    } else {
      while (at < text.length && text[at] !== delimiter && text[at] !== '\n' && text[at] !== '\r') at++;
    }
    if (i === index) return source.place(from, Math.max(at, from));
    if (text[at] !== delimiter) return source.place(at, at);
    at++;
  }
}
