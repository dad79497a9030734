// The right number in the writer's own form: words stay words, digits digits, the precision said is kept.
import { inWords, ordinalInWords, showNumber } from '../quantities/index.js';
import type { Mention } from '../script/index.js';
import { inSaidUnit, stepOf } from './fit.js';
import type { Candidate } from './context.js';

/** The mention's text with the number put right; undefined where one form alone cannot be told (fractions, places). */
export function suggestion(m: Mention, text: string, chosen: Candidate): string | undefined {
  if (m.type === 'ordinal') return m.form === 'words' ? ordinalInWords(chosen.fact.value.toNumber()) : undefined;
  if (m.type !== 'cardinal' || m.hedge || m.composed) return undefined;
  const exact = inSaidUnit(chosen.fact, m);
  if (!exact) return undefined;
  if (chosen.sign !== 0 && exact.sign() !== 0 && exact.sign() !== chosen.sign) return undefined;
  const size = chosen.kind === 'mean' || chosen.kind === 'constant' || chosen.kind === 'raw' ? exact : exact.abs();
  const step = stepOf(m);
  const value = size.over(step).round(0).times(step);
  if (m.step && !value.over(stepOf({ ...m, step: undefined } as Mention)).d) return undefined;
  const decimals = Math.max(0, m.decimals);
  if (!value.round(decimals).equals(value)) return undefined;
  const tail = unitTail(text);
  if (m.form === 'digits') {
    const number = showNumber(value, decimals).replace('−', '-');
    return (/\d,\d{3}/.test(text) || value.toNumber() < 1000 ? number : number.replace(/,/g, '')) + tail;
  }
  const and = / hundred and /.test(text);
  const words = inWords(value.toFixed(decimals), and);
  // "sixty one" was written without its hyphen.
  const plain = /\b(?:twen|thir|for|fif|six|seven|eigh|nine)ty [a-z]/i.test(text) && !text.includes('-');
  return (plain ? words.replace(/-/g, ' ') : words) + tail;
}

/** What follows the number in the mention: its unit, with the space before it. */
function unitTail(text: string): string {
  const m = /^(?:[-−–]?[\d.,]+|(?:(?:minus|negative|a|an|and|point|oh|zero|nought|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|thousand|million)\b[\s-]*)+)(.*)$/isu.exec(text);
  if (!m) return '';
  const lead = text.length - m[1]!.length;
  const space = /\s+$/.exec(text.slice(0, lead))?.[0] ?? '';
  return m[1] ? space + m[1] : '';
}
