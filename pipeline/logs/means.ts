// Per-run values from the samples of a window, exact in the decimals that the log has.
import { Exact, type Quantity, type Unit } from '../quantities/index.js';
import { energyMean } from '../statistics/index.js';
import type { Take } from './layout.js';

/** Below this a sample times its power of ten is a whole number without loss. */
const exactBelow = 2 ** 50;

/**
 * What one run gives: `take` over the finite values of rows [from, to) that `rows` selects.
 * A mean is kept to two decimals more than its samples have: a window of some hundred samples resolves no more, and the
 * published reading is then the very number that everything else is derived from. It is shown with fewer (`shownDecimals`).
 * Sound levels are averaged as energies. `step` is the sensor's own decimals, by `ownDecimals` of the whole column.
 */
export function takeOver(values: Float64Array, rows: readonly (readonly [from: number, to: number])[], decimals: number, unit: Unit, take: Take, step = decimals): { quantity: Quantity; samples: number } | undefined {
  const finite: number[] = [];
  for (const [from, to] of rows) for (let i = from; i < to; i++) if (!Number.isNaN(values[i]!)) finite.push(values[i]!);
  if (finite.length === 0) return undefined;
  const samples = finite.length;
  if (take !== 'mean') {
    const x = take === 'max' ? Exact.fromNumber(finite.reduce((a, b) => Math.max(a, b)))
      : take === 'min' ? Exact.fromNumber(finite.reduce((a, b) => Math.min(a, b)))
      : take === 'last' ? Exact.fromNumber(finite.at(-1)!)
      : Exact.fromNumber(finite.at(-1)!).minus(Exact.fromNumber(finite[0]!));
    return { quantity: { value: x, unit, decimals: step }, samples };
  }
  const mean = unit.dimension === 'sound-level' ? Exact.fromNumber(energyMean(finite)) : exactSum(finite, decimals).over(Exact.of(samples));
  const value = mean.round(decimals + 2);
  return { quantity: { value, unit, decimals: shownDecimals(value, step, samples) }, samples };
}

export function exactSum(values: readonly number[] | Float64Array, decimals: number): Exact {
  const scale = 10 ** decimals;
  let whole = 0n;
  let part = 0;
  let odd = Exact.zero;
  for (const v of values) {
    const scaled = v * scale;
    if (decimals > 15 || Math.abs(scaled) >= exactBelow) {
      odd = odd.plus(Exact.fromNumber(v));
      continue;
    }
    part += Math.round(scaled);
    if (Math.abs(part) >= exactBelow) {
      whole += BigInt(part);
      part = 0;
    }
  }
  return Exact.of(whole + BigInt(part), 10n ** BigInt(Math.min(decimals, 15))).plus(odd);
}

/** Samples from which on a mean of whole-step samples has a decimal to show. */
const manySamples = 10;

/**
 * A mean is shown no finer than its sensor steps: 72.4 °C of steps of 0.1, 0.903 V of steps of 0.001; of whole steps one
 * decimal where ten samples or more were averaged (66.8 °C). Never more than makes four digits: 613.3 W, 1598 MHz.
 * Common practice, no published source.
 */
export function shownDecimals(value: Exact, step: number, samples: number): number {
  const before = value.abs().toFixed(0).length;
  return Math.min(step === 0 && samples >= manySamples ? 1 : step, Math.max(0, 4 - before));
}

/** The decimals that the values need: a log that writes 61.000 and 62.000 has a sensor of whole steps. */
export function ownDecimals(values: ArrayLike<number>, written: number): number {
  let d = 0;
  for (let i = 0; i < values.length && d < written; i++) {
    const v = values[i]!;
    if (Number.isNaN(v)) continue;
    while (d < written && !isStep(v, d)) d++;
  }
  return d;
}

function isStep(v: number, decimals: number): boolean {
  const scaled = v * 10 ** decimals;
  return Math.abs(scaled - Math.round(scaled)) <= Math.abs(scaled) * 2 ** -50;
}
