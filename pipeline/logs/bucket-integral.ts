// What a quantity adds up to over buckets, as if over their samples.
import type { Integral } from '../statistics/index.js';
import type { Column } from './column.js';
import type { ReadLog } from './read-log.js';

/**
 * By trapezoids over the actual times, within each of `stretches` [from, to) of buckets and never between two of them; a
 * bucket without a value is passed over. `within` is the area of one bucket, `figures` tell its first and last value:
 * without them its value counts for all of it. Steps longer than `gap` are bridged, and counted.
 */
export function integralOf(log: ReadLog, values: Float64Array, stretches: readonly (readonly [from: number, to: number])[], gap: number, within = (b: number) => values[b]! * (log.ends[b]! - log.times[b]!), figures?: Pick<Column, 'firstIn' | 'lastIn'>): Integral {
  const sum: Integral = { area: 0, time: 0, bridged: 0, gaps: 0 };
  const add = (area: number, time: number, step: number): void => {
    sum.area += area;
    sum.time += time;
    if (step <= gap) return;
    sum.bridged += step;
    sum.gaps++;
  };
  for (const [from, to] of stretches) {
    let before = -1;
    for (let b = from; b < to; b++) {
      if (!Number.isFinite(values[b]!)) continue;
      const first = figures?.firstIn(b) ?? values[b]!;
      if (before >= 0) {
        const step = log.times[b]! - log.ends[before]!;
        add((((figures?.lastIn(before) ?? values[before]!) + first) / 2) * step, step, step);
      }
      if (log.rows[b]! > 1) add(within(b), log.ends[b]! - log.times[b]!, before >= 0 && log.steps[b]! === log.times[b]! - log.ends[before]! ? 0 : log.steps[b]!);
      before = b;
    }
  }
  return sum;
}

/** The first line with a value after the first gap. */
export function lineOfGap(log: ReadLog, values: Float64Array, stretches: readonly (readonly [from: number, to: number])[], gap: number): number {
  for (const [from, to] of stretches) {
    let before = -1;
    for (let b = from; b < to; b++) {
      if (!Number.isFinite(values[b]!)) continue;
      if (before >= 0 && log.times[b]! - log.ends[before]! > gap) return log.lines[b]!;
      if (log.rows[b]! > 1 && log.steps[b]! > gap) {
        const { times, lines } = log.samplesOf(b);
        const i = times.findIndex((t, at) => at > 0 && t - times[at - 1]! > gap);
        if (i > 0) return lines[i]!;
      }
      before = b;
    }
  }
  return log.lines[stretches[0]![0]]!;
}
