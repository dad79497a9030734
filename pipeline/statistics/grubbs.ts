// The test of Grubbs for one outlier at either end (NIST/SEMATECH e-Handbook 1.3.5.17).
import { mean, standardDeviation } from './moments.js';
import { tFactor } from './student.js';

/**
 * Largest distance from the mean in standard deviations, and which value has it; undefined below three values or where
 * all are equal. Of three values none can exceed 1.1547 and the two-sided 5 % limit is 1.1543: ask from six values on.
 */
export function grubbs(values: readonly number[]): { g: number; index: number } | undefined {
  const sd = values.length < 3 ? undefined : standardDeviation(values);
  if (!sd) return undefined;
  const m = mean(values);
  let index = 0;
  for (let i = 1; i < values.length; i++) if (Math.abs(values[i]! - m) > Math.abs(values[index]! - m)) index = i;
  return { g: Math.abs(values[index]! - m) / sd, index };
}

/** The two-sided limit for n values (at least 3): (n−1)/√n · √(t²/(n−2+t²)), t at alpha/2n with n−2 degrees of freedom. */
export function grubbsLimit(n: number, alpha = 0.05): number {
  const t = tFactor(1 - alpha / n, n - 2);
  return ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t));
}
