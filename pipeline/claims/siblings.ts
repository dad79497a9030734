// Facts that differ from one another in some slots only: the same measure of all other things, in all other settings.
import { type Context, polarity } from './context.js';
import type { Cell, Grid } from './grid.js';

/** All cells that differ from one in the given slots only, as a list of one's own. */
export function siblings(g: Grid, cell: Cell, slots: readonly number[]): Cell[] {
  return [...siblingsOf(g, cell, slots)];
}

const groups = new WeakMap<Grid, Map<string, Map<string, Cell[]>>>();
const groupsOf = new WeakMap<Cell, Map<string, readonly Cell[]>>();

/** The same, not to be changed. Grouped once for each set of slots, and found once for each cell. */
export function siblingsOf(g: Grid, cell: Cell, slots: readonly number[]): readonly Cell[] {
  const id = slots.join();
  let known = groupsOf.get(cell);
  if (!known) groupsOf.set(cell, (known = new Map()));
  let found = known.get(id);
  if (!found) known.set(id, (found = grouped(g, id, slots).get(groupOf(cell, slots)) ?? []));
  return found;
}

function grouped(g: Grid, id: string, slots: readonly number[]): ReadonlyMap<string, Cell[]> {
  let bySlots = groups.get(g);
  if (!bySlots) groups.set(g, (bySlots = new Map()));
  let table = bySlots.get(id);
  if (!table) {
    bySlots.set(id, (table = new Map()));
    for (const c of g.cells) {
      const key = groupOf(c, slots);
      const list = table.get(key);
      if (list) list.push(c);
      else table.set(key, [c]);
    }
  }
  return table;
}

function groupOf(c: Cell, slots: readonly number[]): string {
  return c.at.map((v, i) => (slots.includes(i) ? '*' : v)).join('\u0000') + (c.fixed ? '!' : '');
}

const orders = new WeakMap<Cell, Map<string, Cell[]>>();

/** Siblings, the best first. */
export function ordered(c: Context, subject: Cell, slots: readonly number[]): Cell[] {
  let known = orders.get(subject);
  if (!known) orders.set(subject, (known = new Map()));
  const id = slots.join();
  let list = known.get(id);
  if (!list) {
    const good = polarity(c, subject) || -1;
    const value = new Map(siblings(c.grid, subject, slots).map((x) => { const f = c.facts.value(x.key); return [x, 'id' in f ? f.value.toNumber() : 0] as const; }));
    known.set(id, (list = [...value.keys()].sort((p, q) => good * (value.get(q)! - value.get(p)!))));
  }
  return list;
}

/** The best of more than two. */
export function extreme(c: Context, subject: Cell, slots: readonly number[]): Cell | undefined {
  const list = ordered(c, subject, slots);
  return list.length > 2 ? list[0] : undefined;
}

/** The next best, for the best one. */
export function second(c: Context, subject: Cell): Cell | undefined {
  const list = ordered(c, subject, c.grid.of.setup);
  return list.length > 2 && list[0] === subject ? list[1] : undefined;
}
