// "It's 2.8, no, 3.2 degrees", "41, sorry, 47 decibels": a figure that the speaker takes back in the same breath claims nothing.
import { stretch } from '../script/index.js';
import type { Mention } from '../script/index.js';

const strong = /\b(?:no|nope|sorry|wait|oops|whoops|i mean|rather|make (?:that|it)|scratch that|correction|my mistake|my bad|hold on|hang on|excuse me|pardon|strike that|not that)\b/;
const filling = /^(?:(?:no|nope|sorry|wait|oops|whoops|ah|oh|uh|um|er|erm|well|actually|i mean|or|or rather|rather|make (?:that|it)|scratch that|strike that|correction|my mistake|my bad|hold on|hang on|excuse me|pardon(?: me)?|not that|it's|that's|it is|that is|of course|a|about|[,.;:!—–-])(?: |$))+$/;

/** Which of these are taken back by the next. */
export function takenBackByNext(low: readonly string[], all: readonly Mention[]): ReadonlySet<Mention> {
  const out = new Set<Mention>();
  for (let i = 0; i + 1 < all.length; i++) {
    const [a, b] = [all[i]!, all[i + 1]!];
    if (a.type !== 'cardinal' || b.type !== 'cardinal' || b.from - a.to > 9 || b.from - a.to < 2) continue;
    const gap = stretch(low, a.to, b.from);
    if (/^[,;:—–-]/.test(gap) && strong.test(gap) && filling.test(gap)) out.add(a);
  }
  return out;
}
