// "It comes to 63 degrees under the Larch", "41 decibels over the grille": what looks like a comparison is a plain figure, and
// the thing named behind it is what it was read with. A number as large as readings are, and larger than any two of them lie
// apart, is no difference.
import { convert } from '../quantities/index.js';
import { isFact } from '../facts/index.js';
import { type Context, unitsOf, withCue } from './context.js';
import type { Grid } from './grid.js';
import { measuresIn } from './measured.js';
import type { Facts } from '../facts/index.js';

const standing = /^(?:under|beneath|below|over|above|behind|inside|off|from|past|beyond)$/;

/** The sentence with such a figure read as a plain one; as it was where the words compare. */
export function takenWith(c: Context, index: number): Context {
  const { cue, mention } = c.parsed.said[index]!;
  if (cue.op !== 'change' || !cue.base || !standing.test(cue.because) || !mention.unit || mention.unit.id === '%' || mention.type !== 'cardinal' || c.parsed.low[mention.to] !== cue.because) return c;
  const named = c.hits.hits.filter((h) => h.baseOf === index);
  if (!named.some((h) => ['setup', 'setting'].includes(c.grid.slots[h.slot]!.field) && !c.grid.holders.has(h.value))) return c;
  const measures = measuresIn(c.grid, unitsOf(c.parsed.said[index]!, true) ?? []).list.filter((m) => new Set(c.grid.byMeasure.get(m)!.map((x) => x.unit.id)).size === 1);
  const own = measures[0] === undefined ? undefined : c.grid.byMeasure.get(measures[0])![0]!.unit;
  // "998 millivolts under the peat", where the record has volts.
  const value = (own && !own.dimension.startsWith('temperature') ? convert(mention.value, mention.unit, own) ?? mention.value : mention.value).toNumber();
  const of = measures.filter((m) => c.grid.byMeasure.get(m)!.every((x) => x.unit.id === own!.id)).map((m) => extent(c.facts, c.grid, m));
  if (!of.length || !of.every((e) => value > e.high - e.low) || !of.some((e) => value >= e.low / 1.2 && value <= e.high * 1.2)) return c;
  const plain = <T extends { baseOf: number }>(h: T): T => (h.baseOf === index ? { ...h, baseOf: -1 } : h);
  const { base: _base, way: _way, ...rest } = cue;
  return { ...withCue(c, index, { ...rest, op: 'value', because: '' }), hits: { ...c.hits, hits: c.hits.hits.map(plain), bySlot: c.hits.bySlot.map((list) => list.map(plain)), roles: c.hits.roles.map(plain) } };
}

interface Extent { low: number; high: number }
const extents = new WeakMap<Facts, Map<string, Extent>>();

/** Smallest and largest of what was measured of it, whatever is set for it or read at rest aside. */
function extent(facts: Facts, g: Grid, measure: string): Extent {
  let known = extents.get(facts);
  if (!known) extents.set(facts, (known = new Map()));
  let e = known.get(measure);
  if (!e) {
    const values = (g.byMeasure.get(measure) ?? []).filter((x) => !x.fixed && x.role !== 'idle').flatMap((x) => { const f = facts.value(x.key); return isFact(f) ? [f.value.toNumber()] : []; });
    known.set(measure, (e = { low: Math.min(...values), high: Math.max(...values) }));
  }
  return e;
}
