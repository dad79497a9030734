// How far the runs of one reading lie apart.
import { Exact, mean, sum } from '../quantities/index.js';
import type { Fact } from './fact.js';

/** Sample standard deviation (n−1), computed from exact squares; undefined for one run. */
export function spreadOf(values: readonly Exact[]): NonNullable<Fact['spread']> {
  const sorted = [...values].sort((a, b) => a.compare(b));
  const middle = mean(values);
  const squares = sum(values.map((v) => v.minus(middle).times(v.minus(middle))));
  return {
    sd: values.length > 1 ? Math.sqrt(squares.over(Exact.of(values.length - 1)).toNumber()) : undefined,
    min: sorted[0]!, max: sorted.at(-1)!, runs: values.length,
  };
}
