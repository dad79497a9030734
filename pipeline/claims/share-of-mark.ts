// "It uses up 41 percent of the allowance": a share of a limit or a target that is named by no number is of the one for the
// quantity spoken of last, and what has the share is a reading of that quantity.
import { type BaseWords, baseWords } from './bases.js';
import { type Context, subjectCells } from './context.js';
import { type Cell, constantOf } from './grid.js';
import { firstCell } from './terms.js';

export const ofTheMark = 'of the mark there is for it';

/** Readings of the quantity spoken of last with its mark; none where the words speak of more than a mark. */
export function markedSides(c: Context, index: number): { subject: Cell; base: Cell; cost: number }[] {
  const g = c.grid;
  const words = baseWords(c, index);
  const role = words.roles.find((r) => r === 'limit' || r === 'target');
  if (!role || c.parsed.said[index]!.cue.op !== 'share' || [...words.overrides.keys()].some((i) => g.slots[i]!.field !== 'phase') || namesQuantity(c, index, words)) return [];
  // A figure said in the same sentence is what has the share.
  if (c.done.slice(0, index).some((d) => d?.subject)) return [];
  const last = c.now.said.flatMap((t) => { const x = t.kind === 'mean' ? firstCell(g, t) : undefined; return x && x.unit.dimension !== 'share' ? [x] : []; })[0];
  if (!last) return [];
  const same = [...g.of.measure, ...g.of.part];
  const { cells } = subjectCells(c, index, [last.unit]);
  const other = role === 'limit' ? 'target' : 'limit';
  const sides = cells.flatMap(({ cell, cost }) => {
    const base = cell.fixed || !same.every((i) => cell.at[i] === last.at[i]) ? undefined : constantOf(g, cell, role) ?? constantOf(g, cell, other);
    return base ? [{ subject: cell, base, cost }] : [];
  });
  const least = Math.min(...sides.map((x) => x.cost));
  return sides.flatMap((x) => (x.cost - least > 1 ? [] : [{ ...x, cost: x.cost - least }]));
}

/** A quantity is named beside the share, or a number within what it is of. */
function namesQuantity(c: Context, index: number, words: BaseWords): boolean {
  const { said, hits, grid } = { said: c.parsed.said, hits: c.hits.hits, grid: c.grid };
  const { base } = said[index]!.cue;
  if (!base || !words.any || said.some((s, k) => k !== index && s.mention.from >= base.from && s.mention.from < base.to)) return true;
  return hits.some((h) => h.segment === index && [...grid.of.measure, ...grid.of.part].includes(h.slot));
}
