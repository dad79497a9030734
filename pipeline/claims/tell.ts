// A reading put into the words of a verdict.
import type { Place, Source } from '../places/index.js';
import { show } from '../quantities/index.js';
import type { Facts } from '../facts/index.js';
import type { Mention, Sentence } from '../script/index.js';
import { alternativesTo, likelySlip, otherQuantity, type Said, type Slip } from '../slips/index.js';
import { isFair, suggestion, toldAsSize, turned as turnedRound, turnedBefore } from '../wording/index.js';
import type { Candidate } from './context.js';
import { meantBy } from './meant.js';
import type { Parsed } from './parse.js';
import type { Reading } from './read.js';
import type { Considered, Verdict } from './verdict.js';

/** How many of the readings of a number a verdict tells of. */
export const mostTold = 8;

export function tellVerdict(r: Reading, script: Source, s: Sentence, p: Parsed, facts: Facts): Verdict {
  const m = r.mention;
  const text = script.text.slice(s.start + m.start, s.start + m.end);
  const told = r.verdict === 'disagrees' && r.chosen && !explained(slipOf(r.mention, r.chosen, facts)) ? meantBy(r) : r.chosen;
  const fact = r.verdict === 'not-a-claim' ? undefined : told?.fact;
  const place = script.place(s.start + m.start, s.start + m.end);
  const kind = r.verdict === 'not-a-claim' ? '' : told?.kind ?? '';
  const out: Verdict = new Told(r, told, fact, place, text, kind, r.verdict === 'untied' || told === r.chosen || !fact ? r.why : told!.why);
  if (!fact || r.verdict === 'untied') return out;
  if (r.verdict !== 'disagrees') return out;
  const slip = slipOf(m, told!, facts);
  if (slip) out.slip = slip.says;
  // Markup inside the number has no place in the suggestion.
  if (text !== s.text.slice(m.start, m.end)) return out;
  const better = suggestion(m, text, told!, slip, s.text.slice(m.end));
  if (better !== undefined) out.suggest = better;
  else if (slip?.kind === 'direction') {
    const cue = p.said.find((x) => x.mention.from === m.from)?.cue;
    const word = cue && (turnedRound(p.tokens, m, cue.because, (m.unit ?? fact.unit).dimension) ?? turnedBefore(p.tokens, m.from));
    if (word) out.turn = { place: script.place(s.start + word.start, s.start + word.end), text: s.text.slice(word.start, word.end), suggest: word.put };
  }
  return out;
}

type Figure = Candidate['fact'];

/** What few ask for is made when they do: thousands of verdicts are told of for one that is looked into. */
class Told implements Verdict {
  readonly from: Verdict['from'];
  readonly facts: string[];
  verdict: Verdict['verdict'];
  mention: Mention;
  declare slip?: string;
  declare suggest?: string;
  declare turn?: NonNullable<Verdict['turn']>;
  readonly #r: Reading;
  readonly #fact: Figure | undefined;
  #considered: Considered[] | undefined;

  constructor(r: Reading, told: Candidate | undefined, fact: Figure | undefined, readonly place: Place, readonly text: string, readonly kind: string, public why: string) {
    this.from = fact ? [...(told!.keys ?? fact.keys)] : [];
    this.facts = fact ? [fact.id] : [];
    this.verdict = r.verdict;
    this.mention = r.mention;
    this.#r = r;
    this.#fact = r.verdict === 'untied' ? undefined : fact;
  }

  get said(): string { return this.text; }
  get recorded(): string | undefined { return this.#fact && recordedFor(this.mention, this.#fact); }
  get derivation(): string | undefined { return this.#fact?.formula; }
  get candidates(): Considered[] {
    return (this.#considered ??= this.#r.ranked.slice(0, mostTold).map(({ candidate: x, fits }): Considered => ({ kind: x.kind, fact: x.fact.id, shown: x.fact.shown, fits, cost: x.cost, why: x.why })));
  }
}

/** A slip that says where the number comes from, and not only that its digits are like the right one's. */
function explained(slip: Slip | undefined): boolean {
  return slip !== undefined && slip.kind !== 'digit';
}

const slips = new WeakMap<Candidate, Map<Mention, Slip | null>>();

/** What kind of mistake it is; undefined where none explains it. Looked for once for each reading, as what is wrong may stay wrong for long. */
function slipOf(m: Mention, told: Candidate, facts: Facts): Slip | undefined {
  let known = slips.get(told);
  if (!known) slips.set(told, (known = new Map()));
  let slip = known.get(m);
  if (slip === undefined) {
    const sign = told.fact.value.sign();
    // A size is told without its sign: as that which the record has.
    const value = toldAsSize(told) && sign < 0 ? m.value.abs().negated() : toldAsSize(told) ? m.value.abs() : m.value;
    const turned = told.sign !== 0 && sign !== 0 && sign !== told.sign;
    slip = turned && isFair(m, told) ? { kind: 'direction', says: 'the right size may be said, but the direction is the other one' }
      : turned ? null : likelySlip(said(m, told, value), told.fact, alternativesTo(told.fact, facts)) ?? otherQuantity({ ...said(m, told, value), ...(m.unit && { unit: m.unit }) }, told.fact, facts) ?? null;
    known.set(m, slip);
  }
  return slip ?? undefined;
}

/** "degrees" are of whatever scale the record has, where it has a temperature. */
function said(m: Mention, { fact }: Candidate, value: Mention['value']): Said {
  return { value, decimals: Math.max(0, m.decimals), ...(m.unit && !(m.loose && /^temperature/.test(fact.unit.dimension)) && { unit: m.unit }) };
}

function recordedFor(m: Mention, fact: Figure): string {
  const decimals = Math.max(fact.decimals, m.decimals);
  return decimals === fact.decimals ? fact.shown : show(fact.value, fact.unit, decimals);
}

export function quietVerdict(q: { mention: Mention; why: string }, script: Source, s: Sentence): Verdict {
  const { start, end } = q.mention;
  const text = script.text.slice(s.start + start, s.start + end);
  return { place: script.place(s.start + start, s.start + end), text, verdict: 'not-a-claim', kind: '', from: [], facts: [], said: text, why: q.why, candidates: [], mention: q.mention };
}
