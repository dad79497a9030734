// Frame rates from frame times. There is no standard for "1 % low"; the record names the definition it uses.
import { quantile, type QuantileType } from './quantile.js';

/** Frames over total time, in frames per second, from times in milliseconds; the mean of 1000/t would be too high. NaN for no frames. */
export function frameRate(times: readonly number[]): number {
  return (1000 * times.length) / times.reduce((a, b) => a + b, 0);
}

/** Rate of the `p` quantile of the frame times: p 0.99 is "the 99th percentile frame time". */
export function frameRateAt(times: readonly number[], p: number, type: QuantileType = 7): number {
  return 1000 / quantile(times, p, type);
}

/** Mean rate of the slowest share (0.01: the slowest 1 %) of the frames, at least one frame. NaN for no frames. */
export function slowestRate(times: readonly number[], share: number): number {
  const slowest = Float64Array.from(times).sort().reverse();
  return frameRate([...slowest.subarray(0, Math.max(1, Math.round(times.length * share)))]);
}
