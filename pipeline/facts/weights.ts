// By how much a derived fact moves when one of its operands does.
import { convert, differenceUnit, Exact } from '../quantities/index.js';
import { type Fact, type FactKind, withValue } from './fact.js';
import type { Facts } from './facts.js';
import { operations } from './operations.js';

/**
 * Places and counts jump where others glide. The end of a range is picked for being the end: it tells what was read, and the
 * interval of the one that was picked would hold the true end too seldom (of six alike in 0.975⁶, 86 of a hundred).
 */
const unsteady: ReadonlySet<FactKind> = new Set(['rank', 'range', 'count']);
const step = Exact.of(1, 10_000);

/** One a part, each for a step of one in the part's own unit; undefined where that is not told. Found by moving each a little (JCGM 100:2008, 5.1.3, note 2). */
export function weightsOf(facts: Facts, fact: Fact, parts: readonly Fact[]): number[] | undefined {
  if (unsteady.has(fact.kind)) return undefined;
  if (fact.kind === 'mean') return ofMean(fact, parts);
  if (fact.kind === 'median') return ofMedian(fact, parts);
  const quotient = ofQuotient(fact, parts);
  if (quotient) return quotient;
  const weights: number[] = [];
  for (const [i, p] of parts.entries()) {
    const h = p.value.sign() === 0 ? step : p.value.abs().times(step);
    const [up, down] = [p.value.plus(h), p.value.minus(h)].map((value) => operations[fact.kind].run(parts.map((q, j) => (i === j ? withValue(q, value) : q)), fact.variant, facts.about));
    if (!up || !down || 'why' in up || 'why' in down) return undefined;
    weights.push(up.value.minus(down.value).over(h.plus(h)).toNumber());
  }
  return weights;
}

/** A mean is taken over the runs themselves. In an energy mean a louder part weighs more, in a harmonic and a geometric one a smaller. */
function ofMean(fact: Fact, parts: readonly Fact[]): number[] {
  const energy = fact.variant === 'energy' || (fact.variant === '' && fact.unit.dimension === 'sound-level');
  return parts.map((p) => {
    const relative = fact.variant === 'harmonic' || fact.variant === 'geometric' ? fact.value.over(p.value).toNumber() : 1;
    const weight = energy ? 10 ** (p.value.minus(fact.value).toNumber() / 10) : fact.variant === 'harmonic' ? relative ** 2 : relative;
    return ((convert(Exact.of(1), differenceUnit(p.unit), differenceUnit(fact.unit))?.toNumber() ?? 0) * weight) / parts.length;
  });
}

/** It moves with the one in the middle, or with half of each of the two; what lies close by makes it move less, and never more. */
function ofMedian(fact: Fact, parts: readonly Fact[]): number[] {
  const inUnit = parts.map((p) => convert(p.value, p.unit, fact.unit) ?? p.value);
  const order = parts.map((_, i) => i).sort((a, b) => inUnit[a]!.compare(inUnit[b]!) || a - b);
  const middle = [order[(order.length - 1) >> 1]!, order[order.length >> 1]!];
  return parts.map((p, i) => (middle.filter((m) => m === i).length / 2) * (convert(Exact.of(1), differenceUnit(p.unit), differenceUnit(fact.unit))?.toNumber() ?? 0));
}

/** Exact, so that what is common to both cancels wholly. */
function ofQuotient(fact: Fact, [a, b]: readonly Fact[]): number[] | undefined {
  if (!['percent_change', 'percent_of', 'ratio', 'per_watt', 'per_price', 'per_energy'].includes(fact.kind) || !a || !b || a.value.sign() === 0 || b.value.sign() === 0) return undefined;
  const [x, y] = [a.value.toNumber(), b.value.toNumber()];
  const quotient = fact.kind === 'percent_change' ? fact.value.toNumber() + 100 * Math.sign(y) : fact.value.toNumber();
  return [quotient / x, -quotient / y];
}
