// Per-run values from the samples of a window, exact in the decimals that the log has.
import { Exact, type Quantity, type Unit } from '../quantities/index.js';
import type { Span } from './bucket-figures.js';
import type { Take } from './layout.js';

/** Below this a sample times its power of ten is a whole number without loss. */
const exactBelow = 2 ** 50;

/**
 * What one run gives of the samples of its window; undefined where there are none, or levels so large that no number holds their energy.
 * A mean is kept to two decimals more than its samples have: a window of some hundred samples resolves no more, and the
 * published reading is then the very number that everything else is derived from. It is shown with fewer (`shownDecimals`).
 * Sound levels are averaged as energies. `step` is the sensor's own decimals.
 */
export function takeOver(span: Span, decimals: number, unit: Unit, take: Take, step = decimals): { quantity: Quantity; samples: number } | undefined {
  const samples = span.count;
  if (samples === 0) return undefined;
  if (take !== 'mean') {
    const x = take === 'increase' ? Exact.fromNumber(span.last).minus(Exact.fromNumber(span.first)) : Exact.fromNumber(span[take]);
    return { quantity: { value: x, unit, decimals: step }, samples };
  }
  const level = 10 * Math.log10(span.energy / samples);
  if (unit.dimension === 'sound-level' && !Number.isFinite(level)) return undefined;
  const mean = unit.dimension === 'sound-level' ? Exact.fromNumber(level) : span.sum.over(Exact.of(samples));
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
