// Which setting a thing has where nobody says which: what it came with, else the other of two.
import type { Grid } from './grid.js';

const usual = /^(?:stock|default|standard|baseline|auto|factory|reference|as-shipped)\b/;

/** The one of these ids that is called so; undefined where none is. */
export function usualOf(ids: Iterable<string>): string | undefined {
  for (const id of ids) if (usual.test(id)) return id;
  return undefined;
}

/** What stands in the place of a setting that is taken away: the other of two, else the usual one; undefined where it might be any. */
export function insteadOf(g: Grid, slot: number, value: string): string | undefined {
  const others = [...g.values[slot]!.keys()].filter((v) => v !== value);
  return others.length === 1 ? others[0] : usualOf(others);
}
