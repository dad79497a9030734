// "the blower on low", "leave the vents on wide", "from low to high": where settings are a cross of two things that are each
// set to a level, the level alone is one of the thing that was named last before it.
import { stretch } from '../script/index.js';
import type { Facts } from '../facts/index.js';
import type { Grid } from './grid.js';
import { nounsOf, prepositions } from './halves.js';
import type { Meaning, Name } from './lexicon.js';
import { keyOfPhrase, plain } from './name-keys.js';
import { halfNames } from './slots-of.js';

/** By the words of a level: whose it is, by the noun. */
export type Levels = ReadonlyMap<string, ReadonlyMap<string, Meaning>>;

const leads = /^(?:on|at|from|to|in|of|than)$/;
/** "so wide is twice narrow, and middle there is 40": a level is what the clause is about. */
const opens = /^(?:|and|so|but|while|whereas|then|now|,|;|:)$/;
const verbs = /^(?:is|was|gets?|got|gives?|gave|does|draws?|drew|runs?|ran|sits?|reads?|takes?|took|needs?|makes?|made|comes?|there|it's|costs?|adds?|saves?|brings?)$/;
const longest = 2;

export function levelsOf(g: Grid, about: Facts['about']): Levels {
  const out = new Map<string, Map<string, Meaning>>();
  for (const [field, map] of [['setup', about.setups], ['setting', about.settings]] as const) {
    const at = g.of[field];
    if (at.length !== 2) continue;
    const nouns = nounsOf(at.map((slot) => [...g.values[slot]!.keys()].map((v) => v.split('-').map(plain))));
    if (nouns.some((n) => n.length !== 1)) continue;
    for (const n of map.values()) for (const form of [...n.spoken, n.id.replaceAll('-', ' ')]) {
      const words = keyOfPhrase(form);
      const alone = at.flatMap((slot) => (g.values[slot]!.has(n.id) ? [[words, [{ slot, value: n.id }]] as const] : []));
      for (const [w, slots] of [...alone, ...halfNames(g, field, n.id, words)]) {
        const noun = nouns[at.indexOf(slots[0]!.slot)]![0]!;
        const level = w.filter((x) => x !== noun && !prepositions.has(x)).join(' ');
        if (!level || !w.includes(noun)) continue;
        out.set(level, (out.get(level) ?? new Map<string, Meaning>()).set(noun, { slots, fields: [field], own: true }));
      }
    }
  }
  return out;
}

/** The levels that stand alone in a sentence, with the names that they are. */
export function levelNames(levels: Levels, low: readonly string[], names: readonly Name[]): Name[] {
  if (levels.size === 0) return [];
  const nouns = new Set([...levels.values()].flatMap((m) => [...m.keys()]));
  const out: Name[] = [];
  let noun: string | undefined;
  for (let i = 0; i < low.length; i++) {
    const word = plain(low[i]!);
    if (nouns.has(word)) noun = word;
    if (!noun) continue;
    for (let k = Math.min(longest, low.length - i); k > 0; k--) {
      const meaning = levels.get(stretch(low, i, i + k))?.get(noun);
      if (!meaning || !(leads.test(low[i - 1] ?? '') || (opens.test(low[i - 1] ?? '') && verbs.test(low[i + k] ?? ''))) || names.some((n) => n.from < i + k && n.to > i && n.meanings.some((m) => m.own))) continue;
      out.push({ from: i, to: i + k, meanings: [meaning] });
      break;
    }
  }
  return out;
}
