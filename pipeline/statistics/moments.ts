// Mean, spread and the likeness of neighbours of plain numbers.

/** Sum with the digits that binary addition drops carried along (Neumaier's form of Kahan's summation). */
export function sum(values: readonly number[]): number {
  let total = 0;
  let dropped = 0;
  for (const v of values) {
    const next = total + v;
    dropped += Math.abs(total) >= Math.abs(v) ? total - next + v : v - next + total;
    total = next;
  }
  return total + dropped;
}

/** Arithmetic mean; NaN for no values. */
export function mean(values: readonly number[]): number {
  return sum(values) / values.length;
}

/** Sample standard deviation (n−1), in two passes; undefined below two values. */
export function standardDeviation(values: readonly number[]): number | undefined {
  if (values.length < 2) return undefined;
  const m = mean(values);
  return Math.sqrt(sum(values.map((v) => (v - m) ** 2)) / (values.length - 1));
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
