// The one run that stands away from all the others.
import type { Exact } from '../quantities/index.js';
import type { Reading } from '../records/index.js';

export interface OddRun {
  run: Reading;
  others: Reading[];
  /** To the nearest of the others. */
  gap: Exact;
}

/** Undefined for fewer than three runs, or where no run is at least twice as far from the rest as these are among themselves. */
export function oddRun(readings: readonly Reading[]): OddRun | undefined {
  if (readings.length < 3) return undefined;
  const sorted = [...readings].sort((a, b) => a.quantity.value.compare(b.quantity.value));
  const low = gap(sorted[0]!, sorted[1]!);
  const high = gap(sorted.at(-2)!, sorted.at(-1)!);
  const [run, size] = low.compare(high) > 0 ? [sorted[0]!, low] : [sorted.at(-1)!, high];
  const others = sorted.filter((r) => r !== run);
  const among = gap(others[0]!, others.at(-1)!);
  if (size.sign() === 0 || size.compare(among.plus(among)) < 0) return undefined;
  return { run, others: readings.filter((r) => r !== run), gap: size };
}

function gap(a: Reading, b: Reading): Exact {
  return b.quantity.value.minus(a.quantity.value);
}
