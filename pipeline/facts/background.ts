// The sound that is there anyway: which reading is the background of which level.
import { type Key, type KeyParts, splitKey } from '../records/index.js';
import type { Facts } from './facts.js';

const words = /^(background|room|ambient|floor)$/;

/** By its part or its phase. */
function isBackground({ part, phase }: Pick<KeyParts, 'part' | 'phase'>): boolean {
  return words.test(part) || words.test(phase);
}

/** The background read in the same setup, setting and workload, or else the nearest; undefined for a background itself. */
export function backgroundOf(facts: Facts, key: Key): Key | undefined {
  const own = splitKey(key);
  if (!own || isBackground(own)) return undefined;
  let best: Key | undefined;
  let most = -1;
  for (const other of facts.keys()) {
    const at = splitKey(other);
    if (!at || !isBackground(at) || at.measure !== own.measure || (at.setup && at.setup !== own.setup)) continue;
    const score = (at.setup ? 4 : 0) + (at.setting === own.setting ? 2 : 0) + (at.workload === own.workload ? 1 : 0);
    if (score > most) [best, most] = [other, score];
  }
  return best;
}
