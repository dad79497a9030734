// The order of pictures: as they are told where there is a script, else as they were planned.

export interface Told {
  /** Ids of the facts shown. */
  facts: readonly string[];
  /** A title that may stand as a heading in the script. */
  title?: string;
  /** It closes the episode: behind all that is told. */
  closes?: boolean;
}

/**
 * Each picture stands where the first of its facts is first said, or where its title is a heading. What is said nowhere stays
 * behind the one that it was planned after; what closes comes last, and what comes before all that is said comes first. `said`: places in the script, in any
 * rising measure, by fact id; `headings` by their text.
 */
export function inStoryOrder<T extends Told>(planned: readonly T[], said: ReadonlyMap<string, number>, headings: ReadonlyMap<string, number> = new Map()): T[] {
  let at = -Infinity;
  const placed = planned.map((picture, i) => {
    const heading = picture.title === undefined ? undefined : headings.get(plain(picture.title));
    const places = picture.facts.flatMap((id) => said.get(id) ?? []);
    if (picture.closes) return { picture, at: Infinity, i };
    if (heading !== undefined) at = heading;
    else if (places.length) at = Math.min(...places);
    return { picture, at, i };
  });
  return placed.sort((a, b) => a.at - b.at || a.i - b.i).map((p) => p.picture);
}

/** A heading without its marks, its number, and its capitals. */
export function plain(heading: string): string {
  return heading.replace(/^#+\s*/, '').replace(/^(?:chapter|part)?\s*\d+\s*[:.)–-]?\s*/i, '').trim().toLowerCase();
}
