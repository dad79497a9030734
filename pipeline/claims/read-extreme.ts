// A change against an extreme: "the loudest is the loop on high, 15 decibels above the quietest", "8 degrees above the coolest".
import { siblings } from './siblings.js';
import type { Way } from '../script/index.js';
import { type Candidate, type Context, polarity, reachOfCosts, signOf, subjectCells } from './context.js';
import type { Cell } from './grid.js';
import { paceWay } from './pace.js';
import { spokenBy } from './ratio-words.js';
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

/** "The laziest needs 1.7 times as long as the liveliest", "the warmest is 1.3 times as warm as the coolest": from one end of the field to the other. */
export function betweenExtremes(c: Context, index: number): Candidate[] {
  const { cue, mention: m } = c.parsed.said[index]!;
  const of = c.parsed.said[index + 1];
  const as = c.parsed.said[index - 1];
  if (cue.op !== 'ratio' || !as?.mention.superlative || !of?.mention.superlative || !first(as) || !first(of) || c.parsed.low[of.mention.from - 1] !== 'the' || !/^(?:as|than|of)$/.test(c.parsed.low[of.mention.from - 2] ?? '') || m.from - as.mention.to > 8) return [];
  const { low } = c.parsed;
  if (low.slice(as.mention.to, m.from).some((w) => /^[,;:]$/.test(w))) return [];
  const out: Candidate[] = [];
  const { cells } = subjectCells(c, index, undefined, { ignoreBase: true });
  const { setup, setting } = c.grid.of;
  const adjective = spokenBy(low[m.to] === 'as' ? low[m.to + 1] : undefined);
  for (const { cell, cost } of cells) {
    if (cell.fixed || cost > 1.6 || (adjective.length && !adjective.includes(cell.unit.dimension))) continue;
    const [top, bottom] = [as, of].map((s) => s.cue.of?.length && !s.cue.of.includes(cell.unit.dimension) ? undefined : end(c, paceWay(low[s.mention.to - 1]!, cell.unit) ?? s.cue.way, cell));
    if (!top || !bottom || top === bottom) continue;
    for (const [slots, more] of [[setup, 0], [setting, 0.2], [[...setup, ...setting], 0.2]] as const) {
      const set = siblings(c.grid, cell, slots).filter((x) => !x.fixed).sort((a, b) => number(c, a) - number(c, b));
      if (set.length < 3) continue;
      const [a, b] = top === 'up' ? [set.at(-1)!, set[0]!] : [set[0]!, set.at(-1)!];
      push(out, c, { kind: 'ratio', args: [a.key, b.key] }, 'ratio', cost + more, a, 'from one end to the other', { firm: true, base: b });
    }
  }
  return out;
}

function first(s: { mention: { value: { toNumber(): number } } }): boolean {
  return Math.abs(s.mention.value.toNumber()) === 1;
}

function end(c: Context, way: Way | undefined, cell: Cell): 'up' | 'down' | undefined {
  const good = polarity(c, cell);
  return way === 'up' || way === 'down' ? way : good === 0 || (way !== 'better' && way !== 'worse') ? undefined : (way === 'better') === good > 0 ? 'up' : 'down';
}
