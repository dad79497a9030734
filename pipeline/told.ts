// The pictures of an episode in the order in which its script tells them, numbered so that file names sort that way.
import { numbered, type PlannedPicture } from './draw.js';
import { type Facts, isFact } from './facts/index.js';
import { placeInScript } from './proof-texts.js';
import { inStoryOrder, plainHeading } from './story/index.js';

/** Where in the script facts are said: ids with places that rise from its begin to its end. */
export type Said = readonly (readonly [id: string, at: number])[];

export function asTold(planned: readonly PlannedPicture[], facts: Facts, said: Said): PlannedPicture[] {
  const places = new Map<string, number>();
  for (const [id, at] of said) for (const name of namesOf(facts, id)) if (!places.has(name)) places.set(name, at);
  const ordered = inStoryOrder(planned.filter((p) => p.divides === undefined).map((picture) => {
    const { prepared } = picture.sheets[0]!;
    return { picture, facts: pointOf(facts, prepared.facts, places), ...(prepared.kind === 'chapter' && { title: prepared.title }), closes: closing.has(prepared.kind) };
  }), places, headings(facts));
  return numbered([...ordered.map(({ picture }) => picture), ...planned.filter((p) => p.divides !== undefined)]);
}

/** What was gained and given, and what to be careful about. */
const closing: ReadonlySet<string> = new Set(['summary', 'end']);

const comparisons: ReadonlySet<string> = new Set(['difference', 'rise', 'points', 'percent_change', 'ratio', 'percent_of']);
const circumstances: ReadonlySet<string> = new Set(['count', 'range']);

/** A fact's id, and for a comparison the pair that it compares: "nine kelvin more" and "fourteen percent more" tell the same. */
function namesOf(facts: Facts, id: string): string[] {
  const fact = facts.get(id);
  return isFact(fact) && comparisons.has(fact.kind) ? [id, `pair ${[...fact.keys].sort().join(' ')}`] : [id];
}

/** What a picture is there to say: its comparisons, where one of them is said; else all its figures. Runs and rooms are its circumstances. */
function pointOf(facts: Facts, ids: readonly string[], places: ReadonlyMap<string, number>): string[] {
  const shown = ids.filter((id) => !circumstances.has(id.split(/[.:]/)[0]!));
  const compared = shown.filter((id) => comparisons.has(id.split(/[.:]/)[0]!)).flatMap((id) => namesOf(facts, id));
  return compared.some((id) => places.has(id)) ? compared : shown;
}

function headings(facts: Facts): Map<string, number> {
  const script = facts.about.texts.find((t) => t.role === 'script');
  const found = new Map<string, number>();
  script?.text.split('\n').forEach((line, i) => {
    const title = /^#+\s/.test(line) ? plainHeading(line) : '';
    if (title && !found.has(title)) found.set(title, placeInScript({ line: i + 1, column: 1 }));
  });
  return found;
}
