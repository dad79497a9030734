// A temperature as it would have been in another room.
import { convert } from '../../quantities/index.js';
import type { Fact } from '../fact.js';
import type { Underivable } from '../facts.js';
import { num } from './arithmetic.js';
import type { Result } from './operation.js';

/** A degree of room is a degree of result: common practice to first order, no published source. */
export function atRoom([a, room, reference]: Fact[]): Result | Underivable {
  if ([a, room, reference].some((f) => f!.unit.dimension !== 'temperature')) return { why: 'only a temperature is corrected for the room, by the temperature of the room' };
  const [was, is] = [room!, reference!].map((f) => convert(f.value, f.unit, a!.unit)!);
  return { value: a!.value.minus(was!).plus(is!), unit: a!.unit, get formula() { return `${num(a!)} − (${num(room!, a!)} − ${num(reference!, a!)}), one degree for each degree of room`; } };
}
