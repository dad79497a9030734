// A multiple or a part in the writer's own form: "three times" where it is told in times, "two thirds" where it is told as a part.
import { Exact, inWords } from '../quantities/index.js';
import type { Mention } from '../script/index.js';
import { cased, inHalves, numberInForm } from './number.js';
import { isFair, type Told } from './told.js';

/** Parts that people say. */
const parts: readonly [top: number, bottom: number, words: string][] = [
  [1, 10, 'a tenth'], [1, 5, 'a fifth'], [1, 4, 'a quarter'], [1, 3, 'a third'], [2, 5, 'two fifths'], [1, 2, 'half'], [3, 5, 'three fifths'], [2, 3, 'two thirds'], [3, 4, 'three quarters'], [4, 5, 'four fifths'], [9, 10, 'nine tenths'],
];

/** The mention's text put right; `after` is what follows it. Undefined where no multiple or part that people say is fair. */
export function rightRatio(m: Mention, text: string, told: Told, after: string): string | undefined {
  const size = told.fact.value.abs();
  if (told.fact.unit.id !== 'x') return undefined;
  return m.type === 'multiplier' ? times(m, text, told, size) : part(m, text, told, size, after);
}

/** "3.7 times", "twice", "double". */
function times(m: Mention, text: string, told: Told, size: Exact): string | undefined {
  // What is less than the other is no multiple of it.
  if (size.compare(Exact.of(1)) <= 0) return undefined;
  const tail = /(?:\s+times|(?<=\d)\s*[x×]|(?<=half)\s+times)(?:\s.*)?$/isu.exec(text)?.[0] ?? ' times';
  if (/ and a half\b/i.test(text)) {
    const value = size.times(Exact.of(2)).round(0).over(Exact.of(2));
    const put = value.compare(Exact.of(1)) > 0 && isFair({ ...m, value } as Mention, told) ? inHalves(m, text, value) : undefined;
    if (put !== undefined) return put;
  }
  for (const decimals of new Set([Math.max(0, m.decimals), 1])) {
    const step = Exact.of(1n, 10n ** BigInt(decimals));
    const nearest = size.over(step).round(0).times(step);
    const value = [nearest, nearest.minus(step), nearest.plus(step)].slice(0, m.hedge ? 3 : 1).find((v) => v.compare(Exact.of(1)) > 0 && isFair({ ...m, type: 'multiplier', value: v, decimals } as Mention, told));
    if (!value) continue;
    if (value.equals(Exact.of(2)) && m.form === 'words') return cased(text, /^doubl|^triple|^treble/i.test(text) ? 'double' : 'twice');
    return cased(text, numberInForm(m, text, value, decimals)) + tail;
  }
  return undefined;
}

function part(m: Mention, text: string, told: Told, size: Exact, after: string): string | undefined {
  if (m.form !== 'words' || size.compare(Exact.of(1)) >= 0) return undefined;
  const fair = parts.map(([a, b, words]) => ({ value: Exact.of(a, b), words })).filter((x) => isFair({ ...m, type: 'fraction', value: x.value, decimals: 0 } as Mention, told));
  const best = fair.sort((a, b) => distance(a.value, size) - distance(b.value, size))[0];
  // Where no part that people say is fair, it is told in percent.
  if (!best) return m.hedge === undefined && /^\s+of\b/i.test(after) ? cased(text, `${inWords(size.times(Exact.of(100)).round(0).toFixed(0))} percent`) : undefined;
  // "half the noise" is "a third of the noise".
  const of = /\bhalf$/i.test(text) && best.words !== 'half' && /^\s+(?:the|its|his|her|their|our|that|what)\b/i.test(after) ? ' of' : '';
  const put = /^one\b/i.test(text) ? best.words.replace(/^a /, 'one ') : best.words;
  return cased(text, text.includes('-') ? put.replace(/^(\w+) (\w+)$/, (whole, a: string, b: string) => (a === 'a' ? whole : `${a}-${b}`)) : put) + of;
}

function distance(a: Exact, b: Exact): number {
  return Math.abs(a.minus(b).toNumber());
}
