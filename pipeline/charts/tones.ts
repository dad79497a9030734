// Which colour stands for which setup or setting: the same one in every chart of an episode, since charts follow each other in an edit.
import type { Facts, KeyField } from '../facts/index.js';
import type { Colour } from '../theme/index.js';

/** As many things as can be told apart by colour in one chart. */
export const tones: readonly Colour[] = ['muted', 'plain', 'text'];

/**
 * By the place in the record, whatever this chart leaves out or puts first. Where the record has more things than there are
 * colours, and two of them would meet in one, the later of the two takes one that is free. Of at most as many ids as tones.
 */
export function tonesOf(facts: Facts, field: KeyField, ids: readonly string[]): ReadonlyMap<string, Colour> {
  const { setups, settings, workloads } = facts.about;
  const holders = new Set(facts.holders());
  const lists: Partial<Record<KeyField, Iterable<string>>> = { setup: setups.keys(), setting: settings.keys(), workload: workloads.keys() };
  const listed = [...(lists[field] ?? ids)].filter((id) => !holders.has(id));
  const own = (id: string): Colour => tones[Math.max(0, listed.indexOf(id)) % tones.length]!;
  const inOrder = [...ids].sort((a, b) => listed.indexOf(a) - listed.indexOf(b));
  const given = new Map<string, Colour>();
  const free = (tone: Colour): boolean => ![...given.values()].includes(tone);
  for (const id of inOrder) if (free(own(id))) given.set(id, own(id));
  for (const id of inOrder) if (!given.has(id)) given.set(id, tones.find(free) ?? own(id));
  return given;
}
