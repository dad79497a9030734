// The ids that a mistyped or half-remembered id most likely meant.
import { distance } from '../places/index.js';
import { type Key, keyFields, splitKey } from '../records/index.js';
import { factKinds } from './fact.js';
import { type Facts, isFact } from './facts.js';
import { readId, subjectKey } from './id.js';

/**
 * Up to `most` ids, likeliest first: the id itself with every unknown key replaced by the nearest known one where it can
 * be read as an id; then the means and constants of the keys that share most words with the text.
 */
export function suggestIds(facts: Facts, text: string, most = 5): string[] {
  const keys = facts.keys();
  const mended = mend(facts, text, keys);
  const words = wordsOf(text);
  const scored = keys.map((key, order) => ({ key, order, score: likeness(words, key) })).filter((k) => k.score > 0);
  scored.sort((a, b) => b.score - a.score || a.order - b.order);
  const ids = scored.slice(0, most).map(({ key }) => facts.value(key)).filter(isFact).map((f) => f.id);
  return [...new Set([...(mended ? [mended] : []), ...ids])].slice(0, most);
}

function mend(facts: Facts, text: string, keys: readonly Key[]): string | undefined {
  const m = /^([a-z_ -]+)((?:\.[a-z-]+)?:.+)$/is.exec(text.trim());
  if (!m) return undefined;
  const kind = factKinds.map((k) => ({ k, d: distance(m[1]!.toLowerCase().replace(/[ -]/g, '_'), k, 4) })).sort((a, b) => a.d - b.d)[0]!;
  const parsed = kind.d < 4 ? readId(kind.k + m[2]!) : undefined;
  if (!parsed) return undefined;
  const operands = parsed.operands.map((o) => (/^[(=]/.test(o) ? o : nearestKey(subjectKey(o)!, keys) ?? o));
  const fact = facts.derive(parsed.kind, operands, parsed.variant);
  return isFact(fact) ? fact.id : undefined;
}

function nearestKey(key: Key, keys: readonly Key[]): Key | undefined {
  if (keys.includes(key)) return key;
  const at = splitKey(key);
  let best: Key | undefined;
  let least = Infinity;
  for (const known of keys) {
    const other = splitKey(known);
    const d = at && other ? keyFields.reduce((sum, f) => sum + (at[f] && other[f] ? distance(at[f], other[f]) : at[f] === other[f] ? 0 : 2), 0) : distance(key, known, 20);
    if (d < least) [best, least] = [known, d];
  }
  return least <= Math.max(3, key.length / 4) ? best : undefined;
}

function wordsOf(text: string): string[] {
  return text.toLowerCase().split(/[^\p{L}\p{N}]+/u).filter(Boolean);
}

function likeness(words: readonly string[], key: Key): number {
  const own = wordsOf(key);
  return words.reduce((score, w) => score + Math.max(0, ...own.map((o) => (o === w ? 3 : w.length > 3 && distance(w, o, 2) < 2 ? 2 : w.length > 2 && (o.startsWith(w) || w.startsWith(o)) ? 1 : 0))), 0);
}
