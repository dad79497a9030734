// Which of a few values does not belong: the gap rule for three to ten values, the median rule for more (Grubbs has a file of its own).
import { median } from './quantile.js';

export interface Suspect {
  index: number;
  /** The statistic and what it was held against. */
  statistic: number;
  limit: number;
  outlier: boolean;
}

/** Rorabacher's table begins at three values, where only a gap of 97 % of the range counts. */
export const dixonFrom = 3;
/** On clean normal data it flags something in 28 % of samples of three and 20 % of five: it may be asked from ten on. */
export const modifiedZFrom = 10;

/** Q (r10) at 95 %, n 3 to 10: Rorabacher, Analytical Chemistry 63 (1991) 139. */
const dixon95 = [0.97, 0.829, 0.71, 0.625, 0.568, 0.526, 0.493, 0.466];

/** Dixon's Q: the gap of the outermost value to its neighbour over the range; undefined outside 3 to 10 values or without range. */
export function dixonQ(values: readonly number[]): Suspect | undefined {
  const limit = dixon95[values.length - dixonFrom];
  const order = values.map((_, i) => i).sort((a, b) => values[a]! - values[b]!);
  const at = (k: number): number => values[order.at(k)!]!;
  if (limit === undefined || at(-1) === at(0)) return undefined;
  const low = at(1) - at(0);
  const high = at(-1) - at(-2);
  const statistic = Math.max(low, high) / (at(-1) - at(0));
  return { index: (high >= low ? order.at(-1) : order[0])!, statistic, limit, outlier: statistic > limit };
}

/** Median of |x − median|; times 1.4826 it estimates the standard deviation of normal data. */
export function medianDeviation(values: readonly number[]): number {
  const middle = median(values);
  return median(values.map((v) => Math.abs(v - middle)));
}

/**
 * Modified z scores 0.6745(x−median)/MAD; beyond ±3.5 is suspect (Iglewicz & Hoaglin 1993). Undefined below
 * `modifiedZFrom` values, or where more than half are equal, so that the median deviation is zero.
 */
export function modifiedZ(values: readonly number[]): number[] | undefined {
  const mad = medianDeviation(values);
  if (values.length < modifiedZFrom || mad === 0) return undefined;
  const middle = median(values);
  return values.map((v) => (0.6745 * (v - middle)) / mad);
}
