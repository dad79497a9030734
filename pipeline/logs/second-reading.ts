// The samples of one bucket, read from the file again where its figures are not enough.
import type { Buckets } from './buckets.js';
import type { LogLayout } from './layout.js';
import type { LogColumns } from './log-columns.js';
import type { LogText } from './log-text.js';
import { missing, odd, powers } from './plain-row.js';
import { type ColumnSink, RowReader, type RowSink } from './row-reader.js';

export interface Samples {
  times: number[];
  lines: number[];
  positions: number[];
  shifts: number[];
  /** By column; NaN where there is no value. */
  values: number[][];
}

export function readAgain(text: LogText, layout: LogLayout, columns: LogColumns, buckets: Buckets, bucket: number, first: number): Samples {
  let before = 0;
  for (let b = 0; b < bucket; b++) before += buckets.rows[b]!;
  const kept = new Kept(columns.at.length);
  const stream = text.rowsFrom(layout, buckets.positions[bucket]!, buckets.lines[bucket]!);
  new RowReader(stream, layout, columns, kept, text.file, undefined, { rows: before, first, shift: buckets.shifts[bucket]! }).run(before + buckets.rows[bucket]!);
  return kept;
}

class Kept implements RowSink, Samples {
  times: number[] = [];
  lines: number[] = [];
  positions: number[] = [];
  shifts: number[] = [];
  readonly values: number[][];
  readonly columns: ColumnSink[];

  constructor(columns: number) {
    this.values = Array.from({ length: columns }, () => []);
    this.columns = this.values.map((list) => ({
      bad: 0,
      add: (row, digits, decimals) => { list[row] = digits / powers[decimals]!; },
      addNumber: (row, value) => { list[row] = value; },
      addPlain: (row, plain, from, count) => {
        for (let i = 0; i < count; i++) {
          const d = plain.decimals[from + i]!;
          if (d !== missing) list[row + i] = d === odd ? plain.digits[from + i]! : plain.digits[from + i]! / powers[d]!;
        }
      },
    }));
  }

  room(): number {
    return Infinity;
  }

  take(time: number, line: number, position: number, shift: number): number {
    for (const list of this.values) list.push(NaN);
    this.lines.push(line);
    this.positions.push(position);
    this.shifts.push(shift);
    return this.times.push(time) - 1;
  }
}
