// Names that only a little word tells from a common noun: a setting called "its own stand" is not meant by every stand.
import type { Lexicon, Meaning, Name } from './lexicon.js';

/** The word before the noun without which a form names nothing. */
export function neededBefore(form: string, words: readonly string[]): Meaning['after'] {
  if (words.length !== 1) return undefined;
  const low = form.toLowerCase().split(' ');
  return low.at(-2) === 'own' ? 'own' : low.length === 2 && (low[0] === 'that' || low[0] === 'this') ? low[0] : undefined;
}

const ends = /^(?:[.,;:!?)—–]|and|but|or|so|it|they|he|she|we|you|is|was|does|did|has|had|the)$/;

/** The names that stand, and "with its own, it hums": the noun is left out. */
export function toldByOwn(names: readonly Name[], low: readonly string[], lex: Lexicon): Name[] {
  if (lex.owns.length !== 1 && !names.some((n) => n.meanings.some((m) => m.after))) return [...names];
  const out = names.flatMap((n): Name[] => {
    if (!n.meanings.some((m) => m.after)) return [n];
    const left = n.meanings.filter((m) => !m.after || m.after === low[n.from - 1]);
    const told = left.filter((m) => m.after);
    return left.length ? [{ ...n, meanings: told.length ? told : left }] : [];
  });
  if (lex.owns.length !== 1) return out;
  for (let k = low.indexOf('own'); k > 0; k = low.indexOf('own', k + 1)) {
    if (/^(?:its|their|his|her)$/.test(low[k - 1]!) && ends.test(low[k + 1] ?? '.') && /^(?:with|on|in|at|to|from|than|under)$/.test(low[k - 2] ?? '')) out.push({ from: k, to: k + 1, meanings: lex.owns });
  }
  return out.sort((a, b) => a.from - b.from);
}
