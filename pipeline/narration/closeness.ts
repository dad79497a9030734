// When a difference is too small to speak of.
import { type Fact, type Facts, isFact, uncertaintyOf } from '../facts/index.js';
import { convert, differenceUnit } from '../quantities/index.js';
import { splitKey } from '../facts/index.js';

export type Closeness = 'spread' | 'scatter' | 'matters';

/**
 * `spread` when the runs of the two overlap (each has at least two), `scatter` when their difference is smaller than the runs
 * can tell apart at 95 %, `matters` when they lie closer together than the record says matters; undefined when the difference may
 * be told. Overlapping runs: common practice, no published source.
 */
export function tooClose(facts: Facts, a: Fact, b: Fact): Closeness | undefined {
  if (a.value.equals(b.value)) return undefined;
  const [x, y] = [a.spread, b.spread];
  if (x && y && x.runs > 1 && y.runs > 1 && a.unit.id === b.unit.id && x.min.compare(y.max) <= 0 && y.min.compare(x.max) <= 0) return 'spread';
  const difference = facts.derive('difference', [a.subject, b.subject]);
  const unsure = isFact(difference) ? uncertaintyOf(facts, difference) : undefined;
  if (isFact(difference) && unsure && unsure.half95 > Math.abs(difference.value.toNumber())) return 'scatter';
  const matters = facts.about.measures.get(splitKey(a.subject)?.measure ?? '')?.matters;
  const least = matters && convert(matters.value, matters.unit, differenceUnit(a.unit));
  return least && a.unit.id === b.unit.id && a.value.minus(b.value).abs().compare(least) < 0 ? 'matters' : undefined;
}

export const whyClose: Record<Closeness, string> = {
  spread: 'the runs overlap',
  scatter: 'the runs scatter more than that',
  matters: 'the difference is too small to matter',
};
