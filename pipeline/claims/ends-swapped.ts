// "It goes from 44.1 to 40.8", where it goes from 40.8 to 44.1: each number is right for the other end.
import { type Context, sameCellExcept } from './context.js';
import type { Cell } from './grid.js';
import { fit } from './decide.js';
import type { Reading } from './read.js';

/** `d`: the second end as read, not agreeing. */
export function endsSwapped(c: Context, index: number, d: Reading): Reading {
  const best = d.ranked[0]?.candidate;
  const first = c.done[index - 1];
  if ((d.verdict !== 'untied' && d.verdict !== 'disagrees') || !best?.subject || first?.subject !== best.subject || !fit(c.parsed.said[index - 1]!.mention, first)) return d;
  const varied = new Set(['setup', 'setting', 'workload', 'phase']);
  const other = d.ranked.find((r) => r.fits && r.candidate.subject && r.candidate.term.kind === best.term.kind && sameCellExcept(c.grid, r.candidate.subject, best.subject!).every((i) => varied.has(c.grid.slots[i]!.field)));
  if (other && eitherEnd(c, other.candidate.subject!, best.subject)) return d;
  return other && other.candidate.cost <= best.cost + 1.2 && sameCellExcept(c.grid, other.candidate.subject!, best.subject).some((i) => lately(c, index, i, best.subject!.at[i]!, other.candidate.subject!.at[i]!)) ? { ...d, verdict: 'disagrees', chosen: best, why: 'the two ends are swapped', insisted: true } : d;
}

/** What is spoken of was named here, by the heading, or not long ago; "Full of dust it runs at 71. Out comes the brush. It falls from 36 to 33": where the other was never spoken of, it sets out from the one that was. */
function lately(c: Context, index: number, slot: number, value: string, other: string): boolean {
  const topics = c.now.topics[slot]!;
  return c.hits.hits.some((h) => h.slot === slot && h.value === value && !byFirstEnd(c, index, h)) || c.now.heading.some(([i, v]) => i === slot && v === value) || (topics[0] === value && c.now.ages[slot]! <= (topics.includes(other) ? 6 : 1));
}

/** "from 41 on slow down to 38": where it sets out from, and not where it arrives. */
function byFirstEnd(c: Context, index: number, h: { from: number }): boolean {
  const first = c.parsed.said[index - 1]!.mention;
  return c.parsed.low[first.from - 1] === 'from' && h.from >= first.to && h.from < c.parsed.said[index]!.mention.from;
}

/** It may well go from `b` to `a`: neither is named here or in the heading, and both were spoken of side by side, or in that order. */
export function eitherEnd(c: Context, a: Cell, b: Cell): boolean {
  const slots = sameCellExcept(c.grid, a, b);
  if (!slots.length || slots.some((i) => c.hits.hits.some((h) => h.slot === i) || c.now.heading.some(([slot]) => slot === i))) return false;
  // "30 on the slow one, 36 on the fast one, so 6 more. The other goes from 41 to 49": the same step again.
  const [from, to] = (c.now.pair ?? []).map((k) => c.grid.byKey.get(k));
  return slots.every((i) => c.now.together[i]! > 1 || (from?.at[i] === b.at[i] && to?.at[i] === a.at[i] && (c.now.since ?? 0) <= 2));
}
