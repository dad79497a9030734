// "The curve does nothing from 66 to 75 degrees": people get one number wrong, and not both ends of the same stretch. Where neither
// end is right, and neither is what anything in the record gives, it is something else that goes from the one to the other.
import type { Context } from './context.js';
import { givesJust } from './gives-just.js';
import type { Reading } from './read.js';
import { rangeAt } from './read-range.js';
import { pairWith } from './read-value.js';

/** The readings of one sentence, with no alarm at both ends of a stretch. */
export function notBothEnds(c: Context, readings: readonly Reading[]): readonly Reading[] {
  // What is named in the sentence is what it tells of.
  if (c.hits.hits.some((h) => /^(?:setup|part|measure)$/.test(c.grid.slots[h.slot]!.field))) return readings;
  const wrong = (k: number): boolean => readings[k]?.verdict === 'disagrees' && !readings[k]!.insisted && !readings[k]!.turned && !given(c, readings[k]!);
  const pairs = [...readings.keys()].filter((k) => wrong(k) && wrong(k + 1) && (pairWith(c, k)?.first === k || rangeAt(c.parsed, k)?.first === k));
  if (!pairs.length) return readings;
  const misread = new Set(pairs.flatMap((k) => [k, k + 1]));
  return readings.map((r, k) => (misread.has(k) ? { ...r, verdict: 'untied', why: 'neither end is one of the record' } : r));
}

/** Some reading of the same quantity is just that: told of the wrong thing. */
function given(c: Context, r: Reading): boolean {
  const x = r.chosen!;
  const measure = x.subject?.at[c.grid.of.measure[0]!];
  return measure === undefined || (c.grid.byMeasure.get(measure) ?? []).some((cell) => givesJust(c.facts, cell, r.mention, x));
}
