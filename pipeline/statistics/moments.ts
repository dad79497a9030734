// Mean and spread of plain numbers.

/** Sum with the digits that binary addition drops carried along (Neumaier's form of Kahan's summation). */
function sum(values: readonly number[]): number {
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
