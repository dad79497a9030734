// What a result costs, where the price is of the thing that gives it.
import { type Key, splitKey } from '../records/index.js';
import type { Fact } from './fact.js';
import { type Facts, isFact } from './facts.js';

/**
 * A result per unit of its setup's price, where all that was tested are products. Beside an arrangement (an open bench) what
 * performs is the same part in all of them, and a price is that of the box around it. Undefined too where there is no price.
 */
export function perPriceOf(facts: Facts, key: Key): Fact | undefined {
  const holders = new Set(facts.holders());
  if ([...facts.about.setups.values()].some((s) => s.kind !== 'product' && !holders.has(s.id))) return undefined;
  const price = facts.priceOf(splitKey(key)!.setup);
  const fact = price === undefined ? undefined : facts.derive('per_price', [key, price]);
  return isFact(fact) ? fact : undefined;
}
