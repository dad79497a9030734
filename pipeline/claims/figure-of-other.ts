// "It moves more, 3.05 against 2.61", where two were named before: the second figure is the other's.
import { stretch } from '../script/index.js';
import type { Candidate, Context } from './context.js';
import { fit } from './decide.js';
import { moved } from './grid.js';
import { push } from './read-value.js';
import { valueOf } from './terms.js';

const against = /^(?:against|versus|vs|to|not|instead of|compared (?:with|to))(?: (?:the|just|only|about))?$/;

/** What was spoken of before beside what the first figure is of, where the number is right for it; else nothing. */
export function figureOfOther(c: Context, index: number): Candidate[] {
  const { mention: m } = c.parsed.said[index]!;
  const [first, before] = [c.parsed.said[index - 1]?.mention, c.done[index - 1]];
  const out: Candidate[] = [];
  if (!first || m.type !== 'cardinal' || !before?.subject || before.subject.fixed || before.term.kind !== 'mean' || !fit(first, before) || !against.test(stretch(c.parsed.low, first.to, m.from))) return out;
  if (m.unit && first.unit && m.unit.id !== first.unit.id) return out;
  const slots = [...c.grid.of.setup, ...c.grid.of.setting];
  if (c.hits.hits.some((h) => slots.includes(h.slot) && h.from >= m.to && h.segment >= index && h.segment <= index + 0.5)) return out;
  for (const slot of slots) c.now.topics[slot]!.forEach((value, k) => {
    const cell = value === before.subject!.at[slot] ? undefined : moved(c.grid, before.subject!, new Map([[slot, value]]));
    if (cell) push(out, c, valueOf(cell.key), 'mean', 0.1 * k, cell, 'the other of those spoken of');
  });
  return out.filter((x) => fit(m, x));
}
