// "from 5.24 to 5.19 volts, so 45 millivolts", "910 against 1,140, so 25 percent": how far apart the two figures lie that were just
// set against each other, though no word says that it is a difference.
import { stretch } from '../script/index.js';
import type { Candidate, Context } from './context.js';
import { fit } from './decide.js';
import type { Reading } from './read.js';
import { pairWith, push } from './read-value.js';

const leading = /^(?:(?:in|on|with|at|for|when|under|by) (?:the |its |a )?\S+(?: \S+)? )?(?:[,—–(] )?(?:so|that's|that is|which is|which makes|making|makes|or|meaning|call it|i\.e\.|ie)(?: (?:that's|it's|that is|a|an|about|around|roughly|nearly|almost|just|only|over|under|some|like|call it|difference of|gap of|all of))*$/;
const closing = /^(?:|[.,;:!?)—–]|and|but|or|in|there|apart|difference|between|which|for|while|all)$/;
const against = /^(?:(?: ?(?:in|on|with|at|for|when|\p{L}+(?:'s)?)){0,4} )?(?:against|versus|vs|instead of|rather than|compared (?:with|to))(?: (?:the|a|its|just|only|about))*$/u;

export function readEndsApart(c: Context, index: number): Candidate[] {
  const { mention: m, cue } = c.parsed.said[index]!;
  const out: Candidate[] = [];
  const [a, b] = [c.done[index - 2], c.done[index - 1]];
  if (cue.op !== 'value' || cue.base || m.type !== 'cardinal' || a?.term.kind !== 'mean' || b?.term.kind !== 'mean' || !a.subject || !b.subject || a.subject === b.subject || a.subject.fixed || b.subject.fixed) return out;
  const { low, said } = c.parsed;
  const [first, second] = [said[index - 2]!.mention, said[index - 1]!.mention];
  if (!leading.test(stretch(low, second.to, m.from)) || !closing.test(low[m.to] ?? '') || !fit(first, a) || !fit(second, b)) return out;
  const measure = c.grid.of.measure[0]!;
  const percent = m.unit?.id === '%';
  if (a.subject.at[measure] !== b.subject.at[measure] || (percent && a.fact.unit.id === '%') || (!percent && m.unit && m.unit.dimension !== a.fact.unit.dimension && !(m.loose && a.fact.unit.dimension.startsWith('temperature')))) return out;
  const pair = pairWith(c, index - 1)?.second === index - 1;
  // "In the shed it's 70.5 and 72.1, so 1.6": one of them after the other.
  if (!pair && stretch(low, first.to, second.from) !== 'and' && !against.test(stretch(low, first.to, second.from))) return out;
  // "What one fits and the other doesn't" is named behind it: not of both.
  if (c.hits.hits.some((h) => h.from >= m.to && h.from <= m.to + 3 && ['setup', 'setting', 'workload'].includes(c.grid.slots[h.slot]!.field))) return out;
  const kind = percent ? 'percent_change' : c.grid.roles.get(a.subject.at[c.grid.of.phase[0]!]!) === 'idle' ? 'rise' : 'difference';
  const differing = (x: typeof a.subject, y: typeof a.subject): (readonly [number, string])[] => c.grid.slots.flatMap((_, i) => (x!.at[i] !== y!.at[i] ? [[i, y!.at[i]!] as const] : []));
  // "It's 88 against 97, so 9": told of the first, where no change leads from the one to the other.
  const [x, y] = pair ? [b.subject, a.subject] : [a.subject, b.subject];
  push(out, c, { kind, args: [x.key, y.key] }, kind, 0, x, 'between the two figures beside it', { base: y, firm: true, change: differing(x, y) });
  if (percent && !pair) push(out, c, { kind: 'percent_change', args: [y.key, x.key] }, kind, 0.1, y, 'between the two figures beside it', { base: x, firm: true, change: differing(y, x) });
  return out;
}

/** "It takes 41 in the shed and 52 in the hut, so that's 11 more": of those two, and right for no other two by chance. */
export function ofTheTwo(c: Context, index: number, r: Reading): Reading {
  const { mention: m, cue } = c.parsed.said[index]!;
  const x = r.chosen;
  const [a, b] = [c.done[index - 2], c.done[index - 1]];
  if (r.verdict === 'disagrees' || r.verdict === 'not-a-claim' || c.hits.paired.has(index) || cue.op !== 'change' || cue.because === 'from end to end' || cue.base || cue.another || !x?.base || !/^(?:difference|percent_change)$/.test(x.kind) || a?.term.kind !== 'mean' || b?.term.kind !== 'mean' || !a.subject || !b.subject || a.subject.fixed || b.subject.fixed || a.subject === b.subject) return r;
  const { low, said } = c.parsed;
  const [first, second] = [said[index - 2]!.mention, said[index - 1]!.mention];
  const two = new Set([a.subject, b.subject]);
  const measure = c.grid.of.measure[0]!;
  if ((two.has(x.subject!) && two.has(x.base)) || a.subject.at[measure] !== b.subject.at[measure] || x.subject!.at[measure] !== a.subject.at[measure]) return r;
  if (!summing.test(stretch(low, second.to, m.from)) || !fit(first, a) || !fit(second, b) || c.hits.hits.some((h) => h.segment === index && ['setup', 'setting', 'workload', 'phase', 'part'].includes(c.grid.slots[h.slot]!.field))) return r;
  const out: Candidate[] = [];
  for (const [p, q] of [[b.subject, a.subject], [a.subject, b.subject]] as const) push(out, c, { kind: x.term.kind, args: [p.key, q.key] }, x.kind, 0, p, 'between the two figures beside it', { base: q, firm: true });
  return out.length === 2 && !out.some((y) => fit(m, y)) ? { ...r, verdict: 'disagrees', chosen: out[0]!, why: out[0]!.why } : r;
}

const summing = /^(?:(?:in|on|with|at|for|when|under|by) (?:the |its |a )?\S+(?: \S+)? )?[,—–] (?:so|which is|which makes|that's|making)(?: (?:that's|it's|that is|there's|a|an|about|around|roughly|nearly|almost|just|only|over|under|some|like|you|pay|we|get|lose))*$/;
