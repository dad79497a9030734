// "the belt speed", where speeds are known of a belt and of a fan, and a measure is called so by itself: that part's is meant.
import type { Hit } from './evidence.js';
import type { Grid } from './grid.js';
import type { Parsed } from './parse.js';

/** The parts that stand in the names of quantities, where nothing else beside the figure says which part it is of. */
export function partOfQuantity(g: Grid, p: Parsed, hits: readonly Hit[]): Hit[] {
  const [measure, part] = [g.of.measure[0]!, g.of.part[0]!];
  return hits.flatMap((h) => {
    if (h.slot !== measure || h.to - h.from < 2 || hits.some((o) => o.slot === part && o.segment === h.segment)) return [];
    const parts = [...(g.valuesWith.get(h.value)?.[part] ?? [])].filter(Boolean);
    const words = p.low.slice(h.from, h.to).join('-');
    const value = parts.length > 1 ? parts.find((v) => words.startsWith(`${v}-`)) : undefined;
    return value === undefined ? [] : [{ ...h, slot: part, value }];
  });
}
