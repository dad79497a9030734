// The readings of the record that the evidence for each slot leaves, the cheapest first.
import type { SlotEvidence } from './evidence.js';
import type { Branch, Cell, Grid } from './grid.js';
import { constantRoles } from './roles.js';

/** Cells with their cost above the best one's, the best first, none more than `limit` above it. */
export function cellsFor(g: Grid, e: readonly SlotEvidence[], limit: number): { cell: Cell; cost: number }[] {
  for (const start of [1.5, 4, 7]) {
    const found = walkTree(g, e, start + limit, limit);
    const least = found[0]?.cost;
    if (least === undefined || least > start) continue;
    let many = found.length;
    while (many > 0 && found[many - 1]!.cost > least + limit) many--;
    found.length = many;
    for (const x of found) x.cost -= least;
    return found;
  }
  return [];
}

/** Cells that cost no more than `limit`; those more than `above` dearer than the best may be left out. */
function walkTree(g: Grid, e: readonly SlotEvidence[], limit: number, above: number): { cell: Cell; cost: number }[] {
  const out: { cell: Cell; cost: number }[] = [];
  const order = g.order;
  const phase = e[g.of.phase[0]!]!;
  const markSaid = g.holders.size > 0 && phase.named && !phase.costs.some((v) => phase.costs.get(v) === 0 && !constantRoles.includes(g.roles.get(v)!));
  const costOf = (i: number, value: string): number => {
    const slot = e[i]!;
    // "the Larch's limit is 280": who holds the marks of them all may give it, unless it has one of its own.
    return value === '' ? slot.empty : slot.costs.get(value) ?? (g.slots[i]!.field === 'setup' && g.holders.has(value) ? (!slot.named ? 0.3 : markSaid ? 0.5 : slot.rest) : slot.rest);
  };
  // What was spoken of last among the things that a measure has: a part that it lacks is no reason against the others.
  const least = new Map<string, number[]>();
  const leastFor = (measure: string): number[] => {
    let list = least.get(measure);
    if (!list) {
      const with_ = g.valuesWith.get(measure);
      list = e.map((slot, i) => {
        const { field } = g.slots[i]!;
        if (slot.named || !with_ || field === 'measure') return 0;
        let smallest = field === 'phase' ? 0.9 : 9;
        for (const v of with_[i]!) smallest = Math.min(smallest, costOf(i, v));
        return smallest;
      });
      least.set(measure, list);
    }
    return list;
  };
  // What constants may cost less at the end.
  const slack = g.holders.size ? 1 : 0;
  let most = limit;
  const walk = (branch: Branch, depth: number, cost: number, floor: readonly number[] | undefined): void => {
    if (out.length > 600) return;
    if (depth === order.length) {
      if (!branch.cell) return;
      const own = cost + (branch.cell.fixed ? constantCost(g, e, branch.cell) : 0);
      out.push({ cell: branch.cell, cost: own });
      most = Math.min(most, own + above + slack);
      return;
    }
    const i = order[depth]!;
    const slot = e[i]!;
    // The values that the words or the sentences before give first: they are the cheap ones, and bound what else is looked at.
    for (let x = slot.costs.first; x; x = x.next) {
      const next = branch.next.get(x.key);
      if (next) step(x.key, next, i, depth, cost, floor);
    }
    const open = slot.costs.has('') ? undefined : branch.next.get('');
    if (open) step('', open, i, depth, cost, floor);
    const below = floor?.[i] ?? 0;
    const others = g.holders.size && g.slots[i]!.field === 'setup' && (!slot.named || markSaid) ? Math.min(slot.named ? 0.5 : 0.3, slot.rest) : slot.rest;
    if (others === Infinity || cost + others - (below === Infinity ? 0 : below) > most) return;
    for (const [value, next] of branch.next) if (value !== '' && !slot.costs.has(value)) step(value, next, i, depth, cost, floor);
  };
  const step = (value: string, next: Branch, i: number, depth: number, cost: number, floor: readonly number[] | undefined): void => {
    const raw = costOf(i, value);
    if (raw === Infinity) return;
    const below = floor?.[i] ?? 0;
    const c = below === Infinity ? raw : raw - below;
    if (cost + c <= most) walk(next, depth + 1, cost + c, floor ?? leastFor(value));
  };
  walk(g.tree, 0, 0, undefined);
  return out.length < 2 ? out : out.sort((a, b) => a.cost - b.cost || a.cell.index - b.cell.index);
}

/** A limit or target is meant only where the words say so, or where the measure has nothing else. */
function constantCost(g: Grid, e: readonly SlotEvidence[], cell: Cell): number {
  const phase = e[g.of.phase[0]!]!;
  if (phase.named) return 0;
  if (e.some((x, i) => g.slots[i]!.field === 'setup' && x.named && g.holders.has(cell.at[i]!))) return -1;
  return 0;
}
