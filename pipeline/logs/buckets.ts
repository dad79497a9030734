// A log of any length in a bounded number of buckets, each of samples that follow each other in one phase. A short log has one
// sample in each; when there are too many, every two that lie in one phase become one. They begin at whole multiples of their
// width, and where a phase begins: so the same rows lie together whatever the phases say, and whoever counts them.
import { Column } from './column.js';
import type { RowSink } from './row-reader.js';
import { earlySamples } from './usual-step.js';
import { widened } from './widened.js';

/** At most so many, besides the one that each change of the phase may cost; a longer log has at least half of them. */
export const mostBuckets = 16384;

const names = ['first', 'last', 'steps', 'lines', 'lastLines', 'positions', 'shifts', 'rows', 'runs'] as const;

export class Buckets implements RowSink {
  count = 0;
  /** Samples in all. */
  total = 0;
  readonly columns: readonly Column[];
  /** By bucket: seconds of its first and last sample; the longest step to a sample from the one before; lines of the first and last. */
  first!: Float64Array;
  last!: Float64Array;
  steps!: Float64Array;
  lines!: Float64Array;
  lastLines!: Float64Array;
  /** By bucket: where its first sample stands in the text, how far its clock had passed midnight, how many samples it has, and of which run of a phase. */
  positions!: Float64Array;
  shifts!: Float64Array;
  rows!: Float64Array;
  runs!: Float64Array;
  /** Times of the first samples. */
  readonly early: number[] = [];
  #width = 1;
  #most: number;
  #size: number;
  #before = NaN;

  /** `levels` says of each column whether it holds sound levels; `likely` is how many samples there may be; `column` makes one for so many buckets. */
  constructor(levels: readonly boolean[], likely = 1024, most = mostBuckets, column = (level: boolean, size: number, _index: number) => new Column(level, size)) {
    this.#most = most;
    this.#size = Math.max(1, Math.min(likely, most));
    // A log that surely is long need not begin with samples one by one.
    while (this.#width * most * 8 < likely) this.#width *= 2;
    this.columns = levels.map((l, i) => column(l, this.#size, i));
    for (const name of names) this[name] = new Float64Array(this.#size);
  }

  /** Whether each bucket is one sample. */
  get whole(): boolean {
    return this.#width === 1;
  }

  room(): number {
    return (this.#width - (this.total % this.#width)) % this.#width;
  }

  /** To be called once all is taken, before figures are asked for. */
  settle(): void {
    for (const c of this.columns) c.settle();
  }

  take(time: number, line: number, position: number, shift: number, run: number): number {
    let b = this.count - 1;
    if (b < 0 || this.total % this.#width === 0 || this.runs[b] !== run) b = this.#open(time, line, position, shift, run);
    if (this.total++ < earlySamples) this.early.push(time);
    this.rows[b]!++;
    this.last[b] = time;
    this.lastLines[b] = line;
    const step = time - this.#before;
    if (step > this.steps[b]!) this.steps[b] = step;
    this.#before = time;
    return b;
  }

  /** Cuts bucket `b` in two before the sample `at` (from 0), from its samples read again. */
  split(b: number, at: number, again: { times: readonly number[]; lines: readonly number[]; positions: readonly number[]; shifts: readonly number[]; values: readonly (readonly number[])[] }): void {
    const { times, lines } = again;
    if (this.count === this.#size) this.#grow(this.#size + 64);
    for (const name of names) this[name].copyWithin(b + 1, b, this.count);
    this.count++;
    this.last[b] = times[at - 1]!;
    this.lastLines[b] = lines[at - 1]!;
    this.rows[b] = at;
    this.first[b + 1] = times[at]!;
    this.lines[b + 1] = lines[at]!;
    this.rows[b + 1]! -= at;
    this.positions[b + 1] = again.positions[at]!;
    this.shifts[b + 1] = again.shifts[at]!;
    this.steps[b] = Math.max(this.steps[b]! > longest(times, 0, times.length) ? this.steps[b]! : 0, longest(times, 0, at));
    this.steps[b + 1] = longest(times, at - 1, times.length);
    this.columns.forEach((c, i) => c.split(b, again.values[i]!.slice(0, at), again.values[i]!.slice(at)));
  }

  #open(time: number, line: number, position: number, shift: number, run: number): number {
    if (this.count >= this.#most) {
      this.#fold();
      const b = this.count - 1;
      if (this.total % this.#width !== 0 && this.runs[b] === run) return b;
    }
    if (this.count === this.#size) this.#grow(Math.min(2 * this.#size, this.#most));
    const b = this.count++;
    this.first[b] = time;
    this.lines[b] = line;
    this.positions[b] = position;
    this.shifts[b] = shift;
    this.runs[b] = run;
    this.rows[b] = 0;
    this.steps[b] = 0;
    for (const c of this.columns) c.open(b);
    return b;
  }

  /** Every two buckets of one run that make a whole multiple, or one that is left alone; how many that makes. */
  #pairs(make: (to: number, a: number, b: number) => void): number {
    let to = 0;
    let end = 0;
    for (let a = 0; a < this.count; to++) {
      end += this.rows[a]!;
      const next = a + 1 < this.count && this.runs[a + 1] === this.runs[a] && end % (2 * this.#width) !== 0 ? a + 1 : a;
      if (next !== a) end += this.rows[next]!;
      make(to, a, next);
      a = next + 1;
    }
    return to;
  }

  #grow(size: number): void {
    this.#size = size;
    for (const c of this.columns) c.grow(size);
    for (const name of names) this[name] = widened(this[name], size);
  }

  #fold(): void {
    for (const c of this.columns) c.foldAll((column) => this.#pairs((to, a, b) => column.fold(to, a, b)));
    this.count = this.#pairs((to, a, b) => {
      this.steps[to] = Math.max(this.steps[a]!, this.steps[b]!);
      this.rows[to] = this.rows[a]! + (a === b ? 0 : this.rows[b]!);
      this.last[to] = this.last[b]!;
      this.lastLines[to] = this.lastLines[b]!;
      for (const name of ['first', 'lines', 'positions', 'shifts', 'runs'] as const) this[name][to] = this[name][a]!;
    });
    this.#width *= 2;
    // Of phases that change all the time little can be folded; each of them keeps its bucket.
    this.#most = Math.max(this.#most, Math.ceil(1.5 * this.count));
  }
}

function longest(times: readonly number[], from: number, to: number): number {
  let most = 0;
  for (let i = from + 1; i < to; i++) most = Math.max(most, times[i]! - times[i - 1]!);
  return most;
}
