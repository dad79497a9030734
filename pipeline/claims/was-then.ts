// "62 percent where it was 81", "36 decibels, and it had been 40": the same of the same thing, as it was before.
import { stretch } from '../script/index.js';
import type { Candidate, Context } from './context.js';
import { fit } from './decide.js';
import { pastOf } from './gapped.js';
import { push } from './read-value.js';
import { firstCell, substitute } from './terms.js';

/** What the figure before it was under what was compared with or spoken of earlier; nothing where the words name when that was. */
export function readWasThen(c: Context, index: number): Candidate[] {
  const [a, b] = [c.parsed.said[index - 1], c.parsed.said[index]!];
  const last = c.done[index - 1];
  if (!a || !last?.subject || !['mean', 'percent_of', 'rise', 'difference'].includes(last.term.kind) || !fit(a.mention, last) || !pastOf.test(stretch(c.parsed.low, a.mention.to, b.mention.from))) return [];
  if (c.hits.hits.some((h) => h.segment === index && ['setup', 'setting', 'workload', 'phase'].includes(c.grid.slots[h.slot]!.field))) return [];
  const out: Candidate[] = [];
  const add = (slot: number, value: string, cost: number): void => {
    const term = firstCell(c.grid, last.term)?.at[slot] === value ? undefined : substitute(c.grid, last.term, new Map([[slot, value]]));
    if (term && !out.some((x) => JSON.stringify(x.term) === JSON.stringify(term))) push(out, c, term, last.kind, cost, firstCell(c.grid, term), 'as it was then', { sign: last.sign });
  };
  for (const [i, v] of c.now.base ?? []) if (c.grid.slots[i]!.field !== 'part') add(i, v, 0);
  for (const field of ['setting', 'workload', 'phase'] as const) for (const i of c.grid.of[field]) c.now.topics[i]!.forEach((v, k) => { add(i, v, 0.3 + 0.1 * k); });
  for (const i of c.grid.of.setting) for (const v of c.grid.values[i]!.keys()) add(i, v, 0.9);
  return out;
}
