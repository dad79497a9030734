// A unit that is another's: one that nothing in the record has, or not the one of what the words name.
import { type Unit, unit } from '../quantities/index.js';
import type { Mention } from '../script/index.js';
import { type Candidate, type Context, withMention } from './context.js';
import { type Decision, fit } from './decide.js';
import { givesJust } from './gives-just.js';
import { kindOf } from './grid.js';
import { significant } from './insist.js';
import type { Reading } from './read.js';
import { readValue } from './read-value.js';

/** The words name a quantity, the number is just its value, and the unit is another one's. */
export function slippedUnit(c: Context, index: number, d: Reading): Reading {
  const m = c.parsed.said[index]!.mention;
  if (!m.unit || m.unit.id === '%') return d;
  // "10.1 kilograms", "16 seconds": just the number of the reading taken, with another prefix.
  if (d.verdict === 'disagrees') {
    const x = d.chosen!;
    const bare: Mention = { ...m, loose: false };
    delete bare.unit;
    return x.fact.unit.dimension === m.unit.dimension && !x.fact.unit.factor.equals(m.unit.factor) && significant(m) > 1 && fit(bare, x) ? { ...d, chosen: { ...x, why: `the record gives it in ${x.fact.unit.many}` }, why: `the record gives it in ${x.fact.unit.many}` } : d;
  }
  if (m.unit.dimension === 'duration') return slippedTime(c, index, d);
  const other = foreign(c, index);
  return other.verdict === 'disagrees' && !rightInItsUnit(c, m, other.chosen!) ? { ...other, mention: m } : d;
}

/** "The meter hears the room: 30.2 decibels": that the room is at 30.2 degrees is chance, where the thing has such a figure in decibels. */
function rightInItsUnit(c: Context, m: Mention, x: Candidate): boolean {
  return c.grid.cells.some((cell) => cell.unit.dimension === m.unit!.dimension && c.grid.of.setup.every((i) => !x.subject || cell.at[i] === x.subject.at[i]) && givesJust(c.facts, cell, m, x));

}

/** "78 hours" where it is 78 minutes. */
function slippedTime(c: Context, index: number, d: Reading): Reading {
  const m = c.parsed.said[index]!.mention;
  if (m.composed || m.hedge || (m.decimals === 0 && m.value.toNumber() < 10)) return d;
  for (const id of ['ms', 's', 'min', 'h']) {
    if (id === m.unit!.id) continue;
    const other: Mention = { ...m, unit: unit(id) };
    const found = readValue(withMention(c, index, other), index).filter((x) => x.cost <= 0.5);
    const right = found.filter((x) => ((found.length === 1 && x.cost <= 0.05 && significant(m) > 1) || measureNamed(c, index, x) || (x.cost <= 0.3 && (m.decimals > 0 || significant(m) > 2)))).find((x) => fit(other, x));
    if (right) return { verdict: 'disagrees', chosen: right, why: `the record gives it in ${right.fact.unit.many}`, ranked: [{ candidate: right, fits: false }], mention: m };
  }
  return d;
}

export function known(c: Context, u: Unit): boolean {
  if (u.id === '%' || u.id === 'points' || u.id === 'x') return true;
  return c.grid.dimensions.has(kindOf(u)) || (u.dimension === 'temperature' && c.grid.dimensions.has('temperature-difference')) || (u.dimension === 'temperature-difference' && c.grid.dimensions.has('temperature'));
}

/** How far away it stood, what it cost, how long it took: said beside figures of anything. */
const apart: ReadonlySet<string> = new Set(['money', 'duration', 'length']);

/** A unit that nothing in the record has: no claim, unless the number is just what the words' own quantity gives. */
export function foreign(c: Context, index: number): Decision {
  const m = c.parsed.said[index]!.mention;
  const bare: Mention = { ...m, loose: false };
  delete bare.unit;
  const shadow = withMention(c, index, bare);
  const found = [...readValue(shadow, index)].filter((x) => x.cost <= 0.9 && (measureNamed(c, index, x) || (m.decimals > 0 && c.now.ages[c.grid.of.measure[0]!]! <= 3 && c.now.topics[c.grid.of.measure[0]!]![0] === x.subject?.at[c.grid.of.measure[0]!])));
  // The unit that the record has too, or another name of it, is no slip: the number is of another thing.
  const slipped = (u: Unit): boolean => u.dimension !== m.unit!.dimension || !u.factor.equals(m.unit!.factor);
  const right = found.filter((x) => slipped(x.fact.unit) && fit(bare, x) && !x.fact.value.equals(x.fact.value.round(-1)));
  if (right.length && !apart.has(m.unit!.dimension)) return { verdict: 'disagrees', chosen: right[0]!, why: `the record gives it in ${right[0]!.fact.unit.symbol}`, ranked: right.map((candidate) => ({ candidate, fits: false })) };
  return { verdict: 'not-a-claim', why: `nothing in the record is in ${m.unit!.many || m.unit!.id}`, ranked: [] };
}

function measureNamed(c: Context, index: number, x: Candidate): boolean {
  const at = x.subject?.at;
  if (!at) return false;
  const slots = [...c.grid.of.measure, ...c.grid.of.part];
  const dims = c.grid.measureUnits.get(at[c.grid.of.measure[0]!]!);
  // "And it sips nought point six of a volt": what stands before the first stretch leads to the first number.
  const here = (segment: number): boolean => segment === index || (index === 0 && segment < 0);
  return c.hits.hits.some((h) => here(h.segment) && slots.includes(h.slot) && at[h.slot] === h.value) || c.hits.dimensions.some((d) => here(d.segment) && d.dimension.some((y) => dims?.has(y)));
}
