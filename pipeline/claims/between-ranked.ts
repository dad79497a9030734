// "Hottest is the Larch, coolest the Alder, and there are 12 degrees between them": the two whose places were just told.
import { type Candidate, type Context, unitsOf } from './context.js';
import { fit } from './decide.js';
import { siblings } from './siblings.js';
import { number } from './read-change.js';
import { push } from './read-value.js';

export function betweenRanked(c: Context, index: number): Candidate[] {
  const { cue } = c.parsed.said[index]!;
  const out: Candidate[] = [];
  if (cue.op !== 'change' || cue.way !== 'apart' || cue.base || !/^(?:between them|apart|(?:(?:have|has) )?gone missing|in it)$/.test(cue.because)) return out;
  const placed = c.done.flatMap((d, k) => (d?.kind === 'rank' && d.subject && named(c, k) && fit(c.parsed.said[k]!.mention, d) ? [d.subject] : []));
  const [a, b] = placed.slice(-2);
  const measure = c.grid.of.measure[0]!;
  if (!a || !b || a === b || a.at[measure] !== b.at[measure] || c.done.findLastIndex((d) => d?.term.kind === 'mean' && d.subject?.fixed !== true) > c.done.findLastIndex((d) => d?.kind === 'rank')) return out;
  if (!unitsOf(c.parsed.said[index]!, true)?.some((u) => u.dimension === a.unit.dimension)) return out;
  push(out, c, { kind: 'difference', args: [a.key, b.key] }, 'difference', 0, a, 'between the two just placed', { base: b, firm: true });
  // "… with the lid off, warmest the Alder with it on": where one was placed over all that was tried, so may the other.
  const ends = siblings(c.grid, a, [...c.grid.of.setup, ...c.grid.of.setting]).sort((x, y) => number(c, x) - number(c, y));
  if (ends.length > 2) push(out, c, { kind: 'difference', args: [ends.at(-1)!.key, ends[0]!.key] }, 'difference', 0.5, ends.at(-1), 'between the two just placed', { base: ends[0]!, firm: true });
  return out;
}

/** Whose place it is, is said: not "the highest and the lowest are 3 apart". */
function named(c: Context, k: number): boolean {
  return c.hits.hits.some((h) => h.segment === k && h.baseOf < 0 && ['setup', 'setting'].includes(c.grid.slots[h.slot]!.field));
}
