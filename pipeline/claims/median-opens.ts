// A sentence that opens with a median, and the figure that it gives, whatever stands between.
//   "The median sweep, of the five brooms in the rain, is 41.3 grams"
import { stretch } from '../script/index.js';
import type { Mention } from '../script/index.js';

/** The number is what the median that the sentence opens with is said to be: the first verb leads to it. */
export function medianOpens(low: readonly string[], m: Mention): boolean {
  const at = low.indexOf('median');
  if (at < 0 || at > 4 || !/^(?:(?:and|but|so|now|,) )*(?:the|its|their|our|my)$/.test(stretch(low, 0, at)) || low.slice(m.to, m.to + 3).includes('than')) return false;
  const verb = low.findIndex((w, k) => k > at && /^(?:is|was|are|were|comes|came|sits|sat|lies|lands|landed|stands|stood|works|worked|reads|has|goes|went|rises|rose|falls|fell|:)$/.test(w));
  return verb > 0 && verb < m.from && low.slice(verb + 1, m.from).every((w) => /^(?:to|at|on|out|in|about|around|roughly|just|only|exactly|almost|nearly|over|under|a|bit|little|then|there|still)$/.test(w));
}
