// Names said with less than all of their words: "the last" for "the last step", "the little one" for "the little brick".
import type { KeyField } from '../facts/index.js';
import type { Grid } from './grid.js';
import { prepositions } from './halves.js';
import type { Meaning } from './lexicon.js';
import { keyOfPhrase } from './name-keys.js';
import { slotsOf } from './slots-of.js';

/** The names of each field, by their ids. */
export type NameMaps = readonly (readonly [KeyField, ReadonlyMap<string, { id: string; name: string; spoken: readonly string[] }>])[];

/** Where several things share their noun ("the first step", "the last step"), the word before it alone may stand for them. */
export function elliptical(maps: NameMaps, g: Grid): Map<string, Meaning> {
  const out = new Map<string, Meaning>();
  for (const [field, map] of maps) {
    if (field !== 'setup' && field !== 'setting' && field !== 'workload' && field !== 'part') continue;
    const two = [...map.values()].flatMap((n) => n.spoken.map((s) => ({ id: n.id, words: keyOfPhrase(s) })).filter((x) => x.words.length === 2));
    for (const { id, words } of two) {
      const sharing = new Set(two.filter((x) => x.words[1] === words[1]).map((x) => x.id));
      if (sharing.size > 1 && !out.has(words[0]!)) out.set(words[0]!, { fields: [field], slots: slotsOf(g, field, id, words), own: true });
    }
  }
  return out;
}

/** "the little one" for "the little brick": the word that tells a thing from its like stands for it, with "one" for the noun. */
export function shortened(maps: NameMaps, g: Grid): [string[], Meaning[]][] {
  const out = new Map<string, Map<string, Meaning>>();
  for (const [field, map] of maps) {
    if (field !== 'setup' && field !== 'setting' && field !== 'workload' && field !== 'part') continue;
    for (const n of map.values()) for (const form of n.spoken) {
      const words = keyOfPhrase(form).filter((w, i) => i > 0 || !prepositions.has(w));
      if (words.length !== 2 || words.some((w) => w.startsWith('#')) || prepositions.has(words[0]!) || /^\p{Lu}/u.test(form.replace(/^(?:the|my|our|on|in|with|at) /gi, ''))) continue;
      // "the slowest one", where a part is called "slowest percent", ranks things.
      if (field === 'part' && /est$|^(?:worst|most)$/.test(words[0]!)) continue;
      const list = out.get(words[0]!) ?? new Map<string, Meaning>();
      list.set(`${field} ${n.id}`, { fields: [field], slots: slotsOf(g, field, n.id, words), own: true });
      out.set(words[0]!, list);
    }
  }
  // Two of the same field with that word: it tells nothing.
  return [...out].filter(([, list]) => new Set([...list.values()].map((m) => m.fields[0])).size === list.size).map(([word, list]) => [[word, '#1'], [...list.values()]]);
}
