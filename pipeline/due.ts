// Which episodes have to be built, and which outputs of an earlier build still stand for what they were made from.
import type { Options } from './build.js';
import type { Examined, Project } from './examine.js';
import { hashOf, type Made, type Manifest, type Standing } from './files/index.js';
import type { Card } from './render.js';

export interface Due {
  due: Examined[];
  /** Outputs taken over as they stand, by episode. */
  kept: Map<string, Made>;
  /** Whether nothing at all is left to do, the index included. */
  complete: boolean;
}

export function sortOut(examined: readonly Examined[], before: Manifest, standing: Standing, project: Project, options: Options): Due {
  const stands = (made: Made | undefined, key: string): made is Made =>
    made?.key === key && Object.entries(made.files).every(([path, sha]) => standing.stands(path, sha));
  const asked = new Set(examined.map((e) => e.id));
  const kept: Due['kept'] = new Map();
  for (const [id, made] of before) if (options.only.length > 0 && project.ids.includes(id) && !asked.has(id)) kept.set(id, made);
  for (const e of examined) {
    const made = before.get(e.id);
    // Without a record nothing can be built of it, not even a draft: what was made earlier stays as it was.
    if (made && (e.ready ? stands(made, keyOf(e, options)) : true)) kept.set(e.id, made);
  }
  const due = examined.filter((e) => e.ready && !kept.has(e.id));
  const index = stands(before.get(''), indexKey([...kept.values()].map((m) => m.card as Card), project));
  return { due, kept, complete: due.length === 0 && index && before.size === kept.size + 1 };
}

/** Hash of all that the outputs of an episode are made from. */
export function keyOf(examined: Examined, { draft, failOn }: Options): string {
  // What counts as an error decides what is said of a draft.
  return hashOf(examined.key, draft && failOn);
}

export function indexKey(cards: readonly Card[], { code }: Project): string {
  return hashOf(code, [...cards].sort((a, b) => (a.id < b.id ? -1 : 1)));
}
