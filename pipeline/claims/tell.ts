// A reading put into the words of a verdict.
import type { Source } from '../places/index.js';
import { show } from '../quantities/index.js';
import type { Fact, Facts } from '../facts/index.js';
import type { Mention, Sentence } from '../script/index.js';
import { likelySlip, alternativesTo } from '../slips/index.js';
import type { Reading } from './read.js';
import { suggestion } from './suggest.js';
import type { Considered, Verdict } from './verdict.js';

/** How many of the readings of a number a verdict tells of. */
export const mostTold = 8;

export function tellVerdict(r: Reading, script: Source, s: Sentence, facts: Facts): Verdict {
  const m = r.mention;
  const text = script.text.slice(s.start + m.start, s.start + m.end);
  const fact = r.verdict === 'not-a-claim' ? undefined : r.chosen?.fact;
  let considered: Considered[] | undefined;
  const consider = (): Considered[] => r.ranked.slice(0, mostTold).map(({ candidate: x, fits }): Considered => ({ kind: x.kind, fact: x.fact.id, shown: x.fact.shown, fits, cost: x.cost, why: x.why }));
  const place = script.place(s.start + m.start, s.start + m.end);
  const kind = r.verdict === 'not-a-claim' ? '' : r.chosen?.kind ?? '';
  const from = fact ? [...(r.chosen!.keys ?? fact.keys)] : [];
  const ids = fact ? [fact.id] : [];
  if (!fact || r.verdict === 'untied') return { place, text, verdict: r.verdict, kind, from, facts: ids, said: text, why: r.why, get candidates() { return (considered ??= consider()); }, mention: m };
  const out: Verdict = {
    place, text, verdict: r.verdict, kind, from, facts: ids, said: text, why: r.why, get candidates() { return (considered ??= consider()); }, mention: m,
    get recorded() { return recordedFor(m, fact); }, get derivation() { return fact.formula; },
  };
  if (r.verdict !== 'disagrees') return out;
  const slip = slipOf(r, fact, facts);
  if (slip) out.slip = slip;
  // Markup inside the number has no place in the suggestion.
  const better = text === s.text.slice(m.start, m.end) ? suggestion(m, text, r.chosen!) : undefined;
  if (better !== undefined) out.suggest = better;
  return out;
}

const slips = new WeakMap<Reading, string>();

/** What kind of mistake it is, in words; empty where none explains it. Looked for once for each reading, as what is wrong may stay wrong for long. */
function slipOf(r: Reading, fact: Fact, facts: Facts): string {
  let says = slips.get(r);
  if (says === undefined) {
    const { mention: m } = r;
    const turned = r.chosen!.sign !== 0 && fact.value.sign() !== 0 && fact.value.sign() !== r.chosen!.sign;
    says = turned ? 'the right size may be said, but the direction is the other one' : likelySlip({ value: m.value, decimals: Math.max(0, m.decimals), ...(m.unit && !m.loose && { unit: m.unit }) }, fact, alternativesTo(fact, facts))?.says ?? '';
    slips.set(r, says);
  }
  return says;
}

function recordedFor(m: Mention, fact: Reading['ranked'][number]['candidate']['fact']): string {
  const decimals = Math.max(fact.decimals, m.decimals);
  return decimals === fact.decimals ? fact.shown : show(fact.value, fact.unit, decimals);
}

export function quietVerdict(q: { mention: Mention; why: string }, script: Source, s: Sentence): Verdict {
  const { start, end } = q.mention;
  const text = script.text.slice(s.start + start, s.start + end);
  return { place: script.place(s.start + start, s.start + end), text, verdict: 'not-a-claim', kind: '', from: [], facts: [], said: text, why: q.why, candidates: [], mention: q.mention };
}
