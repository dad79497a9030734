// Names without the word that leads to them: "June" and "by June" for a setting called "in June", "the louvre" for one called
// "with the louvre". And things with a number, said by their place: "the second shelf" for "shelf two".
import type { Grid } from './grid.js';
import type { Meaning } from './lexicon.js';
import { keyOfPhrase } from './name-keys.js';
import type { NameMaps } from './said-with-less.js';
import { slotsOf } from './slots-of.js';

const leading = /^(?:in|on|at|with|by|from|since|during|under|inside|after)$/;

/** What is left of each such name. A proper name speaks for itself; any other noun only where it stands first or is led to. */
export function led(maps: NameMaps, g: Grid): [string[], Meaning[]][] {
  const out = new Map<string, { words: string[]; ids: Set<string>; meaning: Meaning }>();
  const others = new Set<string>();
  for (const [field, map] of maps) for (const n of map.values()) for (const form of n.spoken) {
    const words = keyOfPhrase(form);
    if (field !== 'setting') others.add(words.join(' '));
    else if (leading.test(words[0] ?? '') && words.length > 1 && words.length <= 3 && !words.some((w) => w.startsWith('#'))) {
      const rest = words.slice(1);
      const proper = /^\p{Ll}+ (?:the )?\p{Lu}/u.test(form);
      const known = out.get(rest.join(' '));
      if (known) known.ids.add(n.id);
      else out.set(rest.join(' '), { words: rest, ids: new Set([n.id]), meaning: { slots: slotsOf(g, field, n.id, rest), fields: [field], own: true, ...(!proper && { led: true }) } });
    }
  }
  // Two of them with that noun ("on the rack", "under the rack"), or a part that is called so: it tells nothing.
  return [...out].filter(([key, x]) => x.ids.size === 1 && !others.has(key)).map(([, x]) => [x.words, [x.meaning]]);
}

const openings = /^(?:by|since|until|till|for|through|during|in|on|at|with|from|to|than|after|against|versus|vs|under|over|before|between|[,;:(–—-]|and|but|so|or|while|because|as|which|that|where|if|when)$/;

/** Whether something leads to a name of that kind: "since the louvre", "The louvre took off four", but not "I bought a louvre". */
export function isLedTo(low: readonly string[], at: number): boolean {
  let k = at - 1;
  if (/^(?:the|this|that)$/.test(low[k] ?? '')) k--;
  return k < 0 || openings.test(low[k]!);
}

const places = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth'];

/** "the second shelf" for what is called "shelf two". */
export function byOrdinal(maps: NameMaps, g: Grid): [string[], Meaning[]][] {
  return maps.flatMap(([field, map]) => (field === 'part' || field === 'setting' || field === 'setup' ? [...map.values()].flatMap((n) => n.spoken.flatMap((form): [string[], Meaning[]][] => {
    const [noun, number, more] = keyOfPhrase(form);
    const place = number?.startsWith('#') && !more ? places[Number(number.slice(1)) - 1] : undefined;
    return place && !noun!.startsWith('#') && /^\p{Ll}/u.test(form.replace(/^the /i, '')) && !/^(?:run|depth|level|step|limit|at|week|day)$/.test(noun!) ? [[[place, noun!], [{ slots: slotsOf(g, field, n.id, [noun!]), fields: [field], own: true }]]] : [];
  })) : []));
}
