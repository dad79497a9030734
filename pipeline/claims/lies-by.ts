// A limit, a target or a rating that stands after a plain figure only to say where it lies: the figure was measured.
import type { Hit } from './evidence.js';
import type { Grid } from './grid.js';
import type { Parsed } from './parse.js';

/** "88.1 degrees, all but at its ceiling", "36.6, over the line": the limit is what a measured figure lies by. */
export function liesBy(p: Parsed, r: { from: number }, index: number): boolean {
  const { mention, cue } = p.said[index]!;
  const led = p.low.slice(mention.to, r.from + 1).filter((w, k, all) => k < all.length - 1 || /^(?:its|the|my|our|their)$/.test(w)).join(' ');
  return cue.op === 'value' && r.from > mention.to && /\b(?:at|near|under|below|above|over|past|beyond|against|touching|reaching) (?:its|the|my|our|their)$/.test(led);
}

/** A name of what was set, which the figure lies by. */
export function setBeside(g: Grid, p: Parsed, h: Hit, index: number): boolean {
  const field = g.slots[h.slot]!.field;
  if (field !== 'phase' && field !== 'setup') return false;
  return (field === 'setup' ? g.holders.has(h.value) : /^(?:limit|target|rated)$/.test(g.roles.get(h.value) ?? '')) && liesBy(p, h, index);
}
