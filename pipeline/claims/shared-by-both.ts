// Where two things are compared, a setting behind the second is that of both.
//   "The Larch has 9 more than the Rowan on peat."
import type { Hit, SentenceHits } from './evidence.js';
import type { Grid } from './grid.js';
import type { Parsed } from './parse.js';

/** What is named behind the thing compared with, of all that one slot is named as. */
export function sharedByBoth(g: Grid, p: Parsed, s: SentenceHits, hits: readonly Hit[], index: number): Hit[] {
  if (p.said[index]!.cue.op !== 'change' && p.said[index]!.cue.op !== 'ratio' && p.said[index]!.cue.op !== 'share') return [];
  const other = s.hits.find((h) => h.baseOf === index && g.slots[h.slot]!.field === 'setup' && !g.holders.has(h.value));
  // "Only 9 more than the Rowan on peat": whatever is spoken of is still where it was.
  if (!other || !s.hits.some((h) => h.baseOf < 0 && g.slots[h.slot]!.field === 'setup' && h.to <= other.from && !g.holders.has(h.value))) return [];
  // "… than the Rowan on peat", "… shut in the shed": a word leads to it, before the name or within.
  const led = (h: Hit): boolean => p.low.slice(h.from - (p.low[h.from - 1] === 'the' ? 2 : 1), h.to).some((w) => /^(?:in|on|at|with|under)$/.test(w));
  return hits.filter((h) => h.baseOf === index && h.from >= other.to && led(h));
}
