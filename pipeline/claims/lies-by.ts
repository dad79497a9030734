// A limit, a target or a rating that stands after a plain figure only to say where it lies: the figure was measured.
import { passingVerbs } from './change-words.js';
import { failingVerbs, keepingVerbs } from './condition-words.js';
import type { Hit } from './evidence.js';
import type { Grid } from './grid.js';
import type { Parsed } from './parse.js';
import { pointedAt } from './spoken-mark.js';

/** "88.1 degrees, all but at its ceiling", "36.6, over the line": the limit is what a measured figure lies by. */
export function liesBy(p: Parsed, r: { from: number }, index: number): boolean {
  const { mention, cue } = p.said[index]!;
  if (gonePast(p, r, index) || pointedAt(p, index, r.from)) return true;
  const led = p.low.slice(mention.to, r.from + 1).filter((w, k, all) => k < all.length - 1 || /^(?:its|the|my|our|their)$/.test(w)).join(' ');
  return cue.op === 'value' && r.from > mention.to && /\b(?:at|near|under|below|above|over|past|beyond|against|touching|reaching) (?:its|the|my|our|their)$/.test(led);
}

const passing = /\b(?:over|above|past|beyond|under|below|within|inside)(?: (?:its|the|my|our|their|this|that))?(?: \p{L}+){0,2}$/u;

/** "breaks my noise limit in both rooms: 41 decibels in the one", "keeps under the line, 36.6": a colon or a comma leads from what is done to the mark to what was measured. */
export function gonePast(p: Parsed, r: { from: number }, index: number): boolean {
  const { mention, cue, segment } = p.said[index]!;
  const at = p.low.slice(0, mention.from).findLastIndex((w) => !/^(?:at|with|just|about|around|only|nearly|almost|by|it's|that's|making)$/.test(w));
  if ((cue.op !== 'value' && cue.op !== 'range') || r.from >= mention.from || r.from >= at || !/^[:,—–]$/.test(p.low[at]!)) return false;
  const before = p.low.slice(Math.max(segment.from, r.from - 6), r.from);
  return before.some((w) => keepingVerbs.has(w) || failingVerbs.has(w) || passingVerbs.test(w) || /^(?:exceed(?:s|ed)?|cross(?:es|ed)?|tops?|topped|bust(?:s|ed)?)$/.test(w)) || passing.test(before.join(' '));
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
