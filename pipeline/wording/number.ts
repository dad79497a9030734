// A number in the writer's own form: words stay words, digits digits, thousands as they were written, the unit where it stood.
import { Exact, inWords, showNumber, type Unit } from '../quantities/index.js';
import type { Mention } from '../script/index.js';
import { inSaidUnit, stepOf } from './fair.js';
import { isFair, type Told, toldAsSize } from './told.js';

const half = Exact.of(1, 2);

/** More decimals than this are nobody's way to tell it. */
const finest = 3;

/** What is further off than this says less than the record does: "1 volt" for 1.4. Common practice, no published source. */
const coarse = 0.1;

/** The mention's text with the number put right, to the precision said, or finer where that would say nothing; undefined where there is no one form. */
export function rightNumber(m: Mention, text: string, told: Told): string | undefined {
  if (m.type !== 'cardinal' || m.composed) return undefined;
  const exact = inSaidUnit(told.fact, m);
  if (!exact) return undefined;
  const size = toldAsSize(told) ? exact.abs() : exact;
  if (m.step) return rounded(m, text, told, size, m.step);
  for (let decimals = m.decimals; decimals <= Math.max(finest, m.decimals); decimals++) {
    const step = stepOf({ ...m, decimals } as Mention);
    const nearest = size.over(step).round(0).times(step);
    if (decimals < finest && size.sign() !== 0 && nearest.minus(size).abs().over(size.abs()).toNumber() > coarse) continue;
    return rounded({ ...m, decimals } as Mention, text, told, size, step);
  }
  return undefined;
}

/** To the nearest step; where the words before it bound it ("more than"), to the side on which it may be told. */
function rounded(m: Mention, text: string, told: Told, size: Exact, step: Exact): string | undefined {
  const nearest = size.over(step).round(0).times(step);
  const decimals = Math.max(0, m.decimals);
  const halves = m.step?.equals(half) && / and a half\b/i.test(text);
  const value = [nearest, nearest.minus(step), nearest.plus(step)].slice(0, m.hedge ? 3 : 1).find((v) => (halves || v.round(decimals).equals(v)) && (!m.hedge || (v.sign() === size.sign() && isFair({ ...m, value: v } as Mention, told))));
  return value && (halves ? inHalves(m, text, value) : inForm(m, text, value, decimals));
}

/** "three and a half degrees", "7 and a half", "three degrees". */
export function inHalves(m: Mention, text: string, value: Exact): string | undefined {
  const below = value.times(Exact.of(2)).round(0).over(Exact.of(2)).minus(value.round(0).equals(value) ? Exact.zero : half);
  const plain = text.replace(/(?: and a half\b)/i, '');
  if (below.sign() <= 0) return undefined;
  if (below.equals(value)) return inForm(m, plain, value, 0);
  return numberInForm(m, plain, below, 0) + (/ and a half\b.*$/is.exec(text)?.[0] ?? '');
}

/** `value` as the mention's text would give it. */
export function inForm(m: Mention, text: string, value: Exact, decimals: number): string {
  const tail = unitTail(text);
  const unit = m.unit && value.abs().toNumber() === 1 && tail.trim().toLowerCase() === m.unit.many ? tail.replace(/\S.*$/s, m.unit.one) : tail;
  return numberInForm(m, text, value, decimals) + unit;
}

/** The number alone. */
export function numberInForm(m: Mention, text: string, value: Exact, decimals: number): string {
  if (m.form === 'digits') {
    const number = showNumber(value, decimals).replace('−', '-');
    return /\d,\d{3}/.test(text) || value.toNumber() < 1000 ? number : number.replace(/,/g, '');
  }
  const words = inWords(value.toFixed(decimals), / hundred and /.test(text));
  // "sixty one" was written without its hyphen.
  const plain = /\b(?:twen|thir|for|fif|six|seven|eigh|nine)ty (?:one|two|three|four|five|six|seven|eight|nine)\b/i.test(text) && !text.includes('-');
  return cased(text, plain ? words.replace(/-/g, ' ') : words);
}

/** With a capital where the other has one. */
export function cased(like: string, put: string): string {
  return /^\p{Lu}/u.test(like) ? put[0]!.toUpperCase() + put.slice(1) : put;
}

/** The mention's text with the same number in another unit: a symbol where a symbol stood, else its words. */
export function inUnit(m: Mention, text: string, unit: Unit): string | undefined {
  const tail = unitTail(text);
  if (!m.unit || m.sharedUnit || !tail.trim()) return undefined;
  const space = /^\s*/.exec(tail)![0];
  const symbol = tail.trim() === m.unit.symbol || tail.trim() === m.unit.id || (tail.trim().length <= 3 && !/\s/.test(tail.trim()) && tail.trim().toLowerCase() !== m.unit.many);
  const number = text.slice(0, text.length - tail.length);
  if (symbol && unit.id !== 'points') return number + (m.unit.symbol === '%' ? ' ' : unit.symbol === '%' ? '' : space) + unit.symbol;
  const words = m.value.abs().toNumber() === 1 ? unit.one : unit.many;
  return `${number} ${/ (?:an?|each) /.test(tail) ? words.replace(/ per (?=[aeiou]|hour)/, ' an ').replace(' per ', ' a ') : words}`;
}

/** What follows the number in the mention: its unit, with the space before it. */
export function unitTail(text: string): string {
  const m = /^(?:[-−–]?[\d.,]+|(?:(?:minus|negative|a|an|and|point|oh|zero|nought|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|thousand|million|half|halves)\b[\s-]*)+)(.*)$/isu.exec(text);
  if (!m) return '';
  const lead = text.length - m[1]!.length;
  const space = /\s+$/.exec(text.slice(0, lead))?.[0] ?? '';
  return m[1] ? space + m[1] : '';
}
