// How far the runs of one reading lie apart.
import { Exact } from '../quantities/index.js';
import type { Fact } from './fact.js';

/** Sample standard deviation (n−1), from exact sums of squares, so that no digits cancel; undefined for one run. */
export function spreadOf(values: readonly Exact[]): NonNullable<Fact['spread']> {
  let min = values[0]!;
  let max = min;
  for (const v of values) {
    if (v.compare(min) < 0) min = v;
    if (v.compare(max) > 0) max = v;
  }
  return { sd: values.length > 1 ? standardDeviation(values) : undefined, min, max, runs: values.length };
}

function standardDeviation(values: readonly Exact[]): number {
  const d = values.reduce((common, v) => (common % v.d === 0n ? common : common * v.d), 1n);
  const n = BigInt(values.length);
  let total = 0n;
  let squares = 0n;
  for (const v of values) {
    const x = v.n * (d / v.d);
    total += x;
    squares += x * x;
  }
  return Math.sqrt(Exact.of(n * squares - total * total, n * (n - 1n) * d * d).toNumber());
}
