// Proper names that a transcript got slightly wrong: "pelican" for "Pellick", "nor vane" for "Norvane". Only where one name
// alone is near, in sound as well as in letters, and where a name can stand: after "the" or with a capital.
import { distance } from '../places/index.js';
import type { Token } from '../script/index.js';
import type { Lexicon, Name } from './lexicon.js';

export function misheard(t: readonly Token[], names: readonly Name[], lex: Lexicon): Name[] {
  const out = [...names];
  if (lex.heard.size === 0) return out;
  for (let i = 0; i < t.length; i++) {
    if (!opens(t, i) || names.some((n) => n.from <= i && i < n.to)) continue;
    const one = t[i]!.low;
    const next = t[i + 1];
    const joined = next?.kind === 'word' && !names.some((n) => n.from <= i + 1 && i + 1 < n.to) ? one + next.low : undefined;
    const two = joined === undefined ? undefined : nearOf(lex, joined, true);
    const meanings = two ?? (one.length >= 5 && !common.has(one) ? nearOf(lex, one, false) : undefined);
    if (!meanings) continue;
    let to = two ? i + 2 : i + 1;
    // The number of "the pelican 14" belongs to the name.
    if (t[to]?.kind === 'number' && /^\d{1,4}$/.test(t[to]!.text) && !/^[%°]$/.test(t[to + 1]?.low ?? '') && lex.numbered.has(t[to]!.text)) to++;
    out.push({ from: i, to, meanings });
    i = to - 1;
  }
  return out.length === names.length ? out : out.sort((a, b) => a.from - b.from);
}

function opens(t: readonly Token[], i: number): boolean {
  const w = t[i]!;
  if (w.kind !== 'word' || w.low.length < 3) return false;
  return i > 0 && (leading.has(t[i - 1]!.low) || isCapital(w.text));
}

const leading = new Set(['the', 'okay', 'ok', 'so', 'now', 'and', 'then', 'right', 'well']);

function isCapital(word: string): boolean {
  const c = word.charCodeAt(0);
  return c < 128 ? c >= 65 && c <= 90 : /^\p{Lu}/u.test(word);
}

function nearOf(lex: Lexicon, word: string, joined: boolean): Lexicon['heard'] extends ReadonlyMap<string, infer M> ? M | undefined : never {
  if (word.length < 5) return undefined;
  const near = [...lex.heard].filter(([name]) => {
    if (name[0] !== word[0] || Math.abs(name.length - word.length) > 2) return false;
    const d = distance(name, word, 4);
    return d === 0 ? joined : skeleton(name) === skeleton(word) ? d <= 3 : !joined && d <= (word.length >= 7 ? 3 : 1) && skeleton(word).startsWith(skeleton(name));
  });
  return near.length === 1 ? near[0]![1] : undefined;
}

/** The consonants as they sound: "norvane" and "norvein" are one. */
export function skeleton(word: string): string {
  return word.toLowerCase().replace(/ck|ch|q|c/g, 'k').replace(/ph/g, 'f').replace(/z/g, 's').replace(/[aeiouyhw]/g, '').replace(/(.)\1+/g, '$1');
}

const common = new Set(['before', 'second', 'number', 'better', 'bottom', 'middle', 'heavier', 'lighter', 'quieter', 'louder', 'bigger', 'smaller', 'faster', 'slower', 'higher', 'lowest', 'highest', 'fastest', 'loudest', 'coolest', 'warmest', 'hottest', 'right', 'first', 'third', 'other', 'whole', 'world', 'point', 'power', 'table', 'reason', 'winner', 'leader', 'median', 'cooler', 'record', 'result', 'results', ...'three seven eight eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty thirty forty fifty sixty seventy eighty ninety hundred thousand'.split(' ')]);
