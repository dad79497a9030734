// A value and its precision in another unit, and the second unit system that is shown beside the first.
import { Exact } from './exact.js';
import type { Quantity } from './quantity.js';
import { convert, differenceUnit, perUnit, type Unit, unit } from './units.js';

const ten = Exact.of(10);

/**
 * Decimals of a converted value, so that it keeps the precision of the original and claims no more than a step more:
 * its last place is the largest power of ten that is not coarser than the original's (NIST SP 811, B.7.2:
 * 36 ft is 11.0 m, not 11 m). Never negative: whole numbers stay whole.
 */
export function convertedDecimals(decimals: number, from: Unit, to: Unit): number {
  if (from.id === to.id) return decimals;
  const step = from.factor.over(to.factor).times(Exact.of(1, 10n ** BigInt(decimals)));
  let place = Exact.of(1);
  let places = 0;
  while (place.compare(step) > 0) {
    place = place.over(ten);
    places++;
  }
  return places;
}

/** The same quantity in another unit; undefined when it cannot be expressed in it. */
export function convertQuantity(q: Quantity, to: Unit): Quantity | undefined {
  const value = convert(q.value, q.unit, to);
  return value && { value, unit: to, decimals: convertedDecimals(q.decimals, q.unit, to) };
}

/**
 * The unit that stands beside `u` when the record asks for a second system (first unit's id → second unit's id):
 * a difference gets the second unit of differences, a compound that of each of its halves.
 */
export function secondUnit(u: Unit, seconds: ReadonlyMap<string, string>): Unit | undefined {
  if (u.parts) {
    const [top, bottom] = u.parts.map((p) => secondUnit(p, seconds));
    return top || bottom ? perUnit(top ?? u.parts[0], bottom ?? u.parts[1]) : undefined;
  }
  const pairs = [...seconds].map(([a, b]) => [unit(a), unit(b)] as const);
  const second = pairs.find(([a]) => a.id === u.id)?.[1]
    ?? pairs.find(([a, b]) => a.dimension !== 'money' && a.dimension === u.dimension && b.dimension === u.dimension)?.[1]
    ?? pairs.map(([a, b]) => [differenceUnit(a), differenceUnit(b)] as const).find(([a, b]) => a.dimension === u.dimension && a.dimension === b.dimension && a.dimension !== 'points')?.[1];
  return second && second.id !== u.id ? second : undefined;
}
