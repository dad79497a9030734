// Which means a number of whole-number readings can have at all (Brown & Heathers 2017, Soc. Psychol. Personal. Sci. 8).
import { Exact } from '../quantities/index.js';

/**
 * Whether `n` readings, each a whole multiple of `step`, can have a mean that rounds to `mean` at `decimals` places;
 * a tie may have been rounded either way.
 */
export function meanIsPossible(mean: Exact, decimals: number, n: number, step: Exact = Exact.of(1)): boolean {
  const grain = step.over(Exact.of(n));
  const half = Exact.of(1, 2).over(Exact.of(10n ** BigInt(decimals)));
  const least = mean.minus(half).over(grain);
  const ceiling = -floorDiv(-least.n, least.d);
  return Exact.of(ceiling).times(grain).compare(mean.plus(half)) <= 0;
}

function floorDiv(a: bigint, b: bigint): bigint {
  const q = a / b;
  return a % b !== 0n && a < 0n ? q - 1n : q;
}
