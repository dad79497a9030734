// "takes 61 watts to hand on its 50": a number that a thing has as its own, in the unit of the figure before, is one that was set or
// promised for it, where the record has just that.
import type { Candidate, Context } from './context.js';
import { fit } from './decide.js';
import { push } from './read-value.js';
import { valueOf } from './terms.js';

/** Readings as what is set for the thing of the figure before. */
export function possessed(c: Context, index: number): Candidate[] {
  const g = c.grid;
  const { mention: m } = c.parsed.said[index]!;
  const before = c.done[index - 1];
  const out: Candidate[] = [];
  if (m.type !== 'cardinal' || m.unit || m.decimals > 0 && m.hedge || !/^(?:its|their|his|her)$/.test(c.parsed.low[m.from - 1] ?? '') || before?.term.kind !== 'mean' || !before.subject || before.subject.fixed || !fit(c.parsed.said[index - 1]!.mention, before)) return out;
  const own = before.subject;
  for (const cell of g.cells) {
    if (!cell.fixed || cell.unit.dimension !== own.unit.dimension || !g.slots.every((slot, i) => slot.field === 'part' || slot.field === 'phase' || !cell.at[i] || cell.at[i] === own.at[i] || g.holders.has(cell.at[i]!))) continue;
    push(out, c, valueOf(cell.key), 'constant', 0, cell, 'what is set for it', {});
  }
  return out.filter((x) => fit(m, x));
}
