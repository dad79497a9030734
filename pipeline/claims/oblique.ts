// "The Cobble needs 44 to the Garth's 51, and it is 7 cheaper": who a pronoun goes back to is who the clause before is about, and
// not who stands there only to be measured by, or to be given something.
import { WordClass } from '../script/index.js';
import type { Hit } from './evidence.js';
import type { Parsed } from './parse.js';

const led = /^(?:to|against|versus|vs|than|over|from|beside|behind|unlike)$/;
const pronoun = new WordClass(/^(?:it|it's|its|they|they're|he|she)$/);

/** Whether a name said earlier in the sentence is none that the pronoun by which a number is said can go back to. */
export function passedOver(p: Parsed, index: number, hits: readonly Hit[], h: Hit): boolean {
  const { low, said } = p;
  const { segment, mention } = said[index]!;
  // "… to the Garth, it's 7 cheaper, and at 44 it's the one to have": the second goes on where the first did.
  if (!pronoun.in(low, h.to, Math.min(segment.to, mention.from)) && !pronoun.in(low, Math.max(h.to, mention.to), segment.to)) return false;
  const before = (x: { from: number }): string => (/^(?:the|a|an|my|our)$/.test(low[x.from - 1] ?? '') ? low[x.from - 2] : low[x.from - 1]) ?? '';
  const lead = /^(?:the|a|an|my|our)$/.test(low[h.from] ?? '') ? low[h.from - 1] ?? '' : before(h);
  if (!led.test(lead) || !said.some((s) => s.mention.to <= h.from)) return false;
  // Somebody else is what the clause is about.
  return pronoun.has(low[0] ?? '') || hits.some((o) => o.slot === h.slot && o.value !== h.value && o.to <= h.from && o.segment < index && !led.test(before(o)));
}
