// The facts that a fact was made of.
import { type Fact, type Facts, isFact, readId } from '../facts/index.js';

/** Subject first, base last; none for a plain value. */
export function operandsOf(facts: Facts, fact: Fact): Fact[] {
  if (['raw', 'mean', 'constant'].includes(fact.kind)) return [];
  return (readId(fact.id)?.operands ?? []).map((o) => (o.startsWith('(') ? facts.get(o.slice(1, -1)) : o.startsWith('=') ? undefined : facts.value(o))).filter(isFact);
}
