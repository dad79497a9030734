// Long logs for the picture only: the record keeps every sample.
import type { Trace } from '../facts/index.js';

export interface Point {
  t: number;
  v: number | null;
}

/** The samples of a trace; of a long log, which has but the means of short stretches, the lowest and the highest in each. */
export function drawnOf({ times, values, lows, highs }: Pick<Trace, 'times' | 'values' | 'lows' | 'highs'>): { times: readonly number[]; values: readonly number[] } {
  if (!lows || !highs) return { times, values };
  return { times: times.flatMap((t) => [t, t]), values: lows.flatMap((low, i) => [low, highs[i]!]) };
}

/**
 * First, lowest, highest and last sample of each column, in order, where there are more than four samples a column; gaps stay gaps.
 * Fewer would be seen: the columns are those of the largest picture.
 */
export function reduce(times: readonly number[], values: readonly number[], columns: number): Point[] {
  const points = times.map((t, i) => ({ t, v: Number.isFinite(values[i]) ? values[i]! : null })).filter((p) => Number.isFinite(p.t));
  if (points.length <= 4 * columns) return points;
  const first = points[0]!.t;
  const span = points.at(-1)!.t - first || 1;
  const out: Point[] = [];
  for (let i = 0; i < points.length;) {
    const column = columnOf(points[i]!);
    let j = i;
    let low = -1;
    let high = -1;
    let gap = -1;
    for (; j < points.length && columnOf(points[j]!) === column; j++) {
      const v = points[j]!.v;
      if (v === null) gap = j;
      else {
        if (low < 0 || v < points[low]!.v!) low = j;
        if (high < 0 || v > points[high]!.v!) high = j;
      }
    }
    const keep = new Set([i, low, high, gap, j - 1].filter((k) => k >= 0));
    for (const k of [...keep].sort((a, b) => a - b)) out.push(points[k]!);
    i = j;
  }
  return out;

  function columnOf(p: Point): number {
    return Math.min(columns - 1, Math.floor(((p.t - first) / span) * columns));
  }
}
