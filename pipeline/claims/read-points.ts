// A mention read as percentage points: between two readings in percent, or between two shares said.
import { type BaseWords, basesFor, baseWords, changesOf, medianSet } from './bases.js';
import { type Candidate, type Context, reachOfCosts, sameCellExcept, signOf, subjectCells } from './context.js';
import type { Way } from '../script/index.js';
import type { Cell } from './grid.js';
import { points, pointsSaid } from './points-said.js';
import { push } from './read-value.js';
import { firstCell, substitute } from './terms.js';

/** Percentage points: between two readings in percent, or between two shares said. */
export function readPoints(c: Context, index: number): Candidate[] {
  const said = c.parsed.said[index]!;
  const words = baseWords(c, index);
  const stated = pointsSaid(c, index);
  if (stated.length) return stated;
  const out: Candidate[] = [];
  const [a, b] = c.now.shares;
  const changes = changesOf(words);
  if (a) {
    const subject = firstCell(c.grid, a)!;
    for (const change of changes) {
      const other = substitute(c.grid, a, change);
      if (other) push(out, c, points(a, other), 'difference', 0, subject, 'between two shares', { sign: signOf(c, said.cue.way === 'better' ? 'up' : said.cue.way === 'worse' ? 'down' : said.cue.way, subject), firm: true });
    }
    if (b) push(out, c, points(a, b), 'difference', changes.length ? 0.8 : 0.1, subject, 'between the two shares said');
    // "98, 91 and 80, so the last is 18 behind the oldest": which of them that is, the words do not say.
    if (b && comparedWithUnknown(c, index, out)) for (const other of c.now.shares.slice(2)) push(out, c, points(a, other), 'difference', changes.length ? 0.8 : 0.1, subject, 'between two shares said');
    if (c.now.base && !changes.length) {
      const other = substitute(c.grid, a, new Map(c.now.base));
      if (other) push(out, c, points(a, other), 'difference', 0.6, subject, 'as in the comparison before');
    }
  }
  const percent = [...c.grid.measureUnits].filter(([, d]) => d.has('share')).map(([m]) => m);
  if (!percent.length) return out;
  const { cells } = subjectCells(c, index, c.grid.cells.filter((x) => x.unit.id === '%').slice(0, 1).map((x) => x.unit));
  for (const { cell, cost } of cells) {
    if (out.length > 120) break;
    if (words.median) {
      overMedian(out, c, cell, cost, words, said.cue.way);
      continue;
    }
    for (const base of basesFor(c, cell, index, words, said.cue.way)) {
      const total = cost + base.cost;
      if (total > reachOfCosts) continue;
      const way = said.cue.way;
      const sign = way === 'better' ? (signOf(c, way, cell) || 1) : way === 'worse' ? (signOf(c, way, cell) || -1) : signOf(c, way, cell);
      push(out, c, { kind: 'points', args: [cell.key, base.cell.key] }, 'difference', total, cell, base.why, { sign, firm: base.firm, base: base.cell, change: sameCellExcept(c.grid, cell, base.cell).map((i) => [i, base.cell.at[i]!] as const) });
    }
  }
  return out;
}

/** "… points behind the oldest": it is said what with, and nothing known is named. */
export function comparedWithUnknown(c: Context, index: number, found: readonly Candidate[]): boolean {
  const { base } = c.parsed.said[index]!.cue;
  return base !== undefined && base.to > base.from && !found.some((x) => x.firm);
}

/** Points above or below the median of all things, or of the others. */
export function overMedian(out: Candidate[], c: Context, cell: Cell, cost: number, words: BaseWords, way: Way | undefined): void {
  const set = medianSet(c, cell, words);
  if (set.length > 2) push(out, c, { kind: 'points', args: [cell.key, { kind: 'median', args: set.map((x) => x.key) }] }, 'difference', cost, cell, 'against the median', { sign: signOf(c, way, cell), firm: true });
}
