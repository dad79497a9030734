// "It is a shade under my line, 0.9 to be precise": behind what is said of a mark, the figure is where it lies, or how far off.
import { baseWords, basesFor } from './bases.js';
import { type Candidate, type Context, subjectCells, unitsOf } from './context.js';
import { gonePast } from './lies-by.js';
import { push } from './read-value.js';

/** How far it lies from the mark, beside which a comma leads to the number. */
export function offTheMark(c: Context, index: number): Candidate[] {
  const out: Candidate[] = [];
  const { mention: m, cue } = c.parsed.said[index]!;
  const by = [...c.hits.roles.filter((r) => /^(?:limit|target)$/.test(r.role)), ...c.hits.hits.filter((h) => c.grid.holders.has(h.value))];
  if ((cue.op !== 'value' && cue.op !== 'range') || m.type !== 'cardinal' || !by.some((r) => gonePast(c.parsed, r, index))) return out;
  const words = { ...baseWords(c, index), overrides: new Map<number, string[]>(), roles: ['limit' as const, 'target' as const], any: true };
  for (const { cell, cost } of subjectCells(c, index, unitsOf({ mention: m }, true), { limit: 1.5 }).cells.slice(0, 30)) {
    if (!cell.fixed) for (const b of basesFor(c, cell, index, words, undefined)) if (b.cell.fixed) push(out, c, { kind: 'difference', args: [cell.key, b.cell.key] }, 'difference', cost + 0.3, cell, 'how far off the mark', { base: b.cell, firm: true });
  }
  return out;
}
