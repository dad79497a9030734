// The rows of a log one after another, with their times, each value handed on as it is read; nothing of a row is kept.
import type { Place } from '../places/index.js';
import { clockSeconds, isoSeconds, NumberCells } from './cells.js';
import { cellPlace } from './csv.js';
import type { CsvStream } from './csv-stream.js';
import type { Faults } from './faults.js';
import type { ColumnName, LogLayout } from './layout.js';
import { count, type LogColumns, wantedColumns } from './log-columns.js';
import { batch, number, odd, PlainRow, powers } from './plain-row.js';

export interface RowSink {
  /** How many rows of the same run can follow the last one before `take` must be told of values first. */
  room(): number;
  /** Where the values of the next row go; `run` is that of its phase, counted from 1 as `RowReader.runs` has them, 0 where there is no phase column. */
  take(time: number, line: number, position: number, shift: number, run: number): number;
  readonly columns: readonly ColumnSink[];
}

export interface ColumnSink {
  /** Cells that hold something else than a number. */
  bad: number;
  add(row: number, digits: number, decimals: number, line: number): void;
  addNumber(row: number, value: number, decimals: number, line: number): void;
  /** `count` rows from `row` on, of lines that follow each other, as `PlainRow` read them, from offset `from` on. */
  addPlain(row: number, plain: PlainRow, from: number, count: number, line: number): void;
}

const day = 86400;

export class RowReader {
  /** Rows read so far, those before the start included. */
  rows: number;
  /** What the phase column says, of each stretch of rows that it says the same of. */
  readonly runs: string[] = [];
  readonly #stream: CsvStream;
  readonly #layout: LogLayout;
  readonly #columns: LogColumns;
  readonly #sink: RowSink;
  readonly #faults: Faults | undefined;
  readonly #file: string;
  readonly #wanted: readonly ColumnName[];
  readonly #slots: Uint8Array;
  readonly #timeSlot: number;
  readonly #factor: number;
  readonly #plain: PlainRow | undefined;
  readonly #cells: NumberCells;
  #said: Uint8Array = new Uint8Array(0);
  #previous = NaN;
  #first: number;
  #shift: number;
  /** Plain rows whose values are not handed on yet: how many, how many more there may be, and where the first of them goes. */
  #pending = 0;
  #room = 0;
  #pendingAt = 0;
  #pendingLine = 0;
  #ragged: { place: Place; cells: number } | undefined;

  /** Without `faults` it is a second reading, from a row that the first took; `first` is then the time that counts as none. */
  constructor(stream: CsvStream, layout: LogLayout, columns: LogColumns, sink: RowSink, file: string, faults?: Faults, from = { rows: 0, first: NaN, shift: 0 }) {
    this.#stream = stream;
    this.#layout = layout;
    this.#columns = columns;
    this.#sink = sink;
    this.#file = file;
    this.#faults = faults;
    this.#wanted = wantedColumns(layout);
    this.rows = from.rows;
    this.#first = from.first;
    this.#shift = from.shift;
    this.#cells = new NumberCells(layout.decimalComma);
    this.#factor = layout.time?.kind === 'elapsed' ? layout.time.unit.factor.toNumber() : 1;
    const { kinds } = columns;
    this.#slots = Uint8Array.from(columns.at, (at) => (kinds?.[at] ?? number) - number);
    this.#timeSlot = columns.timeAt < 0 ? 0 : (kinds?.[columns.timeAt] ?? number) - number;
    if (kinds && layout.delimiter.charCodeAt(0) < 128) {
      this.#plain = new PlainRow(kinds, {
        delimiter: layout.delimiter.charCodeAt(0), comment: layout.comment ? new TextEncoder().encode(layout.comment)[0]! : -1,
        decimalComma: layout.decimalComma, missing: layout.missing, mayLackLast: columns.headings?.at(-1) === '',
      });
    }
  }

  /** The time of the first row, where times are counted from it. */
  get first(): number {
    return this.#first;
  }

  /** Reads to the end, or until so many rows are read. */
  run(until = Infinity): void {
    while (this.rows < until) {
      while (this.rows < until && this.#plainRow());
      this.#handOn();
      if (this.rows < until && !this.#strictRow()) break;
    }
  }

  #handOn(): void {
    if (this.#pending === 0) return;
    const { columns } = this.#sink;
    for (let i = 0; i < columns.length; i++) columns[i]!.addPlain(this.#pendingAt, this.#plain!, this.#slots[i]! * batch, this.#pending, this.#pendingLine);
    this.#pending = 0;
  }

  /** Passes over so many records. */
  passOver(records: number): void {
    for (let left = records; left > 0;) {
      const kind = this.#stream.next();
      if (kind === 'end') return;
      if (kind === 'row') left--;
      else if (this.#faults) this.#stream.tell(this.#faults, this.#file);
    }
  }

  /** What the last lines turn out to be when nothing follows them. */
  finish(): void {
    const r = this.#ragged;
    if (r && r.cells > this.#columns.width) this.#tellRagged();
    else if (r) this.#faults?.add('cut', 'log-cut-off', 'error', () => r.place, `the log breaks off here: the last line has ${count(r.cells, 'cell')} of ${this.#columns.width}`);
  }

  #plainRow(): boolean {
    const plain = this.#plain;
    if (!plain) return false;
    const stream = this.#stream;
    let r = this.#pending;
    const next = plain.read(stream.bytes, stream.at, stream.end, r);
    if (next === 0) return false;
    const { time } = this.#layout;
    let t = this.rows;
    if (time?.kind === 'steps') t = this.rows * time.seconds;
    else if (time) {
      const read = time.kind === 'elapsed' ? this.#elapsed(plain, r) * this.#factor : this.#stamp(plain, time.kind);
      t = read - this.#first + this.#shift;
      // Not a time, the first one, or one that does not go on: all that is for the strict reading.
      if (!(t > this.#previous || (this.#previous !== this.#previous && t === t))) return false;
      this.#previous = t;
    }
    if (this.#ragged) this.#tellRagged();
    const run = this.runs.length;
    if (this.#columns.phaseAt >= 0) this.#phaseBytes(plain);
    if (r > 0 && (r === batch - 1 || this.#room === 0 || this.runs.length !== run)) {
      this.#handOn();
      plain.move(r);
      r = 0;
    }
    const { line } = stream;
    const at = this.#sink.take(t, line, stream.position(), this.#shift, this.runs.length);
    this.rows++;
    if (r === 0) {
      this.#pendingAt = at;
      this.#pendingLine = line;
      this.#room = this.#sink.room();
    } else this.#room--;
    this.#pending = r + 1;
    stream.at = next;
    stream.line = line + 1;
    return true;
  }

  #elapsed(plain: PlainRow, r: number): number {
    const at = this.#timeSlot * batch + r;
    const d = plain.decimals[at]!;
    return d < odd ? plain.digits[at]! / powers[d]! : d === odd ? plain.digits[at]! : NaN;
  }

  #stamp(plain: PlainRow, kind: 'clock' | 'iso'): number {
    const text = this.#stream.bytes.toString('latin1', plain.from[this.#columns.timeAt], plain.to[this.#columns.timeAt]);
    return (kind === 'clock' ? clockSeconds(text) : isoSeconds(text)) ?? NaN;
  }

  #phaseBytes(plain: PlainRow): void {
    const [from, to] = [plain.from[this.#columns.phaseAt]!, plain.to[this.#columns.phaseAt]!];
    const { bytes } = this.#stream;
    const said = this.#said;
    let same = said.length === to - from && this.runs.length > 0;
    for (let i = 0; same && i < said.length; i++) same = bytes[from + i] === said[i];
    if (!same) {
      this.#said = new Uint8Array(bytes.subarray(from, to));
      this.#phase(bytes.toString('utf8', from, to).trim());
    }
  }

  #phase(said: string): void {
    if (this.runs.length === 0 || this.runs.at(-1) !== said) this.runs.push(said);
  }

  /** False at the end of the log. */
  #strictRow(): boolean {
    const stream = this.#stream;
    const kind = stream.next();
    if (kind === 'end') return false;
    if (kind === 'fault') {
      if (this.#faults) stream.tell(this.#faults, this.#file);
      return true;
    }
    const { width, headings } = this.#columns;
    const row = stream.cells;
    if (this.#ragged) this.#tellRagged();
    // Loggers end each line, or only the headings, with a delimiter; the cell behind it is no cell.
    const spare = row.length === width + 1 && row[width] === '' ? 1 : row.length === width - 1 && headings?.[width - 1] === '' ? -1 : 0;
    if (row.length - spare !== width) {
      this.#ragged = { place: stream.inRecord(this.#file, (s) => s.wholeLine(1)), cells: row.length };
      return true;
    }
    const t = this.#time(row);
    if (t === undefined) return true;
    const line = stream.recordLine;
    if (this.#columns.phaseAt >= 0) {
      const said = row[this.#columns.phaseAt] ?? '';
      this.#said = new TextEncoder().encode(said);
      this.#phase(said.trim());
    }
    const at = this.#sink.take(t, line, stream.recordPosition, this.#shift, this.runs.length);
    this.rows++;
    this.#columns.at.forEach((column, i) => this.#cell(row[column] ?? '', column, i, at, line));
    return true;
  }

  #cell(text: string, column: number, i: number, at: number, line: number): void {
    const value = this.#cells.read(text);
    const sink = this.#sink.columns[i]!;
    if (!Number.isNaN(value)) return sink.addNumber(at, value, this.#cells.decimals, line);
    const trimmed = text.trim();
    if (trimmed === '' || this.#layout.missing.has(trimmed)) return;
    sink.bad++;
    if (this.#faults) badCell(this.#faults, i, trimmed, this.#wanted[i]!, () => this.#cellPlace(column), this.#layout.decimalComma);
  }

  /** Seconds of a row; undefined where its cell is no time, and the row does not count. */
  #time(row: readonly string[]): number | undefined {
    const { time } = this.#layout;
    const { timeAt } = this.#columns;
    if (time?.kind === 'steps') return this.rows * time.seconds;
    if (!time || timeAt < 0) return this.rows;
    const text = row[timeAt] ?? '';
    const read = time.kind === 'elapsed' ? this.#cells.read(text) * this.#factor : (time.kind === 'clock' ? clockSeconds(text) : isoSeconds(text)) ?? NaN;
    const place = (): Place => this.#cellPlace(timeAt);
    if (Number.isNaN(read)) {
      this.#faults?.add('time', 'log-time', 'error', place, `"${text}" is not a time (${time.kind === 'elapsed' ? `a number of ${time.unit.many}` : time.kind === 'clock' ? 'h:m:s' : '2026-03-14T10:00:00'})${time.kind === 'elapsed' && !this.#layout.decimalComma && /^\d+,\d+$/.test(text.trim()) ? '; it has a decimal comma: say decimal: comma' : ''}`, { said: text });
      return undefined;
    }
    if (Number.isNaN(this.#first)) this.#first = time.kind === 'elapsed' && read < day ? 0 : read;
    let t = read - this.#first + this.#shift;
    if (time.kind === 'clock' && t < this.#previous - day / 2) {
      this.#shift += day;
      t += day;
    }
    if (t < this.#previous) this.#faults?.add('order', 'log-time-order', 'error', place, `the time goes back here, from ${this.#previous - 0} s to ${t} s`, { said: text });
    else if (t === this.#previous) this.#faults?.add('twice', 'log-time-twice', 'warning', place, `the time ${text} stands on the line before too`, { said: text });
    this.#previous = t;
    return t;
  }

  #tellRagged(): void {
    const r = this.#ragged!;
    this.#faults?.add('ragged', 'log-ragged', 'error', () => r.place, `this line has ${count(r.cells, 'cell')}, the log has ${count(this.#columns.width, 'column')}${r.cells > this.#columns.width && this.#layout.delimiter === ',' ? '; a decimal comma splits a number in two, and cannot stand in a log whose columns are separated by commas' : ''}`);
    this.#ragged = undefined;
  }

  #cellPlace(column: number): Place {
    return this.#stream.inRecord(this.#file, (s) => cellPlace(s, 0, column, this.#layout.delimiter));
  }
}

function badCell(faults: Faults, i: number, text: string, at: ColumnName, place: () => Place, decimalComma: boolean): void {
  if (/^[+-]?(nan|inf(inity)?|1\.#\w+)$/i.test(text)) {
    faults.add(`finite ${i}`, 'log-not-finite', 'error', place, `"${text}" in column "${at.name}" is not a finite number; say missing: [${text}] if it stands for "no value"`, { said: text });
    return;
  }
  const comma = !decimalComma && /^[+-]?\d+,\d+$/.test(text);
  const point = decimalComma && /^[+-]?\d+\.\d+$/.test(text);
  const withUnit = !comma && !point && !/^[+-]?0x/i.test(text) && /^[+-]?\d+([.,]\d+)?\s*[°%\p{L}]/u.test(text);
  faults.add(`value ${i}`, 'log-value', 'error', place, `"${text}" in column "${at.name}" is not a number${comma ? '; it has a decimal comma: say decimal: comma' : point ? '; it has a decimal point: say decimal: point' : withUnit ? '; a unit stands behind it, and the record says the unit of a column' : ''}`, { said: text });
}
