// The unit that a quantity was told in last, where it is not the record's own: bare numbers go on in it.
//   "The Larch runs at 2.90 gigahertz. The Rowan's at 2.92."      where the record has megahertz
//   "from 1,012 millivolts to 908"                                where it has volts
import { unit } from '../quantities/index.js';
import { type Context, withMention } from './context.js';
import { significant } from './insist.js';
import type { Reading } from './read.js';

/** The unit that a figure leaves for those behind it; undefined where it was told in the record's. */
export function leavesUnit(r: Reading): string | undefined {
  const { mention: m, chosen: x } = r;
  return x && m.unit && !m.loose && x.term.kind === 'mean' && m.unit.dimension === x.fact.unit.dimension && m.unit.id !== x.fact.unit.id ? m.unit.id : undefined;
}

/** A bare number read in that unit, where it fits nothing without one. */
export function inUnitSaid(c: Context, index: number, r: Reading, read: (c: Context) => Reading): Reading {
  const { mention: m, cue } = c.parsed.said[index]!;
  if (r.verdict === 'agrees' || !c.now.unit || m.unit || m.type !== 'cardinal' || cue.op === 'ratio' || cue.op === 'count' || significant(m) < 2) return r;
  const own = unit(c.now.unit);
  const again = read(withMention(c, index, { ...m, unit: own, sharedUnit: true }));
  const near = again.chosen?.subject?.unit.dimension === own.dimension;
  return near && (again.verdict === 'agrees' || (again.verdict === 'disagrees' && r.verdict === 'disagrees')) ? { ...again, mention: m } : r;
}
