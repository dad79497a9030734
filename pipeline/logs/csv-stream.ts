// Records of a CSV file of any length, read block by block. The grammar is that of `scanCsv`; here is only told where a record ends.
import type { Blocks } from './blocks.js';
import { type CsvFault, type CsvOptions, scanCsv } from './csv.js';
import type { Faults } from './faults.js';
import { type Place, Source } from '../places/index.js';

/** A record beyond this is no row of a log; most often it is a quote that nobody closed. */
const longest = 1024 * 1024;
const quote = 34;
const cr = 13;
const lf = 10;

/** Where the scan stands within a record: at the start of a cell, in it, in its quotes, behind a quote that may close it. */
const At = { start: 0, rest: 1, quotes: 2, closing: 3 } as const;

export class CsvStream {
  /** UTF-8; what is not read yet stands in [at, end), and a zero behind it. */
  bytes: Buffer;
  at = 0;
  end = 0;
  /** Line of `at`, from 1. */
  line: number;
  /** The record last read: its text without the line end, its first line, where it begins. */
  text = '';
  cells: string[] = [];
  recordLine = 0;
  recordPosition = 0;
  /** Offsets in `text`. */
  fault: CsvFault | undefined;
  readonly #blocks: Blocks;
  readonly #check: ((block: Uint8Array) => boolean) | undefined;
  readonly #delimiter: Uint8Array;
  readonly #comment: Uint8Array;
  readonly #options: CsvOptions;
  #next: number;
  #base: number;
  #state: number = At.start;
  #seen = 0;
  #skip: number;
  #broken = false;

  /** Reads on from a position that `position` gave before; `check` may refuse a block, and then nothing more is read. */
  constructor(blocks: Blocks, options: CsvOptions, from = 0, line = 1, check?: (block: Uint8Array) => boolean) {
    const encoder = new TextEncoder();
    this.#blocks = blocks;
    this.#check = check;
    this.#options = { delimiter: options.delimiter ?? ',' };
    this.#delimiter = encoder.encode(this.#options.delimiter);
    this.#comment = encoder.encode(options.comment ?? '');
    this.#skip = from === 0 ? options.skip ?? 0 : 0;
    this.#next = blocks.blockAt(from);
    this.#base = blocks.starts[this.#next]!;
    this.line = line;
    this.bytes = Buffer.alloc(blocks.longest + 64);
    if (this.more()) this.at = from - this.#base;
  }

  /** Whether a block was refused or could not be decoded. */
  get broken(): boolean {
    return this.#broken;
  }

  position(at = this.at): number {
    return this.#base + at;
  }

  /** One block more behind `end`; what was read already is let go. False at the end of the file. */
  more(): boolean {
    if (this.#broken || this.#next >= this.#blocks.count) return false;
    const left = this.end - this.at;
    const room = left + this.#blocks.longest + 1;
    if (room > this.bytes.length) {
      const wider = Buffer.alloc(Math.max(room, 2 * left));
      this.bytes.copy(wider, 0, this.at, this.end);
      this.bytes = wider;
    } else this.bytes.copyWithin(0, this.at, this.end);
    this.#base += this.at;
    this.at = 0;
    const length = this.#blocks.read(this.#next++, this.bytes, left);
    this.#broken = length === undefined || this.#check?.(this.bytes.subarray(left, left + length)) === false;
    this.end = left + (this.#broken ? 0 : length!);
    this.bytes[this.end] = 0;
    return !this.#broken;
  }

  /** Passes over what is no record, and reads the next one. */
  next(): 'row' | 'fault' | 'end' {
    for (; this.#skip > 0 && this.#some(); this.#skip--) this.#overLine();
    for (;;) {
      if (!this.#some()) return 'end';
      const c = this.bytes[this.at]!;
      if (c === lf || c === cr) this.#overLineEnd();
      else if (this.#comment.length > 0 && c === this.#comment[0] && this.#begins(this.#comment)) this.#overLine();
      else return this.#record();
    }
  }

  /** Over the rest of a line and its end; false at the end of the file. */
  overLine(): boolean {
    if (!this.#some()) return false;
    this.#overLine();
    return true;
  }

  /** Without its line end. */
  restOfLine(): string {
    for (let i = this.at; ; i++) {
      while (i === this.end) {
        const done = i - this.at;
        if (!this.more()) return this.bytes.toString('utf8', this.at, this.end);
        i = this.at + done;
      }
      const c = this.bytes[i]!;
      if (c === lf || c === cr) return this.bytes.toString('utf8', this.at, i);
    }
  }

  /** A place in the record last read, as a place in the file. */
  inRecord(file: string, find: (record: Source) => Place): Place {
    const place = find(new Source(file, this.text));
    const before = this.recordLine - 1;
    return { ...place, line: place.line + before, endLine: place.endLine + before };
  }

  /** Tells the fault of the record last read. */
  tell(faults: Faults, file: string): void {
    const f = this.fault!;
    faults.add(f.open ? 'cut' : 'form', f.open ? 'log-cut-off' : 'log-form', 'error', () => this.inRecord(file, (s) => s.place(f.start, f.end)), f.message);
  }

  #some(): boolean {
    while (this.at === this.end) if (!this.more()) return false;
    return true;
  }

  #begins(word: Uint8Array): boolean {
    while (this.end - this.at < word.length) if (!this.more()) return false;
    return word.every((b, i) => this.bytes[this.at + i] === b);
  }

  #overLine(): void {
    while (this.#some()) {
      const c = this.bytes[this.at]!;
      if (c === lf || c === cr) return this.#overLineEnd();
      this.at++;
    }
  }

  #overLineEnd(): void {
    if (!this.#some()) return;
    const first = this.bytes[this.at++];
    if (first === cr && this.#some() && this.bytes[this.at] === lf) this.at++;
    this.line++;
  }

  #record(): 'row' | 'fault' {
    this.#state = At.start;
    this.#seen = 0;
    let end = this.#endOfRecord();
    while (end < 0) {
      if (this.end - this.at > longest) return this.#tooLong();
      end = this.more() ? this.#endOfRecord() : this.end;
    }
    this.#take(end);
    this.at = end;
    this.line += linesIn(this.text);
    this.#overLineEnd();
    return this.fault ? 'fault' : 'row';
  }

  #take(end: number): void {
    this.text = this.bytes.toString('utf8', this.at, end);
    this.recordLine = this.line;
    this.recordPosition = this.position();
    this.fault = undefined;
    scanCsv(this.text, this.#options, (cells) => {
      this.cells = cells;
      return false;
    }, (f) => (this.fault ??= f));
  }

  /** Goes on from where it stood; -1 where the bytes at hand do not hold the end. */
  #endOfRecord(): number {
    const { bytes, end } = this;
    const [delimiter, ...others] = this.#delimiter;
    let state = this.#state;
    let i = this.at + this.#seen;
    for (; i < end; i++) {
      const c = bytes[i]!;
      if (state === At.quotes) {
        if (c === quote) state = At.closing;
      } else if (state === At.closing && c === quote) state = At.quotes;
      else if (c === lf || c === cr) return i;
      else if (c === delimiter && i + others.length >= end) break;
      else if (c === delimiter && others.every((b, j) => bytes[i + 1 + j] === b)) state = At.start;
      else state = state === At.start && c === quote && !others.includes(c) ? At.quotes : At.rest;
    }
    this.#state = state;
    this.#seen = i - this.at;
    return -1;
  }

  /** Over the rest of it, of which nothing is kept. */
  #tooLong(): 'fault' {
    this.#take(this.end);
    const { fault } = this;
    const quoted = this.#state === At.quotes;
    this.line += linesIn(this.text);
    for (let end = -1; end < 0;) {
      const before = this.bytes[this.end - 1];
      this.at = this.end;
      this.#seen = 0;
      if (!this.more()) {
        this.fault = fault?.open ? fault : tooLong(fault, quoted);
        return 'fault';
      }
      end = this.#endOfRecord();
      this.line += linesIn(this.bytes.toString('latin1', this.at, end < 0 ? this.end : end), before);
      if (end >= 0) this.at = end;
    }
    this.fault = tooLong(fault, quoted);
    this.#overLineEnd();
    return 'fault';
  }
}

function tooLong(fault: CsvFault | undefined, quoted: boolean): CsvFault {
  if (fault && !fault.open) return fault;
  return { message: `${quoted ? 'A quote is opened here, and the cell' : 'The line that begins here'} goes on for more than 1 MB; that is no row of a log`, start: fault?.start ?? 0, end: fault?.end ?? 1 };
}

/** Line ends in a text that follows the character `before`; CR LF is one. */
function linesIn(text: string, before = 0): number {
  let n = 0;
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c === lf ? (i > 0 ? text.charCodeAt(i - 1) : before) !== cr : c === cr) n++;
  }
  return n;
}
