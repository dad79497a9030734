// Energy, and what it buys.
import { convert, convertedDecimals, perUnit, show, unit } from '../../quantities/index.js';
import type { Fact } from '../fact.js';
import type { Underivable } from '../facts.js';
import { closer } from './arithmetic.js';
import type { Result } from './operation.js';

const units = { 'watt-hours': 'Wh', joules: 'J', kilojoules: 'kJ' } as const;
export const energyVariants = Object.keys(units);

/** A power times how long it was drawn, or an energy told in another unit. */
export function energy([a, b]: Fact[], variant: string): Result | Underivable {
  const u = unit(units[variant as keyof typeof units]);
  const asked = a!.unit.dimension;
  if (!b) {
    const value = asked === 'energy' ? convert(a!.value, a!.unit, u) : undefined;
    return value ? { value, unit: u, get formula() { return show(a!.value, a!.unit, a!.decimals); } } : { why: 'one value alone must be an energy; a power needs the time for which it was drawn' };
  }
  if (asked !== 'power' || b.unit.dimension !== 'duration') return { why: 'energy comes of a power and the time for which it was drawn' };
  const joules = convert(a!.value, a!.unit, unit('W'))!.times(convert(b.value, b.unit, unit('s'))!);
  return { value: convert(joules, unit('J'), u)!, unit: u, get formula() { return `${show(a!.value, a!.unit, closer(a!))} × ${show(b.value, b.unit, closer(b))}`; } };
}

const per = { '': undefined, joule: 'J', 'kilojoule': 'kJ' } as const;
export const perEnergyVariants = Object.keys(per);

/** Work for each unit of energy: frames per joule, a score per watt-hour. A rate for each watt is the same as what it counts for each joule. */
export function perEnergy([a, b]: Fact[], variant: string): Result | Underivable {
  if (b!.unit.dimension !== 'energy') return { why: 'the second must be an energy' };
  if (['temperature', 'sound-level'].includes(a!.unit.dimension)) return { why: `a ${a!.unit.dimension.replace('-', ' ')} for each joule means nothing: work is meant, such as a number of frames` };
  if (['frame-rate', 'data-rate', 'throughput', 'operations', 'power'].includes(a!.unit.dimension)) return { why: `${a!.unit.id} is a rate already: for each watt it says what is done for each joule` };
  if (a!.unit.parts) return { why: `${a!.unit.id} cannot be divided once more` };
  const id = per[variant as keyof typeof per];
  const u = id ? unit(id) : b!.unit;
  const amount = convert(b!.value, b!.unit, u)!;
  if (amount.sign() === 0) return { why: 'division by zero' };
  return { value: a!.value.over(amount), unit: perUnit(a!.unit, u), get formula() { return `${show(a!.value, a!.unit, closer(a!))} ÷ ${show(amount, u, amount.equals(b!.value) ? closer(b!) : Math.max(0, convertedDecimals(b!.decimals, b!.unit, u)))}`; } };
}

