// Whether a name stands for what something is compared with, and in which comparison of its sentence.
import { byBefore } from './by-how-much.js';
import type { Grid } from './grid.js';
import type { Name } from './lexicon.js';
import type { Parsed } from './parse.js';

/** The mention that is compared with what is named; -1 where it is itself spoken of. */
export function comparedIn(g: Grid, p: Parsed, n: Name, segment: number): number {
  return [comparing(p, n.to - 1), passedBy(g, p, n, segment), leftAt(p, n)].find((k) => k >= 0) ?? -1;
}

/** The mention whose comparison a name stands in, or -1: of several, the last that is said to compare ("at 27.3 decibels it is 2.4 quieter than its rival"). */
export function comparing(p: Parsed, at: number): number {
  let first = -1;
  let last = -1;
  for (let i = 0; i < p.said.length; i++) {
    const { cue, mention } = p.said[i]!;
    if (!cue.base || at < cue.base.from || at >= cue.base.to) continue;
    if (first < 0) first = i;
    if (cue.op !== 'value' && mention.from < at) last = i;
  }
  return last >= 0 ? last : first;
}

/** "passes the house mark by 1.3": who holds the marks stands for what is passed, not for what passes it. */
function passedBy(g: Grid, p: Parsed, n: Name, segment: number): number {
  const m = p.said[segment]?.mention;
  const by = m ? byBefore(p.low, m.from) : -1;
  return by > 0 && n.to <= by && by - n.to <= 2 && n.meanings.some((x) => x.slots.some((s) => g.of.setup.includes(s.slot) && g.holders.has(s.value))) ? segment : -1;
}

/** "From idle, its core warmed up by 45": the first change of the sentence sets out from there. */
function leftAt(p: Parsed, n: Name): number {
  return p.low[0] === 'from' && n.from <= 2 && p.low[n.to] === ',' && n.meanings.some((m) => m.role !== undefined) ? p.said.findIndex((s) => s.cue.op === 'change') : -1;
}
