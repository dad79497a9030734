// The facts that are easily told in place of another: of another base, the other way round, another operation, another subject.
import { type Fact, type FactKind, type Facts, isFact, type Key, type KeyField, splitKey } from '../facts/index.js';
import type { Alternative, SlipKind } from './slip.js';
import { tellDifference } from './naming.js';

const constants = ['limit', 'target', 'rated'] as const;
const fields: readonly KeyField[] = ['setting', 'setup', 'phase', 'part', 'workload'];
const withBase: readonly FactKind[] = ['percent_change', 'percent_of', 'ratio', 'difference', 'rise', 'points', 'over_room'];

/** Likeliest first; made one at a time, as the first that fits ends the search. */
export function* alternativesTo(fact: Fact, facts: Facts): Generator<Alternative> {
  const [subject, base] = [operandOf(fact, 0), operandOf(fact, 1)];
  const based = withBase.includes(fact.kind) && fact.against.length === 1;
  if (based && subject && base) {
    yield* roundedTooEarly(fact, subject, base, facts);
    yield* otherOperation(fact, subject, base, facts);
    yield* otherBase(fact, subject, base, facts);
  }
  if (subject) yield* otherSubject(fact, subject, facts);
  if (based && subject && base) yield* bothOther(fact, subject, base, facts);
}

/** The same of the rounded figures, which is what viewers can compute. */
function* roundedTooEarly(fact: Fact, subject: Key, base: Key, facts: Facts): Generator<Alternative> {
  const [a, b] = [facts.value(subject), facts.value(base)];
  if (!isFact(a) || !isFact(b)) return;
  for (let decimals = Math.max(a.decimals, b.decimals); decimals >= 0; decimals--) {
    const rounded = [a, b].map((f) => `=${f.value.toFixed(decimals)}${f.unit.id}`);
    const other = facts.derive(fact.kind, rounded, fact.variant);
    if (isFact(other)) yield { kind: 'rounded-too-early', says: `taken between the rounded figures (${other.formula}), not before rounding`, fact: { ...other, unit: fact.unit }, decimals };
  }
}

/** The bases from which a percentage, share or ratio may have been taken by mistake. */
export function* otherBase(fact: Fact, subject: Key, base: Key, facts: Facts): Generator<Alternative> {
  const proportion = fact.kind === 'percent_change' || fact.kind === 'percent_of' || fact.kind === 'ratio';
  const swapped = facts.derive(fact.kind, [base, subject], fact.variant);
  if (isFact(swapped)) {
    const says = proportion ? `taken of ${tellDifference(facts.about, subject, base)} instead of ${tellDifference(facts.about, base, subject)}` : 'subject and base changed places';
    yield { kind: proportion ? 'wrong-base' : 'swapped', says, fact: swapped };
    if (fact.kind === 'percent_change') {
      const turned = { ...swapped, value: swapped.value.negated() };
      yield { kind: 'wrong-base', says, fact: turned };
    }
  }
  const limits = constants.map((phase) => facts.constantFor(subject, phase)).filter((k) => k !== undefined);
  if (fact.kind === 'percent_change') {
    for (const limit of limits) {
      const shares = [subject, base].map((key) => facts.derive('percent_of', [key, limit]));
      const points = shares.every(isFact) && facts.derive('points', shares.map((s) => `(${(s as Fact).id})`));
      const says = `these are percentage points of ${tellDifference(facts.about, limit, subject)}, not percent`;
      if (points && isFact(points)) yield { kind: 'points-for-percent', says, fact: { ...points, unit: fact.unit } };
    }
  }
  for (const key of new Set([...limits, ...fields.flatMap((f) => [...facts.sameBut(base, f), ...facts.sameBut(subject, f)])])) {
    if (key === base || key === subject) continue;
    const other = facts.derive(fact.kind, [subject, key], fact.variant);
    const says = proportion
      ? `taken of ${tellDifference(facts.about, key, base)} instead of ${tellDifference(facts.about, base, key)}`
      : `from ${tellDifference(facts.about, key, base)} instead of ${tellDifference(facts.about, base, key)}`;
    if (isFact(other)) yield { kind: 'wrong-base', says, fact: other };
  }
}

function* otherOperation(fact: Fact, subject: Key, base: Key, facts: Facts): Generator<Alternative> {
  const others: Partial<Record<FactKind, [FactKind, SlipKind, string][]>> = {
    percent_change: [['points', 'points-for-percent', 'these are percentage points, not percent'], ['percent_of', 'wrong-operation', 'this is the share of the base, not the change from it']],
    points: [['percent_change', 'percent-for-points', 'this is the change in percent, not in percentage points']],
    difference: [['percent_change', 'wrong-operation', 'this is the change in percent']],
    percent_of: [['percent_change', 'wrong-operation', 'this is the change, not the share']],
    ratio: [['percent_change', 'wrong-operation', 'this is the change in percent']],
  };
  for (const [kind, slip, says] of others[fact.kind] ?? []) {
    const other = facts.derive(kind, [subject, base]);
    if (!isFact(other)) continue;
    yield { kind: slip, says, fact: { ...other, unit: fact.unit } };
    if (kind === 'percent_change' && fact.kind === 'percent_of') yield { kind: slip, says, fact: { ...other, value: other.value.negated() } };
  }
}

function* otherSubject(fact: Fact, subject: Key, facts: Facts): Generator<Alternative> {
  for (const field of fields) {
    for (const key of facts.sameBut(subject, field)) {
      if (fact.against.includes(key)) continue;
      const other = facts.derive(fact.kind, [key, ...fact.against], fact.variant);
      if (isFact(other)) yield { kind: 'wrong-subject', says: `right for ${tellDifference(facts.about, key, subject)}`, fact: other };
    }
  }
}

/** The same comparison made elsewhere: for the other setup, the other setting, the other part. */
function* bothOther(fact: Fact, subject: Key, base: Key, facts: Facts): Generator<Alternative> {
  for (const field of fields) {
    const own = splitKey(subject)![field];
    if (own !== splitKey(base)![field]) continue;
    const bases = new Map(facts.sameBut(base, field).map((k) => [splitKey(k)![field], k]));
    for (const key of facts.sameBut(subject, field)) {
      const beside = bases.get(splitKey(key)![field]);
      if (!beside) continue;
      const other = facts.derive(fact.kind, [key, beside], fact.variant);
      if (isFact(other)) yield { kind: 'wrong-subject', says: `right for ${tellDifference(facts.about, key, subject)}`, fact: other };
    }
  }
}

function operandOf(fact: Fact, n: number): Key | undefined {
  const operand = n === 0 ? fact.id.slice(fact.id.indexOf(':') + 1).split('~')[0]! : fact.against[n - 1];
  return operand && splitKey(operand) && !/[(#=]/.test(operand) ? operand : undefined;
}
