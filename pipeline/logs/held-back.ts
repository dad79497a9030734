// Where a clock is held back, sample by sample: in a long log each bucket may hold both, and its means tell neither.
import type { BucketFigures } from './bucket-figures.js';
import type { ReadLog } from './read-log.js';

export interface Watched {
  /** In the order of the layout's columns. */
  index: number;
  values: Float64Array;
  figures: Pick<BucketFigures, 'low' | 'high' | 'filledIn'>;
}

/** By bucket: 1 where held back, 0 where not, at its first and its last sample; seconds in between. NaN where nothing is known. */
export interface Held {
  first: Float64Array;
  last: Float64Array;
  area: Float64Array;
}

/** Held back is a sample whose clock is under `below` while one of `limits` stands at `least` or above. A bucket that may hold both is read again. */
export function heldBack(log: ReadLog, clock: Watched, below: number, limits: readonly { column: Watched; least: number }[]): Held {
  const n = log.rows.length;
  const held: Held = { first: new Float64Array(n).fill(NaN), last: new Float64Array(n).fill(NaN), area: new Float64Array(n) };
  const state = (c: number, of: (column: Watched) => number): number => {
    const seen = limits.filter(({ column }) => !Number.isNaN(of(column)));
    return Number.isNaN(c) || seen.length === 0 ? NaN : c < below && seen.some(({ column, least }) => of(column) >= least) ? 1 : 0;
  };
  for (let b = 0; b < n; b++) {
    const whole = log.rows[b] === 1 ? state(clock.values[b]!, ({ values }) => values[b]!) : throughout(log, b, clock, below, limits);
    if (whole !== undefined) {
      held.first[b] = held.last[b] = whole;
      held.area[b] = whole * (log.ends[b]! - log.times[b]!);
      continue;
    }
    const { times, values } = log.samplesOf(b);
    let [before, at] = [NaN, NaN];
    times.forEach((t, i) => {
      const now = state(values[clock.index]![i]!, ({ index }) => values[index]![i]!);
      if (Number.isNaN(now)) return;
      // What is not told at the beginning and the end of a bucket is taken to be as the next to it.
      if (Number.isNaN(before)) [held.first[b], held.area[b]] = [now, now * (t - log.times[b]!)];
      else held.area[b]! += ((before + now) / 2) * (t - at);
      [before, at] = [now, t];
    });
    held.last[b] = before;
    if (!Number.isNaN(before)) held.area[b]! += before * (log.ends[b]! - at);
  }
  return held;
}

/** What holds of every sample of a bucket by its extremes; undefined where they leave it open. */
function throughout({ rows }: ReadLog, b: number, clock: Watched, below: number, limits: readonly { column: Watched; least: number }[]): number | undefined {
  if (![clock, ...limits.map((l) => l.column)].every(({ figures }) => figures.filledIn(b) === rows[b])) return undefined;
  if (clock.figures.low(b) >= below || limits.every(({ column, least }) => column.figures.high(b) < least)) return 0;
  return clock.figures.high(b) < below && limits.some(({ column, least }) => column.figures.low(b) >= least) ? 1 : undefined;
}
