// Names as a trie knows them: words in their plain form, numbers by their value.
import { findNumbers, type NumberSpan, type Token, tokens } from '../script/index.js';

const fillers = new Set(['the', 'a', 'an', 'my', 'our', 'your', 'its', 'own', 'this', 'that', 'their']);

/** Words and numbers as the trie knows them: "%" is a word, a number its value, plurals and possessives plain. */
export function atoms(t: readonly Token[], numbers: readonly NumberSpan[]): { key: string; from: number; to: number }[] {
  const out: { key: string; from: number; to: number }[] = [];
  let n = 0;
  for (let i = 0; i < t.length; i++) {
    while (n < numbers.length && numbers[n]!.to <= i) n++;
    const span = numbers[n];
    if (span && span.from === i && (span.type === 'cardinal' || (span.type === 'fraction' && span.value.n === 1n && span.value.d === 2n))) {
      out.push({ key: `#${span.value.toString()}`, from: i, to: span.to });
      i = span.to - 1;
      continue;
    }
    const w = t[i]!;
    if (w.low === '-' && w.tight) continue;
    if (fillers.has(w.low)) continue;
    out.push({ key: stem(w), from: i, to: i + 1 });
  }
  return out;
}

const same = new Map([['%', 'percent'], ['volts', 'volt'], ['v', 'volt'], ['w', 'watt'], ['watts', 'watt'], ['minutes', 'minute'], ['min', 'minute'], ['mins', 'minute'], ['hours', 'hour'], ['dba', 'decibel'], ['db(a)', 'decibel'], ['decibels', 'decibel'], ['mhz', 'megahertz'], ['degrees', 'degree'], ['grey', 'gray'], ['colour', 'color']]);

export function stem(w: Token): string {
  const low = w.low;
  const known = same.get(low);
  if (known) return known;
  if (low.length > 3 && low.endsWith('s') && !low.endsWith('ss') && !low.endsWith('us')) return low.endsWith('ies') ? `${low.slice(0, -3)}y` : low.slice(0, -1);
  return low;
}

export function keyOfPhrase(text: string): string[] {
  const t = tokens(text);
  return atoms(t, findNumbers(t)).map((a) => a.key);
}

export function plain(word: string): string {
  return keyOfPhrase(word)[0] ?? word;
}
