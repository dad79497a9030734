// As many digits as the uncertainty of a figure earns.

/**
 * Decimals for a figure with this expanded uncertainty: its last place is that of the uncertainty, which is given two
 * digits where the first is 1 or 2 and one elsewhere, so that rounding never hides more than a fifth of it. (JCGM 100:2008, 7.2.6 allows at
 * most two; when one is enough is common practice, no published source.) Never negative: whole numbers stay whole.
 */
export function earnedDecimals(half95: number): number {
  const place = Math.floor(Math.log10(half95));
  const first = Math.floor(half95 / 10 ** place + 1e-9);
  return Math.max(0, (first < 3 ? 1 : 0) - place);
}
