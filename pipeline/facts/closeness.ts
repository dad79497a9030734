// When two figures are too close to be told apart: one judgement for all that rank, pick out, mark or say so.
import type { Fact } from './fact.js';
import { type Facts, isFact } from './facts.js';
import { type Judgement, judge, ofNoAccount } from './outcome.js';

export type Closeness = 'level' | 'matters' | 'spread' | 'scatter' | 'single';

/** Said of a difference, and of the best two of a ranking. */
export const whyClose: Readonly<Record<Closeness, { says: string; best: string }>> = {
  level: { says: 'they are level', best: 'the best two are level' },
  matters: { says: 'the difference is too small to matter', best: 'the best two differ by less than matters' },
  spread: { says: 'the runs overlap', best: 'the best two overlap run by run' },
  scatter: { says: 'the runs scatter by more than the difference', best: 'the runs of the best two scatter more than they differ' },
  single: { says: 'one run does not tell how far runs scatter', best: 'one run each does not tell the best two apart' },
};

/**
 * Rests on the judgement of their difference alone: undefined where it is higher or lower, and not of no account. `level` when
 * the two are equal, `matters` when they are about the same or single runs lie closer than the record says matters, else why it
 * cannot be told: `single` where runs were not repeated, `spread` where the runs of the two overlap, `scatter` where they lie
 * apart and are too few for how far they scatter.
 */
export function tooClose(facts: Facts, a: Fact, b: Fact): Closeness | undefined {
  if (a.unit.id !== b.unit.id) return undefined;
  if (a.value.equals(b.value)) return 'level';
  const judged = judgementOf(facts, a, b);
  if (!judged) return undefined;
  if (ofNoAccount(judged)) return 'matters';
  if (judged.outcome !== 'undecided') return undefined;
  if (judged.half95 === undefined) return judged.small ? 'matters' : 'single';
  return overlap(a, b) ? 'spread' : 'scatter';
}

/** Of the difference between two facts, whatever they are. */
function judgementOf(facts: Facts, a: Fact, b: Fact): Judgement | undefined {
  const difference = facts.derive('difference', [operandOf(a), operandOf(b)]);
  return isFact(difference) ? judge(facts, difference) : undefined;
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

/**
 * What is said below a ranking of what its runs do not tell, `sorted` with the best first and `place` how a fact's place is shown:
 * why the best two are close, and "places 4 to 6 too close to call" of neighbours whose order rests on too little. Equals that
 * share a place and single runs are no neighbours; stretches without a row in `shown` are left out.
 */
export function closeNotes(facts: Facts, sorted: readonly Fact[], place: (f: Fact) => string | undefined, shown: readonly Fact[] = sorted): string[] {
  const stretches: Fact[][] = [];
  sorted.forEach((fact, i) => {
    const close = i > 0 ? tooClose(facts, sorted[i - 1]!, fact) : undefined;
    if (close && close !== 'single') stretches.at(-1)!.push(fact);
    else stretches.push([fact]);
  });
  const best = sorted.length > 1 ? tooClose(facts, sorted[0]!, sorted[1]!) : undefined;
  const named = stretches.filter((s) => s.some((f) => shown.includes(f)) && !(s[0] === sorted[0] && s.length < 3)).flatMap((s) => {
    const [first, last] = [place(s[0]!), place(s.at(-1)!)];
    return first && last && first !== last ? [{ from: s[0]!, text: `${first} ${s.length === 2 ? 'and' : 'to'} ${last}` }] : [];
  });
  return [
    ...(best && named[0]?.from !== sorted[0] ? [whyClose[best].best] : []),
    ...(named.length ? [`places ${named.map((n) => n.text).join(', ')} too close to call`] : []),
  ];
}

function overlap(a: Fact, b: Fact): boolean {
  return !!a.spread && !!b.spread && a.spread.min.compare(b.spread.max) <= 0 && b.spread.min.compare(a.spread.max) <= 0;
}

function operandOf(fact: Fact): string {
  return (fact.kind === 'mean' || fact.kind === 'constant') && fact.against.length === 0 ? fact.subject : `(${fact.id})`;
}
