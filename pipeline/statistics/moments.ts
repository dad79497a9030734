// Mean, spread and the likeness of neighbours of plain numbers.
import { mean as average, sampleStandardDeviation } from 'simple-statistics';

/** Arithmetic mean; NaN for no values. */
export function mean(values: readonly number[]): number {
  return values.length ? average(values as number[]) : Number.NaN;
}

/** Sample standard deviation (n−1); undefined below two values. */
export function standardDeviation(values: readonly number[]): number | undefined {
  return values.length > 1 ? sampleStandardDeviation(values as number[]) : undefined;
}

/** Standard deviation over mean; undefined below two values or for a mean of zero. */
export function coefficientOfVariation(values: readonly number[]): number | undefined {
  const sd = standardDeviation(values);
  const m = mean(values);
  return sd === undefined || m === 0 ? undefined : sd / Math.abs(m);
}

/**
 * Lag-1 autocorrelation Σ(xᵢ−m)(xᵢ₊₁−m)/Σ(xᵢ−m)² (NIST StRD), near 1 for a slow drift; undefined below three values or
 * when all are equal. Rates a log's samples from about 30 on; of three runs it says nothing.
 */
export function lag1(values: readonly number[]): number | undefined {
  if (values.length < 3) return undefined;
  const m = mean(values);
  let neighbours = 0;
  let own = 0;
  for (let i = 0; i < values.length; i++) {
    own += (values[i]! - m) ** 2;
    if (i > 0) neighbours += (values[i - 1]! - m) * (values[i]! - m);
  }
  return own === 0 ? undefined : neighbours / own;
}

/** How many independent samples a log of `n` correlated ones is worth: n(1−r)/(1+r), never more than n nor less than 1. */
export function effectiveCount(n: number, r: number): number {
  return Math.min(n, Math.max(1, (n * (1 - r)) / (1 + r)));
}
