// "Over the room, the drum went from 31 on gentle up to 38, and the lid from 12 to 15": the second pair leads from where the first
// does to where that one ends; of what, its own names say.
import type { Candidate, Context } from './context.js';
import { decide, fit } from './decide.js';
import { movedTo } from './grid.js';
import type { Reading } from './read.js';
import { overRoomTerm, pairWith, push } from './read-value.js';
import { valueOf } from './terms.js';

export function likePairBefore(c: Context, index: number, r: Reading): Reading {
  const { mention: m } = r;
  if ((r.verdict !== 'disagrees' && r.verdict !== 'untied') || m.type !== 'cardinal') return r;
  const pair = pairWith(c, index);
  if (!pair || pair.first < 2 || pairWith(c, pair.first - 1)?.second !== pair.first - 1) return r;
  const at = index - 2;
  const before = c.done[at];
  if (!before?.subject || before.subject.fixed || !/^(?:mean|over_room)$/.test(before.term.kind) || ![pair.first - 2, pair.first - 1].every((k) => c.told[k] === 'agrees')) return r;
  const named = c.hits.hits.filter((h) => h.baseOf < 0 && h.from >= c.parsed.said[pair.first - 1]!.mention.to && h.to <= m.from && ['part', 'setup'].includes(c.grid.slots[h.slot]!.field));
  const slots = new Set(named.map((h) => h.slot));
  if (named.length === 0 || named.length > slots.size) return r;
  let cell: typeof before.subject | undefined = before.subject;
  for (const h of named) cell = cell && movedTo(c.grid, cell, h.slot, h.value);
  const term = cell && (before.term.kind === 'over_room' ? overRoomTerm(c, cell) : valueOf(cell.key));
  const out: Candidate[] = [];
  if (term) push(out, c, term, before.kind, 0, cell!, 'from where to where the pair before leads');
  return out.length && fit(m, out[0]!) ? { ...decide(m, out, {}), mention: m } : r;
}
