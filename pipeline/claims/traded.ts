// What one gains or gives up, whichever way that goes: "for the sake of six degrees", "the other adds only 4 to that".
import { stretch } from '../script/index.js';
import type { Mention } from '../script/index.js';
import type { Segment } from './clauses.js';

const price = /(?:^| )(?:for the sake of|in exchange for|in return for|at the (?:expense|price) of|in favou?r of|in order to (?:save|gain|lose))(?: (?:about|around|just|only|some|a mere|those|these|another))*$/;

/** The number stands where the price of something, or what it is paid for, stands. */
export function traded(low: readonly string[], m: Mention, seg: Segment): boolean {
  return m.unit !== undefined && price.test(stretch(low, Math.max(seg.from - 3, 0, m.from - 7), m.from));
}

/** "the other adds only 4 to that": to a gain, whichever way that went. */
export function addedOn(low: readonly string[], m: Mention, verb: string): boolean {
  return /^(?:adds?|added|adding|puts?|piles?|piled)\b/.test(verb) && /^(?:to (?:that|this|it|those)|on top|on to that|onto that)\b/.test(stretch(low, m.to, m.to + 3));
}
