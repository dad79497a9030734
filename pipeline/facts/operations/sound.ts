// Sound levels added, freed of their background, and moved to another distance: all in the energies behind the decibels.
import { convert, Exact, show, showNumber, unit } from '../../quantities/index.js';
import { atDistance as moved, levelSum as summed, backgroundCorrection, fullyCorrectedAbove, leastCorrectable } from '../../statistics/index.js';
import type { Fact } from '../fact.js';
import type { Underivable } from '../facts.js';
import { inOneUnit, num } from './arithmetic.js';
import type { Result } from './operation.js';

/** Their values are computed in binary numbers and kept to six decimals. */
export const soundKinds: ReadonlySet<string> = new Set(['level_sum', 'without_background', 'at_distance']);

/** Sources that have nothing to do with each other, such as fans: 10·lg of the sum of 10^(L/10). */
export function levelSum(inputs: Fact[]): Result | Underivable {
  const all = levels(inputs);
  if ('why' in all) return all;
  return { value: kept(summed(all.values.map((v) => v.toNumber()))), unit: inputs[0]!.unit, get formula() { return `energy sum of ${inputs.map((f) => num(f, inputs[0]!)).join(', ')}`; } };
}

/**
 * Less what the background adds: K1 of ISO 3744. More than 15 dB above the background nothing is taken off; less than 6 dB
 * above it the level is no more than an upper bound, and there is no fact.
 */
export function withoutBackground(inputs: Fact[]): Result | Underivable {
  const all = levels(inputs);
  if ('why' in all) return all;
  const [level, background] = all.values as [Exact, Exact];
  const [a, b] = inputs as [Fact, Fact];
  const above = level.minus(background).toNumber();
  if (above < leastCorrectable) {
    const most = showNumber(kept(level.toNumber() - backgroundCorrection(leastCorrectable)), a.decimals);
    return { why: `${show(a.value, a.unit, a.decimals)} stands only ${showNumber(level.minus(background), a.decimals)} dB above its background; below ${leastCorrectable} dB it cannot be corrected (ISO 3744) and is at most ${most} ${a.unit.symbol}` };
  }
  const correction = above > fullyCorrectedAbove ? 0 : backgroundCorrection(above);
  return { value: kept(level.toNumber() - correction), unit: a.unit, get formula() { return `${num(a)} − ${showNumber(kept(correction), 2)} for a background of ${num(b, a)}`; } };
}

/** A small source in a free field (no walls, no table): L + 20·lg(r ÷ r′). In a room it falls by less. */
export function atDistance(inputs: Fact[]): Result | Underivable {
  const [a, from, to] = inputs as [Fact, Fact, Fact];
  if (a.unit.dimension !== 'sound-level') return { why: 'the first must be a sound level' };
  if (from.unit.dimension !== 'length' || to.unit.dimension !== 'length') return { why: 'the second and the third must be distances (=0.5 m, =1 m)' };
  const [r1, r2] = [from, to].map((f) => convert(f.value, f.unit, unit('m'))!.toNumber()) as [number, number];
  if (!(r1 > 0 && r2 > 0)) return { why: 'a distance must be above zero' };
  return { value: kept(moved(a.value.toNumber(), r1, r2)), unit: a.unit, get formula() { return `${num(a)} + 20·lg(${show(from.value, from.unit, from.decimals)} ÷ ${show(to.value, to.unit, to.decimals)}), a small source in a free field`; } };
}

function levels(inputs: readonly Fact[]): { values: Exact[] } | Underivable {
  return inputs.every((f) => f.unit.dimension === 'sound-level') ? inOneUnit(inputs) : { why: 'sound levels are meant' };
}

function kept(x: number): Exact {
  return Exact.fromNumber(x).round(6);
}
