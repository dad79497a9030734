// How many runs would settle what so many could not.
import { runsToTell, tFactor } from '../statistics/index.js';
import type { Fact } from './fact.js';
import type { Facts } from './facts.js';
import { type DifferenceOutcome, judge } from './outcome.js';
import { uncertaintyOf } from './uncertainty.js';

export interface RunsNeeded {
  /** Of each of the two; undefined where no number of runs would do, because the instrument itself is too coarse. */
  runs?: number;
  /** What would then be told, if the means stay where they are. */
  outcome: Exclude<DifferenceOutcome, 'undecided'>;
}

/** Nobody does more, so no more are spoken of. */
export const mostRunsTold = 50;

/**
 * With a chance of 80 %, if the true difference is the one found and the scatter stays as it is: runs of each that leave zero
 * outside the 95 % interval, or the whole interval within what matters, whichever needs fewer. Undefined for what is decided,
 * and for single runs, of whose scatter nothing is known.
 */
export function runsNeeded(facts: Facts, fact: Fact): RunsNeeded | undefined {
  const judged = judge(facts, fact);
  const known = judged?.outcome === 'undecided' && judged.half95 !== undefined ? uncertaintyOf(facts, judged.difference) : undefined;
  if (!judged || !known) return undefined;
  const scatter = known.rows.filter((r) => r.kind === 'A');
  const rest = known.rows.filter((r) => r.kind === 'B').reduce((sum, r) => sum + r.contribution ** 2, 0);
  // As of two groups of equal scatter, which is what the number of runs is told for.
  const sd = Math.sqrt(scatter.reduce((sum, r) => sum + r.contribution ** 2 * (r.dof + 1), 0) / 2);
  const runs = Math.max(2, ...scatter.map((r) => r.dof + 1));
  const value = judged.difference.value.toNumber();
  const tell = (margin: number): number | undefined => {
    const left = margin ** 2 - tFactor(0.95, Infinity) ** 2 * rest;
    const needed = margin > 0 && left > 0 ? runsToTell(Math.sqrt(left), sd) : undefined;
    return needed && Math.max(needed, runs + 1);
  };
  const apart: RunsNeeded = { outcome: value < 0 ? 'lower' : 'higher', runs: tell(Math.abs(value)) };
  const alike: RunsNeeded = { outcome: 'same', runs: judged.matters && tell(judged.matters.toNumber() - Math.abs(value)) };
  return (alike.runs ?? Infinity) < (apart.runs ?? Infinity) ? alike : apart;
}
