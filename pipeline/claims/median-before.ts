// A median that was just said, against itself as it was.
import type { Way } from '../script/index.js';
import { basesFor, type BaseWords } from './bases.js';
import { type Candidate, type Context, sameCellExcept, signOf } from './context.js';
import { push } from './read-value.js';
import { firstCell, substitute } from './terms.js';

/** "The median sinks to 51, which is 6 below where it was": the median just said, against itself as it was. */
export function medianBefore(c: Context, index: number, words: BaseWords, way: Way | undefined): Candidate[] {
  const [last] = c.now.said;
  const cell = last?.kind === 'median' ? firstCell(c.grid, last) : undefined;
  const out: Candidate[] = [];
  if (!last || !cell || words.overrides.size || !/^(?:where|what) (?:it|that) (?:was|had been|used to be|stood)\b/.test(words.low.join(' '))) return out;
  const percent = c.parsed.said[index]!.mention.unit?.id === '%';
  for (const b of basesFor(c, cell, index, { ...words, any: false, low: [], pronoun: false }, way)) {
    const change = sameCellExcept(c.grid, cell, b.cell).map((i) => [i, b.cell.at[i]!] as const);
    const other = change.some(([i]) => c.grid.of.setup.includes(i)) || b.cell.fixed ? undefined : substitute(c.grid, last, new Map(change));
    if (other) push(out, c, { kind: percent ? 'percent_change' : 'difference', args: [last, other] }, 'difference', b.cost, cell, 'against what it was', { sign: signOf(c, way, cell), firm: b.firm });
  }
  return out;
}
