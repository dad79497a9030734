// "It goes from 44.1 to 40.8", where it goes from 40.8 to 44.1: each number is right for the other end.
import { type Context, sameCellExcept } from './context.js';
import { fit } from './decide.js';
import type { Reading } from './read.js';

/** `d`: the second end as read, not agreeing. */
export function endsSwapped(c: Context, index: number, d: Reading): Reading {
  const best = d.ranked[0]?.candidate;
  const first = c.done[index - 1];
  if ((d.verdict !== 'untied' && d.verdict !== 'disagrees') || !best?.subject || first?.subject !== best.subject || !fit(c.parsed.said[index - 1]!.mention, first)) return d;
  const varied = new Set(['setup', 'setting', 'workload', 'phase']);
  const other = d.ranked.find((r) => r.fits && r.candidate.subject && r.candidate.term.kind === best.term.kind && sameCellExcept(c.grid, r.candidate.subject, best.subject!).every((i) => varied.has(c.grid.slots[i]!.field)));
  return other && other.candidate.cost <= best.cost + 1.2 ? { ...d, verdict: 'disagrees', chosen: best, why: 'the two ends are swapped', insisted: true } : d;
}
