// An alarm that was held back, given after all: where the words name outright what is spoken of, and the number is near to what
// the record gives, that some other reading would be right as well is chance.
import type { Candidate, Context } from './context.js';
import { fit } from './decide.js';
import { pairedSurely } from './pairing.js';
import type { Reading } from './read.js';

/** Digits that say something: "74.7" has three, "1,390" three, "0.2" one. */
export function significant(m: { value: { toNumber(): number }; decimals: number }): number {
  const text = Math.abs(m.value.toNumber() * 10 ** Math.max(0, m.decimals)).toFixed(0);
  return text.replace(/0+$/, '').length || 1;
}

/** One of the two that are compared is what the sentences speak of: named here, in the heading, or last; or the figure beside. */
export function oneNamed(c: Context, index: number, x: Candidate): boolean {
  if (!x.subject || !x.base) return false;
  const g = c.grid;
  const differing = g.slots.flatMap((_, i) => (x.subject!.at[i] !== x.base!.at[i] ? [i] : []));
  return differing.some((i) => spokenOf(c, index, i, x.subject!.at[i]!));
}

function spokenOf(c: Context, index: number, slot: number, value: string, lately = 1): boolean {
  const own = c.hits.hits.filter((h) => h.slot === slot && h.baseOf < 0 && h.segment <= index);
  if (own.length) return own.some((h) => h.value === value);
  const section = c.now.heading.filter(([i]) => i === slot).map(([, v]) => v);
  if (section.includes(value)) return true;
  // The section is about the other one: which of the two is meant is open.
  if (section.length === 1) return false;
  return c.now.topics[slot]![0] === value && c.now.together[slot] === 1 && c.now.ages[slot]! <= lately;
}

/** How much dearer a reading that fits still is a doubt. */
const reach = 1.8;

/** A topic that nothing else was named beside stays one. */
const longAgo = 99;

/** The plainest kinds, whose number can be told to be near. */
const plain = new Set(['mean', 'constant', 'raw']);

export function insisted(c: Context, index: number, r: Reading): Reading {
  const best = r.ranked[0];
  if (r.verdict === 'agrees' || !best || best.fits) return r;
  const held = /^(?:would be right for another|the words leave open what is stated|need not be about)/.test(r.why);
  const x = best.candidate;
  const { mention, segment, cue } = c.parsed.said[index]!;
  if (!held || x.cost > 0.05 || !plain.has(x.kind) || !x.subject || mention.hedge || mention.type !== 'cardinal') return r;
  if (cue.op !== 'value' || significant(mention) + (mention.decimals > 0 ? 1 : 0) < 3 || !close(mention.value.toNumber(), x)) return r;
  // "96.5 against 96.6": what was given rightly is not given again.
  if (c.done.some((d, k) => d !== undefined && d.subject === x.subject && d.term.kind === 'mean' && fit(c.parsed.said[k]!.mention, d))) return r;
  const g = c.grid;
  const measure = x.subject.at[g.of.measure[0]!]!;
  const varied = [...(x.term.kind === 'median' ? [] : g.of.setup), ...g.of.setting, ...g.of.workload, ...g.of.part].filter((i) => (g.valuesWith.get(measure)?.[i]?.size ?? 0) > 1);
  const overAll = x.term.kind === 'median';
  const near = c.hits.hits.filter((h) => h.baseOf < 0 && h.segment <= index && varied.includes(h.slot) && x.subject!.at[h.slot] === h.value && !c.hits.hits.some((o) => o.slot === h.slot && o.value !== h.value && o.from > h.from && o.from < mention.from));
  const pairs = pairedSurely(c, index);
  const known = varied.every((i) => (pairs && c.hits.paired.get(index)!.some((p) => p.slot === i && p.value === x.subject!.at[i])) || spokenOf(c, index, i, x.subject!.at[i]!, near.length || overAll ? longAgo : 1) || (g.slots[i]!.field === 'part' && c.now.together[i] === 1));
  const pronoun = c.parsed.low.slice(segment.from, mention.from).some((w) => /^(?:it|it's|that's|they|this)$/.test(w));
  if (!known || (!near.length && !pronoun && !overAll)) return r;
  // What would be right for another thing is no doubt where the sentence names this one.
  const excluded = (o: Candidate): boolean => near.some((h) => o.subject !== undefined && o.subject.at[h.slot] !== h.value && o.term.kind === x.term.kind);
  if (r.ranked.some((o) => o.fits && o.candidate.cost <= x.cost + reach && !excluded(o.candidate))) return r;
  return { ...r, verdict: 'disagrees', chosen: x, why: x.why, insisted: true };
}

/** A slip leaves a number in the neighbourhood: another run's or version's, a digit off, two digits changed about. */
function close(said: number, x: Candidate): boolean {
  const recorded = Math.abs(x.fact.value.toNumber());
  const share = Math.abs(said) / recorded;
  return share > 0.8 && share < 1.25;
}
