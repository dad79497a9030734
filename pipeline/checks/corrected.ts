// What a correction calls wrong, read as a value.
import type { Fact } from '../facts/index.js';
import { type Quantity, readQuantity } from '../quantities/index.js';

/** Fewer words than a sentence: a hedge, a number, its unit. */
const around = /^(?:about|around|roughly|some|nearly|almost|over|under|only|just|a|an|the|~|≈)\s*/i;

/**
 * The value in "31 K", "about 31 K" or "31 K over idle": undefined where there is no number, more than one, or a unit that
 * the fact is not in. `whole` where nothing is said besides: else a word may tell the direction.
 */
export function saidValue(said: string, fact: Fact): { quantity: Quantity; whole: boolean } | undefined {
  const plain = said.replace(/^["“‘']|["”’'.]$/g, '').trim().replace(around, '');
  const whole = readQuantity(plain, fact.unit);
  if ('quantity' in whole) return { quantity: whole.quantity, whole: true };
  if ((plain.match(/\d[\d.,:]*/g) ?? []).length !== 1) return undefined;
  const from = plain.slice(plain.search(/[+\-−–‒$€£]?\d/)).split(/\s+/);
  for (let words = Math.min(from.length, 5); words > 0; words--) {
    const read = readQuantity(from.slice(0, words).join(' ').replace(/[,;.]$/, ''));
    if ('quantity' in read) return { quantity: read.quantity, whole: false };
  }
  return undefined;
}
