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

/** "draws 141 of its 150 watt limit while the Garth gets 176": the limit goes with the number before it, and another thing has been named since. */
export function markOfAnother(g: Grid, p: Parsed, h: { from: number; value: string; segment: number }, index: number): boolean {
  const own = p.said[index]!;
  const before = p.said[h.segment];
  return before !== undefined && h.from >= before.mention.to && /^(?:limit|target|rated)$/.test(g.roles.get(h.value) ?? '') && p.names.some((n) => n.from >= own.segment.from && n.to <= own.mention.from && n.meanings.some((x) => x.own && x.fields[0] === 'setup'));
}
