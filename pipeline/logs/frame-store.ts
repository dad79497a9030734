// Every frame of a log with its line, where figures need them in their order.
import { odd, type PlainRow, powers } from './plain-row.js';
import type { ColumnSink, RowSink } from './row-reader.js';
import { earlySamples } from './usual-step.js';
import { widened } from './widened.js';

/** Frames between two whose position in the text is kept. */
const anchored = 4096;

export class FrameStore implements RowSink, ColumnSink {
  total = 0;
  filled = 0;
  bad = 0;
  decimals = 0;
  readonly anchorLines: number[] = [];
  readonly anchorPositions: number[] = [];
  /** Rows whose time is so much later than that of the row before, and by how much, in seconds. */
  readonly jumps: { row: number; by: number }[] = [];
  /** Times of the first rows, each once. */
  readonly early: number[] = [];
  readonly columns: readonly [this] = [this];
  readonly #jump: number;
  #before = NaN;
  #values = new Float64Array(1024);
  #lines = new Float64Array(1024);

  /** `jump` is the least that is kept of the times; of a log without times it is infinite. */
  constructor(jump = Infinity) {
    this.#jump = jump;
  }

  get values(): Float64Array {
    return this.#values.subarray(0, this.total);
  }

  get lines(): Float64Array {
    return this.#lines.subarray(0, this.total);
  }

  take(time: number, line: number, position: number): number {
    const row = this.total++;
    if (row === this.#values.length) {
      this.#values = widened(this.#values, 2 * row);
      this.#lines = widened(this.#lines, 2 * row);
    }
    this.#values[row] = NaN;
    this.#lines[row] = line;
    if (row % anchored === 0) {
      this.anchorLines.push(line);
      this.anchorPositions.push(position);
    }
    const by = time - this.#before;
    if (by > this.#jump) this.jumps.push({ row, by });
    if (this.early.length < earlySamples && time !== this.#before) this.early.push(time);
    this.#before = time;
    return row;
  }

  add(row: number, digits: number, decimals: number): void {
    this.addNumber(row, digits / powers[decimals]!, decimals);
  }

  room(): number {
    return Infinity;
  }

  addPlain(row: number, plain: PlainRow, from: number, count: number): void {
    for (let i = 0; i < count; i++) {
      const d = plain.decimals[from + i]!;
      if (d < odd) this.add(row + i, plain.digits[from + i]!, d);
      else if (d === odd) this.addNumber(row + i, plain.digits[from + i]!, plain.oddDecimals[from + i]!);
    }
  }

  addNumber(row: number, value: number, decimals: number): void {
    this.#values[row] = value;
    this.filled++;
    if (decimals > this.decimals) this.decimals = decimals;
  }
}
