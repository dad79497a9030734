// A change against an extreme: "the loudest is the loop on high, 15 decibels above the quietest", "8 degrees above the coolest".
import { siblings } from './bases.js';
import { type Candidate, type Context, polarity, reachOfCosts, signOf, type subjectCells } from './context.js';
import type { Cell } from './grid.js';
import { number } from './read-change.js';
import { push } from './read-value.js';

/** Readings against the extreme that the comparison names; empty where it names none. */
export function againstExtreme(c: Context, index: number, cells: ReturnType<typeof subjectCells>['cells']): Candidate[] {
  const { cue, mention } = c.parsed.said[index]!;
  const scope = cue.base;
  const extreme = scope && c.parsed.said.find((s) => s.mention.superlative && s.mention.from >= scope.from && s.mention.from < scope.to && s.mention.from - scope.from <= 1);
  if (!extreme) return [];
  const percent = mention.unit?.id === '%';
  const out: Candidate[] = [];
  const add = (cell: Cell, set: readonly Cell[], cost: number): void => {
    const way = extreme.cue.way;
    const up = way === 'up' ? 1 : way === 'down' ? -1 : way === 'better' ? polarity(c, cell) : way === 'worse' ? -polarity(c, cell) : 0;
    const of = extreme.cue.of;
    if (up === 0 || set.length < 3 || cost > reachOfCosts || (of?.length && !of.includes(cell.unit.dimension))) return;
    const base = [...set].sort((a, b) => up * (number(c, b) - number(c, a)))[0]!;
    if (base !== cell) push(out, c, { kind: percent ? 'percent_change' : 'difference', args: [cell.key, base.key] }, percent ? 'percent_change' : 'difference', cost, cell, 'against the extreme', { sign: signOf(c, cue.way, cell), base });
  };
  // The ranking that the sentence has just told says among which.
  const ranked = c.done.findLast((d) => d?.kind === 'rank');
  const own = ranked?.subject;
  if (own && ranked.fact.keys.length > 2) {
    add(own, ranked.fact.keys.flatMap((k) => c.grid.byKey.get(k) ?? []), 0);
    if (out.length) return out;
  }
  const { setup, setting } = c.grid.of;
  for (const { cell, cost } of cells) {
    if (cell.fixed) continue;
    for (const [slots, more] of [[setup, 0], [setting, 0.2], [[...setup, ...setting], 0.2]] as const) add(cell, siblings(c.grid, cell, slots).filter((x) => !x.fixed), cost + more);
  }
  return out;
}
