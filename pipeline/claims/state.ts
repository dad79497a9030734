// What the sentences before have established. Immutable and comparable, so that a sentence's reading can be kept.
import type { Grid } from './grid.js';
import type { OwnMark } from './own-mark.js';
import type { Term } from './terms.js';
import type { ToldRow } from './told-row.js';

export interface State {
  /** By slot: values spoken of, the latest first. */
  topics: readonly (readonly string[])[];
  /** By slot: how many of the latest were named side by side, so that none of them stands out. */
  together: readonly number[];
  /** By slot: how many sentences ago the latest was named. */
  ages: readonly number[];
  /** What was said last: values, changes, shares, medians; the latest first. */
  said: readonly Term[];
  /** The two ends of the last "from … to". */
  pair?: readonly [string, string];
  /** The last things named side by side. */
  list?: { slot: number; values: readonly string[]; /** Not in one breath: whose turn comes first is open. */ scattered?: boolean };
  /** The last such list of three or more: the order in which tables are read. */
  table?: { slot: number; values: readonly string[] };
  /** Things that had figures side by side, the latest row first. */
  rows?: readonly ToldRow[];
  /** What the last comparison was made with: slot values. */
  base?: readonly (readonly [number, string])[];
  /** How many sentences ago a figure was last read. */
  figureAge: number;
  /** How many sentences ago the last comparison or pair was said. */
  since?: number;
  /** The constant spoken of last. */
  constant?: string;
  /** Stated order of a ranking being read out: lowest or highest first. */
  order?: 'lowest' | 'highest';
  /** Which way the table of a measure runs, by whoever was said to come first. */
  leads?: { variant: 'lowest' | 'highest'; of: string };
  /** Things already placed in a ranking, for "the other six". */
  placed: readonly string[];
  /** Share facts said last, for points between them. */
  shares: readonly Term[];
  /** A mark that the speaker has set by a number of which the record knows nothing. */
  mark?: OwnMark;
  /** The unit that a figure was told in last, where it is not the record's own. */
  unit?: string;
  /** What the heading of the section names, by slot. */
  heading: readonly (readonly [number, string])[];
  /** Words of the script's title, in the singular: what the things tested are called. */
  title: readonly string[];
}

export const depth = 5;

/** With every field, those not yet known too: states that all have the same fields in the same order are looked at much faster. */
export function begin(g: Grid): State {
  return {
    topics: g.slots.map(() => []), together: g.slots.map(() => 1), ages: g.slots.map(() => 99), said: [], pair: undefined, list: undefined, table: undefined, base: undefined, figureAge: 99, since: undefined,
    constant: undefined, order: undefined, rows: undefined, leads: undefined, placed: [], shares: [], mark: undefined, unit: undefined, heading: [], title: [],
  };
}

export function remember(list: readonly string[], value: string): readonly string[] {
  if (list[0] === value) return list;
  const out = [value];
  for (let i = 0; i < list.length && out.length < depth; i++) if (list[i] !== value) out.push(list[i]!);
  return out;
}

/** Whether two states say the same. Most of what they are made of is shared, which is seen at once. */
export function sameState(a: State, b: State): boolean {
  return alike(a, b);
}

function alike(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a)) return Array.isArray(b) && a.length === b.length && a.every((x, i) => alike(x, b[i]));
  const [p, q] = [a as Record<string, unknown>, b as Record<string, unknown>];
  const keys = Object.keys(p);
  return keys.length === Object.keys(q).length && keys.every((k) => alike(p[k], q[k]));
}
