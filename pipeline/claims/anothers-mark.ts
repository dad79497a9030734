// "over its limit of 300", "the Larch's ceiling", "their power limits", where "my limit" is the name of who holds the speaker's own
// marks: whose it is says that another is meant.
import type { Grid } from './grid.js';
import type { Meaning, Name } from './lexicon.js';
import type { Parsed } from './parse.js';

/** More words than these between whose it is and the word for it, and it goes with another. */
const reach = 3;

export function anothersMark(g: Grid, p: Parsed, n: Name, m: Meaning): boolean {
  if (n.to - n.from > 1 || m.fields.length !== 1 || m.fields[0] !== 'setup' || !m.slots.every((s) => g.holders.has(s.value)) || !n.meanings.some((x) => x !== m && (x.role || x.fields.includes('phase')))) return false;
  for (let k = n.from - 1; k >= Math.max(0, n.from - reach); k--) {
    const t = p.tokens[k]!;
    if (t.kind === 'mark' || /^(?:my|our|your|i|we|the|a|an|and|or|of|in|on|at|is|was|are)$/.test(t.low)) return false;
    if (/^(?:its|their|his|her)$/.test(t.low)) return true;
    if (t.possessive) return p.names.some((o) => o.from <= k && k < o.to && o.meanings.some((x) => x.own && x.fields[0] === 'setup' && x.slots.every((s) => !g.holders.has(s.value))));
  }
  return false;
}
