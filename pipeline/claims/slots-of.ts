// What a spoken form of a name says, where the name is a cross of two.
import type { KeyField } from '../facts/index.js';
import type { Grid } from './grid.js';
import { prepositions } from './halves.js';
import type { Meaning } from './lexicon.js';
import { plain } from './name-keys.js';

/** A composite id is named in full only where the phrase has all its words; otherwise only by the words that it has. */
export function slotsOf(g: Grid, field: KeyField, id: string, words: readonly string[]): Meaning['slots'] {
  const at = g.of[field];
  if (at.length === 1) return [{ slot: at[0]!, value: id }];
  const parts = id.split('-');
  // A name of one of the two alone ("bench", where settings are "bench-quiet" and "case-quiet").
  if (parts.length !== at.length) return at.filter((slot) => g.values[slot]!.has(id)).map((slot) => ({ slot, value: id }));
  const said = at.filter((_, k) => words.includes(plain(parts[k]!)));
  // "plugged in on the desk": two words besides the one that is known stand for the other.
  const rest = words.filter((w) => !parts.some((p) => plain(p) === w) && !prepositions.has(w));
  const whole = said.length === 0 || said.length === at.length || (rest.length >= 1 && words.length >= 4);
  return at.flatMap((slot, k) => (whole || said.includes(slot) ? [{ slot, value: parts[k]! }] : []));
}
