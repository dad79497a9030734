// Dixon's Q for one outlier among few values: the gap beside it over the whole range (ratio r10).

/** Two-sided limits for 3 to 10 values (Rorabacher, Analytical Chemistry 63 (1991) 139). */
const limits: Record<'0.9' | '0.95' | '0.99', readonly number[]> = {
  0.9: [0.941, 0.765, 0.642, 0.56, 0.507, 0.468, 0.437, 0.412],
  0.95: [0.97, 0.829, 0.71, 0.625, 0.568, 0.526, 0.493, 0.466],
  0.99: [0.994, 0.926, 0.821, 0.74, 0.68, 0.634, 0.598, 0.568],
};

/** The larger of the two ratios, and which value it speaks of; undefined below three values or where all are equal. */
export function dixon(values: readonly number[]): { q: number; index: number } | undefined {
  const order = values.map((_, i) => i).sort((a, b) => values[a]! - values[b]!);
  const at = (i: number): number => values[order[i]!]!;
  const n = values.length;
  if (n < 3 || at(0) === at(n - 1)) return undefined;
  const range = at(n - 1) - at(0);
  const [low, high] = [(at(1) - at(0)) / range, (at(n - 1) - at(n - 2)) / range];
  return low > high ? { q: low, index: order[0]! } : { q: high, index: order[n - 1]! };
}

/** The limit that Q of n clean normal values exceeds with probability 1−level; undefined outside 3 to 10 values. */
export function dixonLimit(n: number, level: 0.9 | 0.95 | 0.99 = 0.95): number | undefined {
  return limits[`${level}`][n - 3];
}
