// What is worked out of a sentence as it was read, kept with it for as long as it is: a list is reached much faster than a hash
// table for each such thing.
import type { Parsed } from './parse.js';

let many = 0;

/** The same function, which answers each sentence once. What it gives is never undefined, and not to be changed. */
export function keptOf<T extends NonNullable<unknown> | null>(make: (p: Parsed) => T): (p: Parsed) => T {
  const own = many++;
  return (p) => {
    const known = p.kept[own] as T | undefined;
    if (known !== undefined) return known;
    const made = make(p);
    p.kept[own] = made;
    return made;
  };
}
