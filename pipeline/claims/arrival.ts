// "The score climbs to 20,890": the figure may be right and the verb wrong. What it came from is not said; where it would have to
// fall from everything that it can have come from, it does not climb.
import { comesFrom } from './comes-from.js';
import { isFact } from '../facts/index.js';
import { changeVerbs, phraseAt, stretch } from '../script/index.js';
import type { Candidate, Context } from './context.js';
import { moved, movedTo } from './grid.js';
import type { Reading } from './read.js';
import { evaluate, firstCell, substitute, type Term, valueOf } from './terms.js';
import { usualOf } from './usual-setting.js';

type Direction = 'up' | 'down';

export function arrivals(c: Context, index: number, r: Reading): Reading {
  const x = r.chosen;
  if (r.verdict !== 'agrees' || !x?.subject || x.subject.fixed || x.kind !== 'mean' || r.mention.hedge) return r;
  const way = verbBeforeTo(c, index);
  if (!way) return r;
  const value = x.fact.value;
  if (comesFromElsewhere(c, index)) return r;
  const from = startingPoints(c, x);
  if (from.length === 0 || !from.every((f) => (way === 'up' ? f.value.compare(value) > 0 : f.value.compare(value) < 0))) return r;
  return { ...r, verdict: 'disagrees', chosen: { ...x, sign: (value.sign() > 0 ? -1 : 1) as -1 | 1 }, why: `it goes ${way === 'up' ? 'down' : 'up'} to there` };
}

/** "comes back down to 41", "falls to 41, which is 3 less than it had at dusk": where it was before that, another word says. */
function comesFromElsewhere(c: Context, index: number): boolean {
  const { segment, mention } = c.parsed.said[index]!;
  const { low } = c.parsed;
  const next = c.parsed.said[index + 1];
  return low.slice(Math.max(segment.from, mention.from - 4), mention.from).includes('back') || (next?.cue.op !== 'value' && next?.cue.base !== undefined && /^, (?:which|that|and that)(?:'s| is| was) /.test(`${stretch(low, mention.to, next.mention.from)} `));
}

/** The verb of "drops to", "is up to", with nothing between that it could set out from. */
function verbBeforeTo(c: Context, index: number): Direction | undefined {
  const { segment, mention } = c.parsed.said[index]!;
  const { low } = c.parsed;
  // "sinks to 43 from 46": from where is said.
  if (low[mention.to] === 'from' && comesFrom(low, mention.to)) return undefined;
  let to = mention.from - 1;
  while (to > segment.from && /^(?:just|about|only|around|a|mere|full|the|roughly)$/.test(low[to]!)) to--;
  if (low[to] !== 'to' || low.slice(segment.from, to).includes('from')) return undefined;
  for (let i = to - 1; i >= Math.max(segment.from, to - 4); i--) {
    const p = phraseAt(changeVerbs, low, i);
    if (!p || (p.value !== 'up' && p.value !== 'down')) continue;
    if (low.slice(i + p.words.length, to).some((w) => /^(?:,|and|when|if|it|that|until|once|while|which|we|you|they)$/.test(w))) return undefined;
    // "ends up at", "comes close to", "adds up to": no way is meant.
    return /^(?:add|adds|close|top|tops|settle|up)/.test(p.words[0]!) || /^(?:ends?|ended|not|n't|never|without)$/.test(low[i - 1] ?? '') ? undefined : p.value;
  }
  return undefined;
}

/** What the figure can have come from: where the last comparison set out, else the same quantity as said last, else of what was spoken of before and as it usually is. */
function startingPoints(c: Context, x: Candidate): Candidate['fact'][] {
  const g = c.grid;
  const { now } = c;
  const subject = x.subject!;
  const facts = (terms: readonly (Term | undefined)[]): Candidate['fact'][] => terms.flatMap((t) => { const f = t && evaluate(c.facts, t); return f && isFact(f) ? [f] : []; });
  const elsewhere = (slot: number, value: string): Term | undefined => {
    if (value === subject.at[slot]) return undefined;
    if (x.term.kind !== 'mean') return substitute(g, x.term, new Map([[slot, value]]));
    const y = movedTo(g, subject, slot, value);
    return y && !y.fixed ? valueOf(y.key) : undefined;
  };
  // Set beside another thing, it may as well have come from a setting of its own that was spoken of.
  const ownSettings = (y: Candidate['subject']): Candidate['fact'][] => (y && g.of.setup.some((i) => y.at[i] !== subject.at[i]) ? facts(g.of.setting.flatMap((i) => now.topics[i]!.map((v) => elsewhere(i, v)))) : []);
  // "In the closed case it climbs to 95": from what it was elsewhere.
  const otherThings = g.of.setup.filter((i) => !now.said.some((t) => firstCell(g, t)?.at[i] === subject.at[i]) && c.hits.hits.some((h) => h.slot === i && h.value === subject.at[i])).flatMap((i) => [...g.values[i]!.keys()].map((v) => elsewhere(i, v)));
  if (now.base && (now.since ?? forgotten) < forgotten && now.base.every(([i]) => g.slots[i]!.field !== 'phase') && now.base.some(([i, v]) => subject.at[i] !== v)) {
    const y = moved(g, subject, new Map(now.base));
    const f = facts([x.term.kind === 'mean' ? y && !y.fixed && y !== subject ? valueOf(y.key) : undefined : substitute(g, x.term, new Map(now.base))]);
    if (f.length) return [...f, ...ownSettings(y), ...facts(otherThings)];
  }
  const same = [...g.of.measure, ...g.of.part, ...g.of.workload];
  const last = now.said.find((t) => { const y = t.kind === x.term.kind ? firstCell(g, t) : undefined; return y !== undefined && y !== subject && same.every((i) => y.at[i] === subject.at[i]) && !unlike(g, y, subject); });
  if (last) return [...facts([last, ...otherThings]), ...ownSettings(firstCell(g, last))];
  const spoken = [...g.of.setting, ...g.of.setup].flatMap((i) => now.topics[i]!.map((v) => elsewhere(i, v)));
  const usual = g.of.setting.flatMap((i) => { const v = usualOf(g.values[i]!.keys()); return v === undefined ? [] : [elsewhere(i, v)]; });
  const before = g.of.phase.flatMap((i) => [...g.roles].filter(([, role]) => role === 'idle' || role === 'start').map(([v]) => elsewhere(i, v)));
  return facts([...spoken, ...usual, ...before, ...otherThings]);
}

/** Another thing in another setting: one does not set out from there. */
function unlike(g: Context['grid'], a: NonNullable<Candidate['subject']>, b: NonNullable<Candidate['subject']>): boolean {
  return g.of.setup.some((i) => a.at[i] !== b.at[i]) && g.of.setting.some((i) => a.at[i] !== b.at[i]);
}

/** A comparison made this many sentences ago says nothing of where a figure comes from. */
const forgotten = 3;
