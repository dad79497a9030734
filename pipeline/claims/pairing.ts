// Whether a list of figures without names goes with the record's own order. No word says so: the figures themselves have to.
import type { Context } from './context.js';
import { fit } from './decide.js';
import { readValue } from './read-value.js';

/** Said by names, or borne out by at least half of the other figures of the list. */
export function pairedSurely(c: Context, index: number): boolean {
  if (!c.hits.paired.has(index)) return false;
  const list = c.hits.guesses.find((g) => g.includes(index));
  if (!list) return true;
  const right = list.filter((k) => k !== index && readValue(c, k, 0.4).some((x) => fit(c.parsed.said[k]!.mention, x)));
  return right.length * 2 >= list.length - 1;
}
