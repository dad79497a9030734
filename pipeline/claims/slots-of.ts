// Which slots a name of the record fills: all of its field, or, where its ids are a cross of two, one half.
import type { KeyField } from '../facts/index.js';
import type { Grid } from './grid.js';
import { halves, nounsOf, prepositions } from './halves.js';
import { plain } from './name-keys.js';

type Filled = readonly { slot: number; value: string }[];

/** A composite id is named in full only where the phrase has all its words; otherwise only by the words that it has. */
export function slotsOf(g: Grid, field: KeyField, id: string, words: readonly string[]): Filled {
  const at = g.of[field];
  if (at.length === 1) return [{ slot: at[0]!, value: id }];
  const parts = partsOf(g, field, id);
  // A name of one of the two alone ("bench", where settings are "bench-quiet" and "case-quiet").
  if (!parts) return at.filter((slot) => g.values[slot]!.has(id)).map((slot) => ({ slot, value: id }));
  const ofPart = parts.map((p) => p.split('-').map(plain));
  const said = at.filter((_, k) => ofPart[k]!.every((w) => words.includes(w)));
  // "plugged in on the desk": two words besides the one that is known stand for the other; "high blower, vents shut" names both.
  const rest = words.filter((w) => !ofPart.flat().includes(w) && !prepositions.has(w));
  const other = ofPart.some((p, k) => !said.includes(at[k]!) && p.some((w) => words.includes(w)));
  // "calm plugged in", where the id says "calm-mains": what each half is called alone, the two are called together.
  const halved = (): boolean => halfNames(g, field, id, words).some(([, filled]) => filled.some((f) => !said.includes(f.slot)));
  const whole = said.length === 0 || said.length === at.length || other || (rest.length >= 1 && (words.length >= 4 || circumstance(words, rest) || halved()));
  return at.flatMap((slot, k) => (whole || said.includes(slot) ? [{ slot, value: parts[k]! }] : []));
}

/** "cool on the sill", where the id says "cool-sunlit": where it stands is the other half. */
function circumstance(words: readonly string[], rest: readonly string[]): boolean {
  return words.some((w, k) => k > 1 && rest.includes(w) && prepositions.has(words[k - 1]!));
}

/** The halves of a spoken form of a crossed id that each name one of the two alone. */
export function halfNames(g: Grid, field: KeyField, id: string, words: readonly string[]): [words: readonly string[], Filled][] {
  const at = g.of[field];
  const parts = at.length === 2 ? partsOf(g, field, id) : undefined;
  if (!parts) return [];
  const out: [readonly string[], number][] = [];
  if (parts.some((p) => p.includes('-'))) {
    const nouns = nounsOf(at.map((slot) => [...g.values[slot]!.keys()].map((v) => v.split('-').map(plain))));
    out.push(...cutByNouns(nouns, words));
  } else {
    const single = parts.map(plain);
    // "plugged in on the desk": what stands before the word of the one axis names the other.
    const known = words.findIndex((w) => single.includes(w));
    const head = known > 1 ? words.slice(0, known) : [];
    while (head.length && prepositions.has(head.at(-1)!) && head.length > 2) head.pop();
    if (known === words.length - 1 && head.length >= 2 && !head.some((w) => single.includes(w))) out.push([head, single.indexOf(words[known]!) === 0 ? 1 : 0]);
    out.push(...halves(single, words));
  }
  return out.map(([w, axis]) => [w, [{ slot: at[axis]!, value: parts[axis]! }]]);
}

function partsOf(g: Grid, field: KeyField, id: string): readonly string[] | undefined {
  const parts = g.slots[g.of[field][0]!]!.halves?.get(id);
  return parts?.every((p) => p !== '') ? parts : undefined;
}

/** "high blower, vents shut": each half has the noun that all values of its axis share. */
function cutByNouns(nouns: readonly (readonly string[])[], words: readonly string[]): [readonly string[], number][] {
  const found = words.flatMap((w, i) => nouns.flatMap((n, axis) => (n.includes(w) ? [{ i, axis }] : [])));
  const [a, b] = found;
  if (!a || !b || found.length !== 2 || a.axis === b.axis) return [];
  const cut = b.i === words.length - 1 ? a.i + 1 : a.i === 0 || b.i === a.i + 1 ? b.i : -1;
  return cut < 0 ? [] : ([[words.slice(0, cut), a.axis], [words.slice(cut), b.axis]] as [string[], number][]).filter(([w]) => w.length > 1);
}
