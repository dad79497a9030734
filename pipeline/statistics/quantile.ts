// Sample quantiles in the nine ways of Hyndman & Fan, The American Statistician 50 (1996).

export type QuantileType = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9;

/** (a, b) of the continuous types: m = a + p(1−a−b). */
const plotting: Record<4 | 5 | 6 | 7 | 8 | 9, readonly [a: number, b: number]> = {
  4: [0, 1], 5: [0.5, 0.5], 6: [0, 0], 7: [1, 1], 8: [1 / 3, 1 / 3], 9: [3 / 8, 3 / 8],
};

/**
 * The quantile at `p` (0 to 1) of ascending values; NaN for no values. Type 7 interpolates and is the usual default,
 * type 1 (nearest rank) gives a value that was measured. With n values no quantile beyond 1/n and 1−1/n can be told.
 */
export function quantileSorted(sorted: ArrayLike<number>, p: number, type: QuantileType = 7): number {
  const n = sorted.length;
  if (n === 0) return Number.NaN;
  const at = (k: number): number => sorted[Math.min(n, Math.max(1, k)) - 1]!;
  const fuzz = 4 * Number.EPSILON;
  if (type <= 3) {
    const position = n * p - (type === 3 ? 0.5 : 0);
    const j = Math.floor(position + fuzz * n);
    const onStep = Math.abs(position - j) < fuzz * n;
    if (!onStep) return at(j + 1);
    return type === 1 ? at(j) : type === 2 ? (at(j) + at(j + 1)) / 2 : at(j % 2 === 0 ? j : j + 1);
  }
  const [a, b] = plotting[type as 4];
  const position = n * p + a + p * (1 - a - b);
  const j = Math.floor(position + fuzz * n);
  const g = Math.abs(position - j) < fuzz * n ? 0 : position - j;
  return g === 0 ? at(j) : at(j) + g * (at(j + 1) - at(j));
}
