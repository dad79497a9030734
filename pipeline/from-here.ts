// Names of files as whoever reads them can open them: from the working folder on. Findings and facts name files from the folder on
// that holds the episodes' folder, wherever one works, so that what is kept and what is built stays the same.
import { dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import type { Finding, Place } from './places/index.js';

/** `root` is the folder that a name which is no whole path starts from. */
export function fromHere(file: string, root: string): string {
  return relative(process.cwd(), isAbsolute(file) ? file : join(root, file)).split(sep).join('/');
}

/** The folder that the names of an episode's files start from. */
export function rootOf(data: string): string {
  return dirname(resolve(data));
}

export function findingFromHere(finding: Finding, root: string): Finding {
  const here = (place: Place): Place => ({ ...place, file: fromHere(place.file, root) });
  const { place, related, accepted, turn } = finding;
  return {
    ...finding, place: here(place),
    ...(turn && { turn: { ...turn, place: here(turn.place) } }),
    ...(related && { related: related.map((r) => ({ ...r, place: here(r.place) })) }),
    ...(accepted && { accepted: { ...accepted, place: here(accepted.place) } }),
  };
}
