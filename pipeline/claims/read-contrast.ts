// "24 degrees above the room, against 17 for the other": the second figure is what the first is, of another thing.
import { stretch } from '../script/index.js';
import type { Candidate, Context } from './context.js';
import { decide, fit } from './decide.js';
import { push } from './read-value.js';
import type { Reading } from './read.js';
import { firstCell, substitute } from './terms.js';

/** Undefined where the figure is set against none that was read rightly, or names nothing that differs. */
export function readContrast(c: Context, index: number): Reading | undefined {
  const { mention: m, segment } = c.parsed.said[index]!;
  const { low } = c.parsed;
  const before = c.done[index - 1];
  const first = c.parsed.said[index - 1]?.mention;
  if (!before || !first || m.type !== 'cardinal' || before.term.kind !== 'over_room' || !fit(first, before)) return undefined;
  if (!/^(?:against|versus|vs)$/.test(low[m.from - 1] ?? '') && !/^compared (?:with|to)$/.test(stretch(low, m.from - 2, m.from))) return undefined;
  if (m.unit && m.unit.id !== first.unit?.id) return undefined;
  const things = c.hits.hits.filter((h) => h.from >= m.to && h.from < segment.to && ['setup', 'setting'].includes(c.grid.slots[h.slot]!.field));
  if (!things.length) return undefined;
  const term = substitute(c.grid, before.term, new Map(things.map((h) => [h.slot, h.value] as const)));
  if (!term) return undefined;
  const mention = m.unit || !first.unit ? m : { ...m, unit: first.unit, loose: first.loose };
  const out: Candidate[] = [];
  push(out, c, term, before.kind, 0, firstCell(c.grid, term), 'the same of the other');
  return out.length ? { ...decide(mention, out, {}), mention } : undefined;
}
