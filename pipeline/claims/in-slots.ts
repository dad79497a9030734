// The names of a sentence by slot, laid out once for all its mentions.
import type { Hit } from './evidence.js';
import type { Grid } from './grid.js';

const known = new WeakMap<readonly Hit[], readonly (readonly Hit[])[]>();

/** By slot, in the order of the sentence. */
export function inSlots(g: Grid, hits: readonly Hit[]): readonly (readonly Hit[])[] {
  let out = known.get(hits);
  if (!out) {
    const slots: Hit[][] = g.slots.map(() => []);
    for (const h of hits) slots[h.slot]!.push(h);
    known.set(hits, (out = slots));
  }
  return out;
}
