// How well a fact is known: every source of doubt, followed through all that is derived.
import { type BudgetRow, combine, type Coverage, covering, type Term } from '../statistics/index.js';
import type { Fact } from './fact.js';
import type { Facts } from './facts.js';
import { type Doubts, doubtsOfReading } from './sources.js';
import { weightsOf } from './weights.js';

export interface Uncertainty extends Coverage {
  /** Standard uncertainty in the fact's unit (a temperature's in kelvins or °F of difference). */
  standard: number;
  /** Expanded uncertainty, 95 %: factor · standard. What is claimed, stated and shown rests on it alike. */
  half95: number;
  /** What it is made of; a source that cancels stands there with nothing. */
  rows: BudgetRow[];
}

const kept = new WeakMap<Fact, Doubts | null>();
const known = new WeakMap<Fact, Uncertainty | null>();

/**
 * From the scatter of the runs (type A), the resolution and the accuracy of the instruments (type B), as in JCGM 100:2008.
 * Each source is one variable wherever it comes in: the error of an instrument that read both sides of a difference cancels,
 * as far as it is the same; scatter does not. Undefined for ranks, counts and ranges (`weightsOf` has the reason), for what rests on a single run
 * or on a constant that was read, and where there is nothing to doubt (limits, prices).
 */
export function uncertaintyOf(facts: Facts, fact: Fact): Uncertainty | undefined {
  let uncertainty = known.get(fact);
  if (uncertainty === undefined) known.set(fact, (uncertainty = workOut(facts, fact) ?? null));
  return uncertainty ?? undefined;
}

function workOut(facts: Facts, fact: Fact): Uncertainty | undefined {
  const doubts = doubtsOf(facts, fact);
  if (!doubts || doubts.terms.size === 0) return undefined;
  // The fit of a single run tells how well that run is known; what is derived from it is not known, as other runs would differ.
  if (doubts.unknown.size > 0 && fact.kind !== 'approach') return undefined;
  const budget = combine([...doubts.terms.values()]);
  if (!(budget.standard > 0)) return undefined;
  const coverage = covering(budget);
  return { ...coverage, standard: budget.standard, half95: coverage.factor * budget.standard, rows: budget.rows };
}

/** Undefined where it cannot be followed. */
export function doubtsOf(facts: Facts, fact: Fact): Doubts | undefined {
  let doubts = kept.get(fact);
  if (doubts === undefined) kept.set(fact, (doubts = follow(facts, fact) ?? null));
  return doubts ?? undefined;
}

function follow(facts: Facts, fact: Fact): Doubts | undefined {
  const parts = facts.operands(fact);
  if (parts.length === 0) return doubtsOfReading(facts, fact);
  const weights = weightsOf(facts, fact, parts);
  if (!weights) return undefined;
  const sum: Doubts = { terms: new Map(), unknown: new Map() };
  for (const [i, part] of parts.entries()) {
    const own = doubtsOf(facts, part);
    if (!own) return undefined;
    const weight = weights[i]!;
    for (const [id, term] of own.terms) sum.terms.set(id, { ...term, sensitivity: added(sum.terms.get(id), weight * term.sensitivity) });
    for (const [id, sensitivity] of own.unknown) sum.unknown.set(id, near((sum.unknown.get(id) ?? 0) + weight * sensitivity, weight * sensitivity));
  }
  for (const [id, sensitivity] of sum.unknown) if (sensitivity === 0) sum.unknown.delete(id);
  return sum;
}

function added(known: Term | undefined, more: number): number {
  return near((known?.sensitivity ?? 0) + more, more);
}

/** Nothing, where only the last bits of binary numbers are left. */
function near(x: number, of: number): number {
  return Math.abs(x) < 1e-9 * Math.abs(of) ? 0 : x;
}
