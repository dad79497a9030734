// Windows of logs, as checks look at them.
import type { Trace } from '../records/index.js';
import { fitLine, mean } from '../statistics/index.js';

export interface Window {
  phase: string;
  start: number;
  end: number;
}

/** The samples of a window, those without a value left out. */
export function within(trace: Trace, { start, end }: Window): { times: number[]; values: number[] } {
  const times: number[] = [];
  const values: number[] = [];
  trace.times.forEach((t, i) => {
    const v = trace.values[i]!;
    if (t >= start && t <= end && Number.isFinite(v)) {
      times.push(t);
      values.push(v);
    }
  });
  return { times, values };
}

/** Units of the values per second, by least squares; 0 where it cannot be told. */
export function slope(times: readonly number[], values: readonly number[]): number {
  return fitLine(times, values)?.slope ?? 0;
}

/** The means of the first and of the last quarter. */
export function ends(values: readonly number[]): { first: number; last: number } {
  const quarter = Math.max(1, Math.floor(values.length / 4));
  return { first: mean(values.slice(0, quarter)), last: mean(values.slice(-quarter)) };
}

/** A sensor's number in a message: as few digits as say it. */
export function brief(x: number): string {
  const decimals = Math.abs(x) >= 100 ? 0 : 1;
  return x.toFixed(decimals).replace(/^-0(\.0)?$/, '0').replace('-', '−');
}
