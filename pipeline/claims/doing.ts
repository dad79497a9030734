// "tuned" as the name of a setting: "tuning it saves 5 watts", "tune it and it saves 5 watts" name it as well.
import type { Meaning } from './lexicon.js';

/** Further names of settings that are called by what was done to a thing. */
export function doing(settings: Iterable<{ id: string; spoken: string[] }>, slots: (id: string, words: string[]) => Meaning['slots']): [string[], Omit<Meaning, 'fields'>][] {
  const out: [string[], Omit<Meaning, 'fields'>][] = [];
  for (const { id, spoken } of settings) for (const form of spoken) {
    if (!/^[a-z]{3,}ed$/.test(form) || /eed$/.test(form)) continue;
    const stem = form.slice(0, -2);
    for (const word of [`${stem}ing`, stem, `${stem}e`]) out.push([[word], { slots: slots(id, [word]), own: true }]);
  }
  return out;
}
