// What a change is measured from where a figure or a step just before it tells.
import type { Context } from './context.js';
import { fits } from '../wording/index.js';
import type { Cell } from './grid.js';

/** "The one weighs 912 grams, and the other is 77 lighter": the same of another thing, whose figure was given just before. */
export function besideIt(c: Context, subject: Cell, index: number): Cell | undefined {
  const last = c.done[index - 1];
  const y = last?.term.kind === 'mean' ? last.subject : undefined;
  if (!y || y === subject || y.fixed !== subject.fixed || !fits(c.parsed.said[index - 1]!.mention, last!.fact, { size: false })) return undefined;
  const differing = c.grid.slots.flatMap((_, i) => (y.at[i] !== subject.at[i] ? [i] : []));
  const named = (i: number): boolean => ['setup', 'setting'].includes(c.grid.slots[i]!.field) && c.hits.hits.some((h) => h.slot === i && h.segment === index && h.baseOf < 0 && h.from < c.parsed.said[index]!.mention.from && h.value === subject.at[i]) && c.hits.hits.some((h) => h.slot === i && h.segment < index && h.baseOf < 0 && h.value === y.at[i]);
  return differing.length > 0 && differing.every(named) ? y : undefined;
}

/** "Brisk is worth 7 percent over slow, and flat out adds another 12 decibels": from where the step before has come to. */
export function stepOn(c: Context, index: number): Cell | undefined {
  const { cue, mention } = c.parsed.said[index]!;
  const last = c.done[index - 1];
  return cue.another && last?.base && last.subject && last.term.args.every((a) => typeof a === 'string') && fits(c.parsed.said[index - 1]!.mention, last.fact, { size: true }) && c.parsed.low[mention.to] !== 'of' ? last.subject : undefined;
}
