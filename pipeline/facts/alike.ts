// Values that stand beside each other are shown alike: 66 and 58 °C, never 66.4 beside 58.
import { type Key, type Reading, splitKey } from '../records/index.js';

/**
 * The most decimals that a mean may be shown with, by key. Where some means of a measure, part and phase were taken over the
 * samples of a log and others over runs noted by hand, the notes decide: a log's mean has more places than its sensor resolves.
 * Keys in another unit than their group's first are left alone. Common practice, no published source.
 */
export class Alike {
  readonly #most = new Map<string, { unit: string; noted?: number; logged?: number }>();

  constructor(byKey: ReadonlyMap<Key, readonly Reading[]>) {
    for (const [key, readings] of byKey) {
      const runs = readings.filter((r) => !r.constant);
      if (runs.length === 0) continue;
      const group = groupOf(key);
      const at = this.#most.get(group) ?? { unit: runs[0]!.quantity.unit.id };
      if (runs.some((r) => r.quantity.unit.id !== at.unit)) continue;
      const decimals = Math.max(...runs.map((r) => r.quantity.decimals));
      const kind = runs.every((r) => r.log) ? 'logged' : 'noted';
      // Of hand-written keys the finest decides (a spreadsheet drops final zeros), of logs the coarsest.
      at[kind] = kind === 'noted' ? Math.max(at.noted ?? 0, decimals) : Math.min(at.logged ?? Infinity, decimals);
      this.#most.set(group, at);
    }
  }

  most(key: Key, unit: string): number {
    const at = this.#most.get(groupOf(key));
    return at && at.unit === unit ? (at.noted ?? at.logged ?? Infinity) : Infinity;
  }
}

function groupOf(key: Key): string {
  const at = splitKey(key);
  return at ? `${at.measure}/${at.part}/${at.phase}` : '';
}
