// What limits: how near each quantity comes to the limit that holds for it.
import { type Fact, type Facts, isFact, nameOf, quantityName, splitKey } from '../facts/index.js';
import { counts } from './changes.js';
import type { Observation } from './observation.js';

/** From this share of a limit on, and within so many kelvins of one, it is worth a picture; common practice, no published source. */
const near = { share: 90, kelvins: 10 } as const;

/** The nearest approach of each measure and part, the nearest first. */
export function limits(facts: Facts): Observation[] {
  const best = new Map<string, Observation>();
  for (const key of facts.keys().filter((k) => counts(facts, k))) {
    const limitKey = facts.constantFor(key, 'limit');
    const [value, limit] = [facts.value(key), limitKey === undefined ? undefined : facts.value(limitKey)];
    if (limitKey === undefined || !isFact(value) || !isFact(limit) || value.unit.id !== limit.unit.id) continue;
    const at = splitKey(key)!;
    const name = quantityName(facts.about, at.measure, at.part);
    const where = [at.setup && nameOf(facts.about, 'setup', at.setup), at.setting && nameOf(facts.about, 'setting', at.setting)].filter(Boolean).join(', ');
    const found = value.unit.dimension === 'temperature' ? room(facts, key, limitKey) : share(facts, key, limitKey);
    if (!found) continue;
    const kept = best.get(`${at.measure}/${at.part}`);
    if (!kept || found.weight > kept.weight) best.set(`${at.measure}/${at.part}`, { about: 'limit', measure: at.measure, part: at.part, fact: found.fact, weight: found.weight, why: `${name} ${found.says}${where ? ` (${where})` : ''}` });
  }
  return [...best.values()].sort((a, b) => b.weight - a.weight);
}

interface Near {
  fact: Fact;
  weight: number;
  says: string;
}

function share(facts: Facts, key: string, limit: string): Near | undefined {
  const fact = facts.derive('percent_of', [key, limit]);
  if (!isFact(fact)) return undefined;
  const value = fact.value.toNumber();
  return value >= near.share ? { fact, weight: value / 100, says: value > 100 ? `goes over its limit, to ${fact.shown} of it` : `reaches ${fact.shown} of its limit` } : undefined;
}

/** A percentage of a temperature means nothing; what is left of it does. */
function room(facts: Facts, key: string, limit: string): Near | undefined {
  const fact = facts.derive('difference', [limit, key]);
  if (!isFact(fact)) return undefined;
  const left = fact.value.toNumber();
  return left <= near.kelvins ? { fact, weight: 1 - left / 100, says: left < 0 ? 'goes over its limit' : `comes within ${fact.shown} of its limit` } : undefined;
}
