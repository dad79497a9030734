// An alarm about a comparison whose other side no word names, but which was carried over from the sentences before, needs a
// number in the neighbourhood: a slip seldom takes one far, where a misread pair may give anything.
//   "It rises by 5.6 degrees"      no slip of the −0.6 that lies between the two spoken of before
import { inSaidUnit } from './fit.js';
import type { Candidate, Context } from './context.js';

const carried = /^(?:spoken of before|as in the pair before|as said before|between the two said last|the other|the comparison before)$/;

/** A slip of the tongue or of a digit rarely takes a number further than this; common practice, no published source. */
const near = { low: 1 / 3, high: 3 } as const;

/** Why the alarm does not stand; undefined where it does. */
export function carriedFar(c: Context, index: number, x: Candidate): string | undefined {
  if (!x.base || x.firm || !carried.test(x.why)) return undefined;
  const { mention } = c.parsed.said[index]!;
  const own = inSaidUnit(x.fact, mention);
  if (!own || own.sign() === 0 || digits(mention.value.toString()) === digits(x.fact.shown)) return undefined;
  const factor = Math.abs(mention.value.over(own).toNumber());
  return factor >= near.low && factor <= near.high ? undefined : 'what it is compared with was not said, and the number is nowhere near';
}

/** Digits that have changed places take a number far, and are a slip all the same. */
function digits(text: string): string {
  return text.replace(/\D/g, '').split('').sort().join('');
}
