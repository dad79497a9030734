// Whether a number is just what a reading gives, said plainly.
import { type Facts, isFact } from '../facts/index.js';
import type { Mention } from '../script/index.js';
import type { Candidate } from './context.js';
import { fit } from './decide.js';
import type { Cell } from './grid.js';

/** `like` is the reading of the number that it is tried instead of. */
export function givesJust(facts: Facts, cell: Cell, m: Mention, like: Candidate): boolean {
  const fact = facts.value(cell.key);
  return isFact(fact) && fit(m, { ...like, kind: 'mean', sign: 0, fact });
}
