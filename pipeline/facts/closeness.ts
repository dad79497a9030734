// When two figures are too close to be told apart: one judgement for all that rank, pick out, mark or say so.
import { convert, differenceUnit, type Exact } from '../quantities/index.js';
import { splitKey } from '../records/index.js';
import type { Fact } from './fact.js';
import { type Facts, isFact } from './facts.js';
import { readId } from './id.js';
import { uncertaintyOf } from './uncertainty.js';

export type Closeness = 'level' | 'spread' | 'scatter' | 'matters';

/** Said of a difference, and of the best two of a ranking. */
export const whyClose: Readonly<Record<Closeness, { says: string; best: string }>> = {
  level: { says: 'they are level', best: 'the best two are level' },
  spread: { says: 'the runs overlap', best: 'the best two overlap run by run' },
  scatter: { says: 'the runs scatter more than that', best: 'the runs of the best two scatter more than they differ' },
  matters: { says: 'the difference is too small to matter', best: 'the best two differ by less than matters' },
};

/**
 * `level` when the two are equal, `spread` when their runs overlap (derived figures by interval arithmetic), `scatter` when they
 * differ by less than the runs can tell apart at 95 %, `matters` when they lie closer together than the record says matters;
 * undefined when the difference may be told. Overlapping runs: common practice, no published source.
 */
export function tooClose(facts: Facts, a: Fact, b: Fact): Closeness | undefined {
  if (a.unit.id !== b.unit.id) return undefined;
  if (a.value.equals(b.value)) return 'level';
  const [x, y] = [interval(facts, a), interval(facts, b)];
  if (ranges(x) && ranges(y) && x.low.compare(y.high) <= 0 && y.low.compare(x.high) <= 0) return 'spread';
  const difference = facts.derive('difference', [operandOf(a), operandOf(b)]);
  const unsure = isFact(difference) ? uncertaintyOf(facts, difference) : undefined;
  if (isFact(difference) && unsure && unsure.half95 > Math.abs(difference.value.toNumber())) return 'scatter';
  if (a.kind !== 'mean' && a.kind !== 'constant') return undefined;
  const matters = facts.about.measures.get(splitKey(a.subject)?.measure ?? '')?.matters;
  const least = matters && convert(matters.value, matters.unit, differenceUnit(a.unit));
  return least && a.value.minus(b.value).abs().compare(least) < 0 ? 'matters' : undefined;
}

/** The fact that is best, if the record says which end of the measure is and it keeps clear of the next; `close` tells why it does not. */
export function bestOf(facts: Facts, measure: string, shown: readonly Fact[]): { fact?: Fact; close?: Closeness } {
  const better = facts.about.measures.get(measure)?.better ?? 'neither';
  if (better === 'neither' || shown.length < 2) return {};
  const [first, second] = [...shown].sort((a, b) => (better === 'lower' ? 1 : -1) * a.value.compare(b.value)) as [Fact, Fact];
  if (first.unit.id !== second.unit.id) return {};
  const close = tooClose(facts, first, second);
  return close ? { close } : { fact: first };
}

interface Interval {
  low: Exact;
  high: Exact;
  runs: number;
}

function ranges(x: Interval): boolean {
  return x.runs > 1;
}

/** From the lowest to the highest that the single runs could give. */
function interval(facts: Facts, fact: Fact): Interval {
  if (fact.spread) return { low: fact.spread.min, high: fact.spread.max, runs: fact.spread.runs };
  const point = { low: fact.value, high: fact.value, runs: 1 };
  const operands = readId(fact.id)?.operands ?? [];
  if (operands.length !== 2) return point;
  const [a, b] = operands.map((o) => (o.startsWith('(') ? facts.get(o.slice(1, -1)) : o.startsWith('=') ? undefined : facts.value(o)));
  if (!isFact(a) || !isFact(b)) return point;
  const [x, y] = [interval(facts, a), interval(facts, b)];
  const runs = Math.max(x.runs, y.runs);
  if (['rise', 'difference', 'over_room', 'points'].includes(fact.kind)) return a.unit.id === b.unit.id ? { low: x.low.minus(y.high), high: x.high.minus(y.low), runs } : point;
  if (['per_watt', 'per_price', 'ratio', 'percent_of'].includes(fact.kind) && x.low.sign() > 0 && y.low.sign() > 0) {
    // Scaled by the fact itself, so that units and the hundred of a percentage need no thought.
    const scale = fact.value.over(a.value.over(b.value));
    return { low: x.low.over(y.high).times(scale), high: x.high.over(y.low).times(scale), runs };
  }
  return point;
}

function operandOf(fact: Fact): string {
  return (fact.kind === 'mean' || fact.kind === 'constant') && fact.against.length === 0 ? fact.subject : `(${fact.id})`;
}
