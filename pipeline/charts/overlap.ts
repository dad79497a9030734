// Whether two figures are apart run by run: a colour or a place must not say more than the readings do.
import { type Fact, type Facts, isFact, readId } from '../facts/index.js';
import type { Exact } from '../quantities/index.js';

interface Interval {
  low: Exact;
  high: Exact;
}

/** From the lowest to the highest that the single runs could give; derived facts by interval arithmetic over their operands. */
export function interval(facts: Facts, fact: Fact): Interval {
  if (fact.spread) return { low: fact.spread.min, high: fact.spread.max };
  const point = { low: fact.value, high: fact.value };
  const operands = readId(fact.id)?.operands ?? [];
  if (operands.length !== 2) return point;
  const [a, b] = operands.map((o) => (o.startsWith('(') ? facts.get(o.slice(1, -1)) : o.startsWith('=') ? undefined : facts.value(o)));
  if (!isFact(a) || !isFact(b)) return point;
  const x = interval(facts, a);
  const y = interval(facts, b);
  if (['rise', 'difference', 'over_room', 'points'].includes(fact.kind)) return a.unit.id === b.unit.id ? { low: x.low.minus(y.high), high: x.high.minus(y.low) } : point;
  if (['per_watt', 'per_price', 'ratio', 'percent_of'].includes(fact.kind) && x.low.sign() > 0 && y.low.sign() > 0) {
    // Scaled by the fact itself, so that units and the hundred of a percentage need no thought.
    const scale = fact.value.over(a.value.over(b.value));
    return { low: x.low.over(y.high).times(scale), high: x.high.over(y.low).times(scale) };
  }
  return point;
}

/** The fact that is best, if the record says which end is and it keeps clear of the next; `tied` where it does not. */
export function best(facts: Facts, measure: string, shown: readonly Fact[]): { fact?: Fact; tied?: boolean } {
  const better = facts.about.measures.get(measure)?.better ?? 'neither';
  if (better === 'neither' || shown.length < 2) return {};
  const lower = better === 'lower';
  const [first, second] = [...shown].sort((a, b) => (lower ? 1 : -1) * a.value.compare(b.value)) as [Fact, Fact];
  const x = interval(facts, first);
  const y = interval(facts, second);
  const apart = lower ? x.high.compare(y.low) < 0 : x.low.compare(y.high) > 0;
  return apart ? { fact: first } : { tied: true };
}

/** Said in the foot where nothing is picked out for that reason. */
export const tiedNote = 'the best two overlap run by run';
