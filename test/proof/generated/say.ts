// Numbers as they are said, and the ways in which what is said goes wrong.
import { Exact, inWords, ordinalInWords } from '../../../pipeline/quantities/index.js';

export type Slip = 'up' | 'down' | 'swap' | 'ten' | 'unit' | 'other way';

/** Part of a text that states something: its words, and each wrong wording by the slip that makes it. */
export interface Said {
  text: string;
  wrong: Partial<Record<Slip, string>>;
}
export type Piece = string | Said;

export interface Form {
  words: boolean;
  /** With commas in thousands, in digits. */
  commas: boolean;
  symbol: boolean;
}

/** `after` is the unit as it follows; `otherUnits` what would be the wrong one. */
export function number(value: Exact, decimals: number, form: Form, after = '', otherUnit?: string): Said {
  const plain = value.round(decimals).toFixed(decimals);
  const say = (text: string): string => (form.words ? inWords(text) : form.commas ? text.replace(/^(\d+)(\d{3})(?=\.|$)/, '$1,$2') : text).replace(/^-/, '−');
  const step = Exact.of(1, 10 ** decimals);
  const wrong: Said['wrong'] = {};
  const rounded = value.round(decimals);
  // A figure that lies on the edge itself may be rounded either way by taste.
  const half = rounded.minus(value).abs().equals(step.over(Exact.of(2)));
  if (!half) {
    wrong.up = say(rounded.plus(step).toFixed(decimals)) + after;
    if (rounded.compare(step) > 0) wrong.down = say(rounded.minus(step).toFixed(decimals)) + after;
  }
  const swapped = swap(plain);
  if (swapped && !half) wrong.swap = say(swapped) + after;
  if (rounded.sign() !== 0) wrong.ten = say(rounded.times(Exact.of(10)).toFixed(Math.max(0, decimals - 1))) + after;
  if (otherUnit) wrong.unit = say(plain) + otherUnit;
  return { text: say(plain) + after, wrong };
}

/** The first two neighbouring digits that differ, changed over. */
function swap(text: string): string | undefined {
  for (let i = 0; i + 1 < text.length; i++) {
    const j = text[i + 1] === '.' ? i + 2 : i + 1;
    if (/\d/.test(text[i]!) && /\d/.test(text[j] ?? '') && text[i] !== text[j] && !(i === 0 && text[j] === '0')) return text.slice(0, i) + text[j] + text.slice(i + 1, j) + text[i] + text.slice(j + 1);
  }
  return undefined;
}

/** A loosened number: only what leaves any tolerance is wrong. */
export function loose(text: string, far: string): Said {
  return { text, wrong: { ten: far } };
}

export function ordinal(n: number, of: number): Said {
  return { text: ordinalInWords(n), wrong: { ...(n < of && { up: ordinalInWords(n + 1) }), ...(n > 2 && { down: ordinalInWords(n - 1) }) } };
}

/** A count out of `of`. */
export function count(n: number, of: number, words = true): Said {
  const say = (x: number): string => (words ? inWords(String(x)) : String(x));
  return { text: say(n), wrong: { ...(n < of && { up: say(n + 1) }), ...(n > 2 && { down: say(n - 1) }) } };
}

export function turn(right: string, wrong: string): Said {
  return { text: right, wrong: { 'other way': wrong } };
}
