// A mention read as a share of something, in percent.
import { basesFor, baseWords } from './bases.js';
import { type Candidate, type Context, reachOfCosts, sameCellExcept, subjectCells, unitsOf } from './context.js';
import { overMedian } from './read-points.js';
import { push } from './read-value.js';
import { ofNumberSaid } from './share-said.js';
import { firstCell } from './terms.js';

export function readShare(c: Context, index: number): Candidate[] {
  const said = c.parsed.said[index]!;
  const words = baseWords(c, index);
  const out: Candidate[] = [];
  // "83.2 of the 90 on the label, 92 percent"; "198 watts, or 99 percent of its 250 watt limit".
  const [last] = c.now.said;
  if (!words.any && c.now.said.length > 1 && last?.kind === 'mean') {
    const [b, a] = c.now.said;
    push(out, c, { kind: 'percent_of', args: [a!, b!] }, 'percent_of', 0.2, firstCell(c.grid, a!), 'of the two said last');
  }
  const number = ofNumberSaid(c, index);
  if (number.length) return number;
  // "83 percent of the frame rate": what follows is the measure itself, not what it is a share of.
  // "writes at 82 percent of its reading rate": unless another part is named beside the number.
  const ownPart = words.overrides.size > 0 && [...words.overrides].every(([i, values]) => c.grid.slots[i]!.field === 'part' && !c.hits.hits.some((h) => h.slot === i && h.segment === index && h.baseOf !== index && !values.includes(h.value)));
  if (ownPart) words.overrides.clear();
  const { cells } = subjectCells(c, index, unitsOf(said, true), { ownPart });
  // "67 percent of what the other gets on slow": on slow, both of them.
  const both = [...words.overrides].some(([i]) => c.grid.slots[i]!.field === 'setup') ? [...words.overrides].filter(([i]) => c.grid.slots[i]!.field !== 'setup' && !c.hits.hits.some((h) => h.slot === i && h.segment === index && h.baseOf !== index)) : [];
  if (both.length) {
    for (const x of cells) if (both.some(([i, values]) => x.cell.at[i] && !values.includes(x.cell.at[i]!))) x.cost += 0.6;
    cells.sort((x, y) => x.cost - y.cost);
    const least = cells[0]?.cost ?? 0;
    for (const x of cells) x.cost -= least;
  }
  for (const { cell, cost } of cells) {
    if (out.length > 120) break;
    if (words.median) {
      overMedian(out, c, cell, cost, words, said.cue.way);
      continue;
    }
    if (cell.fixed && !c.parsed.low.includes('limit')) { if (cost > 1.2) continue; }
    for (const b of basesFor(c, cell, index, words, undefined)) {
      const total = cost + b.cost;
      if (total > reachOfCosts) continue;
      push(out, c, { kind: 'percent_of', args: [cell.key, b.cell.key] }, 'percent_of', total, cell, b.why, { firm: b.firm, base: b.cell, change: sameCellExcept(c.grid, cell, b.cell).map((i) => [i, b.cell.at[i]!] as const) });
    }
  }
  return out;
}
