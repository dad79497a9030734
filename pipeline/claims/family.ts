// Parts of one thing that are numbered alike: the bays of a rack, the cores of a chip. What is said of "the bays" is said over all of them.
import type { Context } from './context.js';
import { siblings } from './siblings.js';
import type { Cell, Grid } from './grid.js';
import { onlySet } from './measured.js';

/** The like-numbered parts of the same setup, setting and work that were measured; empty where there are fewer than two. */
export function familyOf(g: Grid, cell: Cell): Cell[] {
  const slot = g.of.part[0]!;
  const stem = stemOf(cell.at[slot]!);
  if (stem === undefined || cell.fixed) return [];
  const all = siblings(g, cell, [slot]).filter((x) => stemOf(x.at[slot]!) === stem);
  return all.length > 1 ? all : [];
}

/** The words speak of several of them: by their own noun in the plural, or by a plural part of which nothing but a limit is on record. */
export function familySaid(c: Context, cell: Cell): boolean {
  const slot = c.grid.of.part[0]!;
  const stem = stemOf(cell.at[slot]!);
  if (stem === undefined) return false;
  const noun = stem.split('-').at(-1)!;
  if (c.parsed.low.includes(`${noun}s`) || c.parsed.low.includes(`${noun}es`)) return true;
  return c.hits.hits.some((h) => h.slot === slot && c.parsed.low[h.to - 1]!.endsWith('s') && onlySet(c.grid, cell.at[c.grid.of.measure[0]!]!, slot, h.value));
}

function stemOf(part: string): string | undefined {
  return /^(.*[a-z])-?\d+$/.exec(part)?.[1];
}
