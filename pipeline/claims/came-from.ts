// "comes down to 37 decibels from 41", "is up to 12.4, from 11.9": where it is now, and, said after it, where it was.
import { comesFrom, leadAt } from './comes-from.js';
import { basesFor, baseWords } from './bases.js';
import { type Candidate, type Context, sameCellExcept } from './context.js';
import { fit } from './decide.js';
import { push, readValue } from './read-value.js';
import { valueOf } from './terms.js';

/** Readings of the figure that it came from: of the same quantity, in what the figure before it may be compared with; none where it is no such figure, or something is named beside it. */
export function readCameFrom(c: Context, index: number): Candidate[] {
  const { mention: m } = c.parsed.said[index]!;
  const { low } = c.parsed;
  const now = c.done[index - 1];
  const out: Candidate[] = [];
  const from = leadAt(low, m.from);
  if (low[from] !== 'from' || !now?.subject || now.term.kind !== 'mean' || now.subject.fixed || m.type !== 'cardinal' || !comesFrom(low, from) || !fit(c.parsed.said[index - 1]!.mention, now)) return out;
  if (c.parsed.said[index - 1]!.mention.to < from - 1 || (m.unit && m.unit.dimension !== now.fact.unit.dimension && !m.loose)) return out;
  const fields = ['setup', 'setting', 'workload', 'phase'];
  const beside = c.hits.hits.filter((h) => h.segment === index && h.from >= from && fields.includes(c.grid.slots[h.slot]!.field));
  const changed = beside.filter((h) => now.subject!.at[h.slot] !== h.value);
  if (changed.length) {
    // "up to 41.8 from 40.7 at rest": all else is as it was.
    for (const x of readValue(c, index)) if (x.subject && sameCellExcept(c.grid, x.subject, now.subject).every((i) => changed.some((h) => h.slot === i && x.subject!.at[i] === h.value))) out.push(x);
    return out;
  }
  for (const b of basesFor(c, now.subject, index - 1, { ...baseWords(c, index - 1), overrides: new Map(), any: false, low: [], pronoun: false }, undefined)) if (!b.cell.fixed) push(out, c, valueOf(b.cell.key), 'mean', b.cost, b.cell, 'where it came from');
  return out;
}
