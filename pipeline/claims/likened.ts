// "Hum is about what we had in the barn: 31.4", "much like on the slow setting, it draws 40": what a figure is likened to before it
// is told, and nothing that it is of.
import { stretch } from '../script/index.js';
import type { Hit } from './evidence.js';
import type { Grid } from './grid.js';
import type { Parsed } from './parse.js';

const likening = /(?:^| )(?:(?:what|like|than) (?:we|i|it|you|they|that)(?: had| got| saw| did| was| were| made| measured| found| read| have| get| see| drew| took| needed)?|like|(?:the same|same|similar|identical|much|as \p{L}+) as(?: (?:we|i|it|you|they)(?: had| got| saw| did| was| were| measured| found)?)?|(?:similar|close|identical|near|next) to|not far (?:from|off))(?: (?:it|them|before|earlier|just))?(?: (?:in|on|with|at|during|for|under))?(?: the| a)?$/u;

/** Marks such names as what changes in the sentence are counted from. */
export function departLikened(g: Grid, p: Parsed, hits: readonly Hit[]): void {
  const first = p.said[0]?.mention.from;
  if (first === undefined) return;
  for (const h of hits) {
    if (h.to > first || h.baseOf >= 0 || !['setup', 'setting', 'workload', 'phase'].includes(g.slots[h.slot]!.field) || !/^(?:[:,;—–]|with|at|so|and|but)$/.test(p.low[h.to] ?? '')) continue;
    if (hits.some((o) => o !== h && o.slot === h.slot && o.value === h.value) || !likening.test(stretch(p.low, Math.max(0, h.from - 9), h.from))) continue;
    Object.assign(h, { departs: true, alone: true, baseOf: p.said.length });
  }
}
