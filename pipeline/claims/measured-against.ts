// What shares are of where it is said first: "Measured against the label, the one gives 71 percent and the other 64".
import { stretch } from '../script/index.js';
import type { Mention } from '../script/index.js';
import type { Segment } from './clauses.js';

const openers = /^(?:(?:measured|weighed|held|set|put|taken|reckoned|seen|judged|counted) against|(?:as|for) an? (?:share|fraction|percentage|proportion|part) of|(?:in|as) percent of|out of (?:every|each|a) (?:hundred|100)) /;

/** Its words, from after the opener to the comma or colon that ends it, before the number. */
export function measuredAgainst(low: readonly string[], m: Mention, seg: Segment): { from: number; to: number } | undefined {
  for (let i = seg.from; i < m.from - 2; i++) {
    const opener = openers.exec(stretch(low, i, i + 5) + ' ')?.[0];
    if (!opener) continue;
    const from = i + opener.trim().split(' ').length;
    const end = low.slice(from, m.from).findIndex((w, k) => w === ',' || w === ':' || (k > 1 && w === 'the') || (k > 0 && /^(?:it|he|she|they|we|you|i|that|this)$/.test(w)));
    if (end > 0) return { from, to: from + end };
  }
  return undefined;
}
