// What the readings allow to be said of a difference: higher, lower, about the same, or nothing.
import { Exact } from '../quantities/index.js';
import type { Fact, FactKind } from './fact.js';
import { type Facts, isFact } from './facts.js';
import { readId } from './id.js';
import { leastThatMatters, recordedMatters } from './matters.js';
import { doubtsOf, uncertaintyOf } from './uncertainty.js';

/** Of the first subject against the second. */
export type DifferenceOutcome = 'higher' | 'lower' | 'same' | 'undecided';

export interface Judgement {
  outcome: DifferenceOutcome;
  /** The difference that was judged, of which a change in percent or a ratio is another form. */
  difference: Fact;
  /** Half-width of the interval that it is judged by: that of 95 %; undefined where it is not known: single runs, constants. */
  half95?: number;
  /** The smallest difference that matters, in the difference's unit. */
  matters?: Exact;
  /** Smaller, as it was read, than the record itself says matters: whoever says so takes it for none, however surely there is one. */
  small: boolean;
}

const judged = new WeakMap<Fact, Judgement | null>();
const compared: ReadonlySet<FactKind> = new Set(['difference', 'rise', 'points', 'over_room', 'percent_change', 'ratio']);

/**
 * `same` where the whole 95 % interval lies within the smallest difference that matters, even where it leaves out zero: then
 * there is a difference, and it does not matter. `higher` and `lower` where the interval leaves out zero. All else is
 * `undecided`: what rests on a single run, a constant without uncertainty, too much scatter. Undefined for what compares nothing.
 */
export function judge(facts: Facts, fact: Fact): Judgement | undefined {
  if (!compared.has(fact.kind)) return undefined;
  let judgement = judged.get(fact);
  if (judgement === undefined) judged.set(fact, (judgement = weigh(facts, fact) ?? null));
  return judgement ?? undefined;
}

function weigh(facts: Facts, fact: Fact): Judgement | undefined {
  if (fact.kind === 'percent_change' || fact.kind === 'ratio') return judgeAs(facts, fact);
  const [a, b] = facts.operands(fact);
  if (!a || !b) return undefined;
  const matters = leastThatMatters(facts, a, b);
  const recorded = recordedMatters(facts, a, b);
  const small = recorded !== undefined && fact.value.sign() !== 0 && fact.value.abs().compare(recorded) < 0;
  const judgement: Judgement = { outcome: 'undecided', difference: fact, ...(matters && { matters }), small };
  const known = [a, b].every((f) => (doubtsOf(facts, f)?.terms.size ?? 0) > 0);
  const half95 = known ? uncertaintyOf(facts, fact)?.half95 : undefined;
  if (half95 === undefined) return judgement;
  const size = Math.abs(fact.value.toNumber());
  const outcome = matters && size + half95 <= matters.toNumber() ? 'same' : size <= half95 ? 'undecided' : fact.value.sign() > 0 ? 'higher' : 'lower';
  return { ...judgement, outcome, half95 };
}

/** A change or a ratio stands and falls with the difference of the same two. */
function judgeAs(facts: Facts, fact: Fact): Judgement | undefined {
  const operands = readId(fact.id)?.operands ?? [];
  const difference = facts.derive('difference', operands);
  return isFact(difference) ? judge(facts, difference) : undefined;
}

/** Of no account: surely within what matters, or told apart and smaller than the record says matters. What is open is not decided by it. */
export function ofNoAccount({ outcome, small }: Judgement): boolean {
  return outcome === 'same' || (small && outcome !== 'undecided');
}

export function outcomeOf(facts: Facts, fact: Fact): DifferenceOutcome | undefined {
  return judge(facts, fact)?.outcome;
}
