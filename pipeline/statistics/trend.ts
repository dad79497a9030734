// Whether a quantity drifts: the straight line through it.
import { mean } from './moments.js';

export interface Line {
  slope: number;
  /** Value at x = 0. */
  intercept: number;
  /** Standard error of the slope, for independent samples (neighbours in a log are not); undefined for two points. */
  slopeError: number | undefined;
}

/** Least squares; undefined below two points or when all x are equal. Three points leave one degree of freedom: a trend is told from four on. */
export function fitLine(x: readonly number[], y: readonly number[]): Line | undefined {
  const n = Math.min(x.length, y.length);
  if (n < 2) return undefined;
  const mx = mean(x.slice(0, n));
  const my = mean(y.slice(0, n));
  let sxx = 0;
  let sxy = 0;
  for (let i = 0; i < n; i++) {
    sxx += (x[i]! - mx) ** 2;
    sxy += (x[i]! - mx) * (y[i]! - my);
  }
  if (sxx === 0) return undefined;
  const slope = sxy / sxx;
  const intercept = my - slope * mx;
  let rest = 0;
  for (let i = 0; i < n; i++) rest += (y[i]! - intercept - slope * x[i]!) ** 2;
  return { slope, intercept, slopeError: n < 3 ? undefined : Math.sqrt(rest / (n - 2) / sxx) };
}
