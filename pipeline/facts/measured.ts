// What counts as a result beside others: what was read here, and what an earlier episode read.
import { constantPhases, type Key, splitKey } from '../records/index.js';
import type { Facts } from './facts.js';

const parameters: ReadonlySet<string> = new Set(constantPhases);

/** Whether a key was measured, in this episode or in one that this one quotes; limits, targets and the like are not. */
export function isMeasured(facts: Facts, key: Key): boolean {
  const quoted = facts.isQuoted(key) && !parameters.has(splitKey(key)?.phase ?? '');
  return facts.readings(key).some((r) => quoted || !r.constant);
}
