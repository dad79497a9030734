// Comparisons that are nowhere near a number, told by binary numbers: where thousands are tried, few are worth working out exactly.
import { type Facts, isFact } from '../facts/index.js';
import type { Mention } from '../script/index.js';
import type { Unit } from '../quantities/index.js';
import type { Cell } from './grid.js';
import { stepOf } from '../wording/index.js';

const sizes = new WeakMap<Facts, Map<Cell, number>>();

/** The value of a reading in its own unit; NaN where it has none. */
function sizeOf(facts: Facts, cell: Cell): number {
  let known = sizes.get(facts);
  if (!known) sizes.set(facts, (known = new Map()));
  let size = known.get(cell);
  if (size === undefined) {
    const f = facts.value(cell.key);
    known.set(cell, (size = isFact(f) ? f.value.toNumber() : NaN));
  }
  return size;
}

/** A ratio said plainly may be off by this share of it, and more than any number is by its rounding. */
const share = 0.05;

/**
 * A test that is true only of pairs of cells whose comparison the number cannot be: further off than a whole step of its last place
 * and than any ratio may be. `in` is the unit that the comparison is given in, `of` that of its two sides; undefined where a hedge or
 * another unit leaves more room.
 */
export function nowhereNear(facts: Facts, m: Mention, kind: string, units: { in: Unit; of: Unit }): ((a: Cell, b: Cell) => boolean) | undefined {
  if (m.hedge || (m.unit && !m.loose && m.unit !== units.in)) return undefined;
  const said = Math.abs(m.value.toNumber());
  const room = stepOf(m).toNumber() + share * said;
  const compare = comparisons[kind];
  if (!compare) return undefined;
  return (a, b) => {
    if (a.unit !== units.of || b.unit !== units.of) return false;
    const size = Math.abs(compare(sizeOf(facts, a), sizeOf(facts, b)));
    return size < said - room || size > said + room;
  };
}

const difference = (a: number, b: number): number => a - b;
const comparisons: Record<string, ((a: number, b: number) => number) | undefined> = {
  difference, rise: difference, ratio: (a, b) => a / b, percent_of: (a, b) => (a / b) * 100, percent_change: (a, b) => (a / b - 1) * 100,
};
