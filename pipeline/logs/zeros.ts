// A sensor that reads zero: nothing was measured, and a mean of it is silently too low.

/** What is not zero stands at least this share of its median away from it: a quantity that may come near zero is left alone. */
const wellAbove = 0.2;

/**
 * Rows of the zeros among the rows that are looked at, where zero cannot be: what else there is stands well away from it on
 * one side. All rows, where there is nothing but zeros. `lows` and `highs` are the values themselves, or of several samples
 * the lowest and the highest.
 */
export function zerosAmong(lows: (row: number) => number, highs: (row: number) => number, rows: readonly (readonly [from: number, to: number])[]): number[] {
  const zeros: number[] = [];
  const others: number[] = [];
  for (const [from, to] of rows) {
    for (let i = from; i < to; i++) {
      const [low, high] = [lows(i), highs(i)];
      if (Number.isNaN(low)) continue;
      if (low === 0 || high === 0) zeros.push(i);
      if (high !== 0) others.push(high);
      else if (low !== 0) others.push(low);
    }
  }
  if (zeros.length === 0 || others.length === 0) return zeros;
  const sizes = others.map(Math.abs).sort((a, b) => a - b);
  const oneSide = others.every((v) => v > 0) || others.every((v) => v < 0);
  return oneSide && sizes[0]! >= wellAbove * sizes[sizes.length >> 1]! ? zeros : [];
}
