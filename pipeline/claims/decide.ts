// From the readings of a mention to a verdict. The best reading by its words decides; the value only breaks ties among
// readings about as good, and keeps an alarm back where a less likely reading would fit.
import type { Candidate } from './context.js';
import { fits, toldAsSize } from '../wording/index.js';
import type { Mention } from '../script/index.js';

export type VerdictWord = 'agrees' | 'disagrees' | 'untied' | 'not-a-claim';

export interface Decision {
  verdict: VerdictWord;
  /** The reading taken: what fits, or what the words say best. */
  chosen?: Candidate;
  why: string;
  ranked: readonly { candidate: Candidate; fits: boolean }[];
  /** The size is that of what the words say best, the direction is not. */
  turned?: boolean;
  /** Given although some other reading would fit. */
  insisted?: boolean;
  /** Not even the kind of quantity was said: nothing goes on from it. */
  unsaid?: boolean;
  /** Held back by nothing but a dearer reading that fits. */
  excused?: boolean;
}

/** A decision and what it is about. All have the same fields in the same order, as they are looked at dozens of times each. */
export function readingOf(d: Decision, mention: Mention): Decision & { mention: Mention } {
  return { verdict: d.verdict, chosen: d.chosen, why: d.why, ranked: d.ranked, turned: d.turned, insisted: d.insisted, unsaid: d.unsaid, excused: d.excused, mention };
}

/** Readings this much dearer than the best count as about as good. */
export const margin = 1;

/** A reading up to this much dearer that fits keeps an alarm back. */
export const doubt = 1.5;

/** A reading this much dearer fits by chance, where a cheaper one has just the size that was said and goes the other way. */
const chance = 0.5;

/** How much dearer than the best a reading may be whose size fits and whose direction does not, and how much cheaper than any that fits. */
const turnedReach = 0.26;

export interface Weighing {
  /** Say nothing rather than "untied" where nothing fits: a number that need not be about a reading. */
  silent?: boolean;
  /** How far a less likely reading keeps an alarm back. */
  doubt?: number;
  /** Another bound for "about as good", where few values are possible and chance fits are likely. */
  margin?: number;
  /** Never an alarm: the words leave open what kind of statement it is. */
  soft?: boolean;
}

/** Whether a reading fits is worked out when it is asked for. */
class Ranked {
  private known?: boolean;
  constructor(private readonly mention: Mention, readonly candidate: Candidate) {}
  get fits(): boolean { return (this.known ??= fit(this.mention, this.candidate)); }
}

export function decide(m: Mention, candidates: readonly Candidate[], weighing: Weighing): Decision {
  const ranked = (candidates.length < 2 ? candidates : [...candidates].sort((a, b) => a.cost - b.cost)).map((candidate) => new Ranked(m, candidate));
  const best = ranked[0];
  if (!best) return { verdict: weighing.silent ? 'not-a-claim' : 'untied', why: 'no reading of the record goes with these words', ranked };
  // The same comparison the other way round is never "about as good": it is the mistake looked for.
  const counts = (r: { candidate: Candidate; fits: boolean }): boolean => r.fits && !mirrors(best.candidate, r.candidate);
  const near = ranked.find((r) => counts(r) && r.candidate.cost <= best.candidate.cost + (weighing.margin ?? margin));
  // What the words say best has just the size that was said, and goes the other way: a dearer reading that fits is chance,
  // where the words themselves name what is compared with what. A base carried over from before proves less.
  const turned = weighing.soft ? undefined : ranked.find((r) => r.candidate.cost <= best.candidate.cost + turnedReach && isTurned(m, r.candidate));
  // "248 to 199, which is 25 percent less": right the other way round, so it was taken of the wrong one of the two.
  const right = turned?.candidate.kind === 'percent_change' ? ranked.find((r) => r.candidate.subject === turned.candidate.base && r.candidate.base === turned.candidate.subject && r.candidate.kind === 'percent_change' && !r.fits && r.candidate.cost <= turned.candidate.cost + chance && (r.candidate.sign === 0 || r.candidate.sign === r.candidate.fact.value.sign())) : undefined;
  if (right && !near) return { verdict: 'disagrees', chosen: right.candidate, why: right.candidate.why, ranked };
  if (turned && (!near || near.candidate.cost > turned.candidate.cost + (turned.candidate.firm ? turnedReach : chance))) return { verdict: 'disagrees', chosen: turned.candidate, why: turned.candidate.why, ranked, turned: true };
  if (near) return { verdict: 'agrees', chosen: near.candidate, why: near.candidate.why, ranked };
  const far = ranked.find((r) => counts(r) && r.candidate.cost <= best.candidate.cost + (weighing.doubt ?? doubt));
  if (weighing.silent) return { verdict: 'not-a-claim', why: 'need not be about a reading', ranked };
  if (far) return { verdict: 'untied', chosen: best.candidate, why: `would be right for another reading (${far.candidate.fact.id})`, ranked, ...(!weighing.soft && best.candidate.cost <= certain && { excused: true }) };
  if (weighing.soft) return { verdict: 'untied', chosen: best.candidate, why: 'the words leave open what is stated', ranked };
  if (best.candidate.cost > certain) return { verdict: 'untied', chosen: best.candidate, why: 'the words leave open what it speaks of', ranked };
  return { verdict: 'disagrees', chosen: best.candidate, why: best.candidate.why, ranked };
}

/** The size fits and the direction does not. */
export function isTurned(m: Mention, x: Candidate): boolean {
  return x.sign !== 0 && (x.base !== undefined || (x.firm && x.term.args.length === 2)) && !fit(m, x) && fit(m, { ...x, sign: 0 });
}

function mirrors(a: Candidate, b: Candidate): boolean {
  return a !== b && a.base !== undefined && a.base === b.subject && a.subject === b.base && b.cost > a.cost + 0.05;
}

/** The best reading may cost no more than this for an alarm. */
const certain = 1.2;

export function fit(m: Mention, x: Candidate): boolean {
  if (x.kind === 'rank') return m.value.sign() < 0 ? x.fact.value.toNumber() === x.fact.keys.length : x.fact.value.equals(m.value);
  if (x.sign !== 0 && x.fact.value.sign() !== 0 && x.fact.value.sign() !== x.sign) return false;
  return fits(m, x.fact, { size: toldAsSize(x), exact: x.exact ?? false });
}
