// A thing and a number alone, which go on with what was said of the thing before.
//   "It lies 20 below the ceiling; the Larch's, only 12."
import type { Name } from './lexicon.js';
import type { Token } from '../script/index.js';

interface Sentence { low: readonly string[]; names: readonly Name[]; tokens: readonly Token[] }

const isThing = (n: Name): boolean => n.meanings.some((x) => x.own && x.fields.some((f) => f === 'setup' || f === 'setting'));

/** Between two numbers stand a semicolon and a thing, and no more than "only" or "about". */
export function gapAfter(p: Sentence, from: number, to: number): boolean {
  const semicolon = p.low.indexOf(';', from);
  if (semicolon < 0 || semicolon >= to) return false;
  const name = p.names.find((n) => n.from > semicolon && n.from <= semicolon + 3 && n.to <= to && isThing(n));
  return name !== undefined && p.low.slice(name.to, to).every((w) => /^(?:,|'s|only|just|a|about|by|contrast|even|still|and|mere|full|whole|barely|almost|nearly)$/.test(w));
}

/** A thing is named between two numbers, and stands there by itself. */
export function namedBetween(p: Sentence, from: number, to: number): boolean {
  return p.names.some((n) => n.from >= from && n.to <= to && isThing(n));
}
