// What the logged temperatures of an episode approach, and how fast.
import { type Key, splitKey } from '../records/index.js';
import { approachVariants } from './approach.js';
import type { Fact } from './fact.js';
import { type Facts, isFact } from './facts.js';
import { isMeasured } from './measured.js';
import { roomParts } from './neighbours.js';

/** The time constant and the level of a key; empty where it is no temperature, or where a log of it does not tell them. */
export function approachesOf(facts: Facts, key: Key): Fact[] {
  const at = splitKey(key);
  if (!at || roomParts.includes(at.part) || !isMeasured(facts, key) || !facts.readings(key).every((r) => r.log?.trace)) return [];
  const value = facts.value(key);
  if (!isFact(value) || value.unit.dimension !== 'temperature') return [];
  return approachVariants.map((variant) => facts.derive('approach', [key], variant)).filter(isFact);
}

/** In the order of the record. */
export function approaches(facts: Facts): Fact[] {
  return facts.keys().flatMap((key) => approachesOf(facts, key));
}
