// "The Stoat may stay where it is: with its eleven watts it hurts nobody": what is its own is no other's.
import type { Candidate, Context } from './context.js';

/** A possessive stands before the number, and the sentence names one thing: a reading of another is not meant. */
export function notItsOwn(c: Context, index: number, best: Candidate, other: Candidate): boolean {
  if (!best.subject || !other.subject || !/^(?:its|their|his|her)$/.test(c.parsed.low[c.parsed.said[index]!.mention.from - 1] ?? '')) return false;
  return c.grid.of.setup.some((i) => {
    const named = new Set(c.hits.hits.filter((h) => h.slot === i && h.baseOf < 0 && h.segment <= index && !c.grid.holders.has(h.value)).map((h) => h.value));
    return named.size === 1 && named.has(best.subject!.at[i]!) && other.subject!.at[i] !== best.subject!.at[i];
  });
}
