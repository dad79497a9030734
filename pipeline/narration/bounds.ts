// What the record sets for a reading: its limit, its target, its rating.
import { type Fact, type Facts, isFact, type Key } from '../facts/index.js';

export function boundOf(facts: Facts, key: Key, phase: string): Fact | undefined {
  const bound = facts.constantFor(key, phase);
  const fact = bound === undefined || bound === key ? undefined : facts.value(bound);
  return isFact(fact) ? fact : undefined;
}

/** Whether all were brought to one target on purpose: how they compare is no result. */
export function matched(facts: Facts, keys: readonly Key[]): boolean {
  const targets = new Set(keys.map((key) => boundOf(facts, key, 'target')?.shown));
  return targets.size === 1 && !targets.has(undefined);
}
