// Words that say what is left of something: "keeps 83 percent", "holds on to 70 percent of it", "is left with 65".
import { stretch } from '../script/index.js';
import type { Mention } from '../script/index.js';
import type { Segment } from './clauses.js';

const keeping = /(?:^| )(?:keeps?|kept|keeping|retains?|retained|retaining|preserves?|preserved|(?:holds?|held|holding|hangs?|hung) on to|(?:is|are|was|were|be) left with)$/;
/** Words that may stand between the verb and the number. */
const slight = /^(?:still|only|just|about|around|roughly|nearly|almost|a|some|full|good|exactly|barely|even|over|under|more|less|than)$/;

/** "91 percent makes it through", "80 percent of it gets there": the part of something that is left at the end. */
export function arrives(low: readonly string[], m: Mention): boolean {
  return /^(?:of (?:it|that|this|them) )?(?:(?:still|actually|ever|only) )?(?:(?:makes?|made) it|(?:gets?|got|comes?|came|goes|went|passes|passed|carries|carried) (?:through|there|across|out|over|home)|arrives?|arrived|survives?|survived|reach(?:es|ed)?|is (?:left|delivered)|remains?|remained|ends? up)\b/.test(stretch(low, m.to, m.to + 5));
}

/** The verb right before the number is one of keeping. */
export function keeps(low: readonly string[], m: Mention, seg: Segment): boolean {
  let k = m.from;
  while (k > seg.from && slight.test(low[k - 1]!)) k--;
  return keeping.test(stretch(low, Math.max(seg.from, k - 4), k));
}
