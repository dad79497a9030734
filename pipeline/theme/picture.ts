// A picture that is planned but not yet drawn, and what it becomes.

export interface PictureTable {
  head: string[];
  rows: string[][];
}

/** All that the page and the cache need to know of a picture; drawing it is left until it is known to be needed. */
export interface Prepared {
  /** File-name part, kebab-case. */
  name: string;
  kind: string;
  title: string;
  /** What it shows, in words, with its numbers. */
  alt: string;
  /** Ids of the facts shown. */
  facts: string[];
  table?: PictureTable;
  /** Canonical JSON of everything that determines the pixels but the program itself. */
  inputs: string;
  /** Whether footage shows through. */
  transparent: boolean;
  draw(options?: { draft?: boolean }): Promise<Drawn>;
}

export interface Drawn {
  /** Text kept as text, for the page; the panel opaque. */
  svg: string;
  /** All text as paths, for pixels. */
  outlined: string;
}

export type Picture = Omit<Prepared, 'draw' | 'inputs'> & Drawn;

/** JSON with sorted keys, so that equal inputs are equal texts. */
export function canonical(value: unknown): string {
  return JSON.stringify(value, (_key, v: unknown) =>
    v && typeof v === 'object' && !Array.isArray(v) ? Object.fromEntries(Object.entries(v).sort(([a], [b]) => (a < b ? -1 : 1))) : v);
}
