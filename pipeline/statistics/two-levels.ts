// Where a quantity stands on one of two levels: a part at rest and at work.

/** Values fall into two levels where these are this many standard deviations of their own scatter apart. */
const apart = 4;
const bins = 256;

/**
 * The border between a low and a high level by the method of Otsu (IEEE Transactions on Systems, Man, and Cybernetics 9
 * (1979) 62). With `ratios` levels are compared by their logarithms: 40 against 180 W weighs more than 180 against 250 W.
 * Undefined where the values do not fall into two levels.
 */
export function levelBorder(values: ArrayLike<number>, ratios: boolean): number | undefined {
  const scaled: number[] = [];
  for (let i = 0; i < values.length; i++) {
    const v = values[i]!;
    if (Number.isFinite(v) && (!ratios || v > 0)) scaled.push(ratios ? Math.log(v) : v);
  }
  let [low, high] = [Infinity, -Infinity];
  for (const v of scaled) {
    if (v < low) low = v;
    if (v > high) high = v;
  }
  if (!(high > low)) return undefined;
  const width = (high - low) / bins;
  const counts = new Float64Array(bins);
  const sums = new Float64Array(bins);
  const squares = new Float64Array(bins);
  for (const v of scaled) {
    const b = Math.min(bins - 1, Math.floor((v - low) / width));
    counts[b]!++;
    sums[b]! += v - low;
    squares[b]! += (v - low) ** 2;
  }
  const [n, sum, square] = [counts, sums, squares].map((l) => l.reduce((a, b) => a + b)) as [number, number, number];
  let best: { between: number; below: number; above: number; within: number } | undefined;
  let [k, s, q] = [0, 0, 0];
  for (let b = 0; b < bins - 1; b++) {
    k += counts[b]!;
    s += sums[b]!;
    q += squares[b]!;
    if (k === 0 || k === n) continue;
    const [below, above] = [s / k, (sum - s) / (n - k)];
    const between = k * (n - k) * (above - below) ** 2;
    const within = Math.sqrt(Math.max(0, q - k * below ** 2 + (square - q) - (n - k) * above ** 2) / n);
    if (!best || between > best.between * (1 + 1e-12)) best = { between, below, above, within };
  }
  if (!best || best.above - best.below < apart * best.within) return undefined;
  const border = low + (best.below + best.above) / 2;
  return ratios ? Math.exp(border) : border;
}
