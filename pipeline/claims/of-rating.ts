// "It uses 54 percent of the Cobble and 71 of the Garth": a share of a thing is one of what that thing is rated for.
import { baseWords } from './bases.js';
import { type Context, subjectCells } from './context.js';
import { type Cell, constantOf } from './grid.js';

export const ofItsRating = 'of what it is rated for';

/** Readings of the thing that the share is of, each with its rating; none where the words speak of more than the thing. */
export function ratedSides(c: Context, index: number): { subject: Cell; base: Cell; cost: number }[] {
  const g = c.grid;
  const { cue, mention } = c.parsed.said[index]!;
  const words = baseWords(c, index);
  const [slot, ...more] = [...words.overrides.keys()];
  if (cue.op !== 'share' || slot === undefined || more.length || g.slots[slot]!.field !== 'setup' || words.roles.length || words.overrides.get(slot)!.length !== 1 || c.parsed.low[mention.to] !== 'of') return [];
  const thing = words.overrides.get(slot)![0]!;
  const name = c.hits.hits.find((h) => h.slot === slot && h.value === thing && h.from >= cue.base!.from)!;
  // "of the Garth's flow": of a quantity of it. Nor where another thing is what the share is had by.
  if (c.parsed.low[name.to - 1]!.endsWith("'s") || c.hits.hits.some((h) => h.slot === slot && h.value !== thing && h.segment === index && h.from < mention.from && !c.parsed.said.some((s) => s.cue.base && h.from >= s.cue.base.from && h.to <= s.cue.base.to))) return [];
  const rated = g.cells.filter((x) => x.at[slot] === thing && x.role === 'rated');
  const measures = new Set(rated.map((x) => x.at[g.of.measure[0]!]));
  if (measures.size !== 1) return [];
  const { cells } = subjectCells(c, index, [rated[0]!.unit], { ignoreBase: true });
  return cells.flatMap(({ cell, cost }) => { const base = cell.fixed || cell.at[slot] !== thing || cost > 1 ? undefined : constantOf(g, cell, 'rated'); return base ? [{ subject: cell, base, cost }] : []; });
}
