// "All that is not the fan draws 40 watts", "apart from the fan it draws 40": the figure is of everything but what is named.
import { stretch } from '../script/index.js';
import type { Candidate, Context } from './context.js';

const phrases = /^(?:(?:everything|anything|all|whatever|what|rest) (?:(?:that|which) )?(?:is not|isn't|are not|aren't|was not|wasn't)|except|excepting|excluding|apart from|aside from|other than|not counting|leaving out|leaving aside|without counting|not including)\b/;

/** The reading taken is of the very thing that the sentence leaves out. */
export function leftOut(c: Context, x: Candidate): boolean {
  const { low } = c.parsed;
  for (let i = 0; i + 1 < low.length; i++) {
    if (!/^(?:everything|anything|all|whatever|what|rest|except|excepting|excluding|apart|aside|other|not|leaving|without)$/.test(low[i]!)) continue;
    const words = phrases.exec(stretch(low, i, i + 4))?.[0].split(' ').length;
    if (words !== undefined && c.hits.hits.some((h) => h.from >= i + words - 1 && h.from <= i + words + 2 && x.subject?.at[h.slot] === h.value)) return true;
  }
  return false;
}
