import { describe, expect, test } from 'vitest';
import { type Approach, type Estimate, fitApproach } from '../../pipeline/statistics/index.js';
import { random } from './random.js';

const every = (n: number, step = 1) => Array.from({ length: n }, (_, i) => i * step);

describe('a fit of 40 values, against scipy 1.17', () => {
  // 70 − 30·e^(−t/12) + cos(3t)/5, rounded to hundredths: rests that leap to and fro and so count as independent. Values and standard
  // errors by scipy.optimize.curve_fit (Levenberg–Marquardt), intervals by brentq on the sum of squares with the others fitted anew.
  const y = [40.2, 42.2, 44.8, 46.45, 48.67, 50.07, 51.94, 53.15, 54.68, 55.77, 56.99, 58.0, 58.94, 59.9, 60.58, 61.51, 61.96, 62.87, 63.14, 64.02, 64.14, 64.98, 65.0, 65.79, 65.75, 66.45, 66.39, 66.99, 66.95, 67.44, 67.45, 67.8, 67.88, 68.09, 68.26, 68.33, 68.58, 68.53, 68.86, 68.69];
  const fit = fitApproach(every(40), y)!;
  test.each<[keyof Approach, Estimate]>([
    ['final', { value: 70.0052327, standardError: 0.071952, low: 69.861074, high: 70.152448 }],
    ['amplitude', { value: -29.9696779, standardError: 0.0838324, low: NaN, high: NaN }],
    ['timeConstant', { value: 12.022334, standardError: 0.0978487, low: 11.826892, high: 12.22305 }],
    ['gap', { value: -1.1690877, standardError: 0.0313007, low: -1.234044, high: -1.107288 }],
  ])('%s', (name, expected) => {
    const found = fit[name] as Estimate;
    expect(Math.abs(found.value - expected.value)).toBeLessThan(2e-6);
    expect(Math.abs(found.standardError / expected.standardError - 1)).toBeLessThan(1e-4);
    if (Number.isNaN(expected.low)) return;
    expect(Math.abs(found.low - expected.low)).toBeLessThan(0.02 * expected.standardError);
    expect(Math.abs(found.high - expected.high)).toBeLessThan(0.02 * expected.standardError);
  });
  test('rests', () => {
    expect(fit.rest).toBeCloseTo(0.1415272, 6);
    expect(fit.effective).toBe(40);
  });
});

test('without noise the truth comes out, however it is scaled', () => {
  for (const [final, amplitude, tau, step, offset] of [[70, -40, 600, 10, 0], [25, 12, 0.3, 0.01, 5], [-5, -0.02, 1e5, 1000, 1e6]] as const) {
    const t = every(150, step).map((x) => x + offset);
    const fit = fitApproach(t, t.map((x) => final + amplitude * Math.exp(-(x - offset) / tau)))!;
    expect(fit.timeConstant.value / tau).toBeCloseTo(1, 5);
    expect((fit.final.value - final) / amplitude).toBeCloseTo(0, 5);
    expect(fit.amplitude.value / amplitude).toBeCloseTo(1, 5);
    expect(fit.gap.value / (amplitude * Math.exp((-149 * step) / tau))).toBeCloseTo(1, 4);
  }
});

test('where no exponential can be told', () => {
  const { normal } = random(2);
  expect(fitApproach(every(7), [1, 2, 3, 3.5, 3.8, 3.9, 4])).toBeUndefined();
  expect(fitApproach(every(100), every(100).map(() => 60))).toBeUndefined();
  expect(fitApproach(every(100), every(100).map((x) => 20 + x / 10))).toBeUndefined();
  expect(fitApproach(every(200), every(200).map(normal))).toBeUndefined();
  expect(fitApproach([], [])).toBeUndefined();
});

test('a course that is hardly bent heads for anything: the interval is open on that side', () => {
  const { normal } = random(8);
  const t = every(60);
  const fit = fitApproach(t, t.map((x) => 70 - 40 * Math.exp(-x / 100) + 3 * normal()))!;
  expect(fit.timeConstant.high).toBe(Infinity);
  expect(fit.final.high).toBe(Infinity);
  expect(Number.isFinite(fit.final.low)).toBe(true);
  expect(fit.gap.low).toBe(-Infinity);
  expect(Number.isFinite(fit.gap.high)).toBe(true);
});

test('gaps, and more samples than are looked at one by one', () => {
  const { uniform, normal } = random(6);
  const t = every(6000, 0.1);
  const fit = fitApproach(t, t.map((x) => (uniform() < 0.3 ? NaN : 70 - 30 * Math.exp(-x / 90) + 0.3 * normal())))!;
  expect(Math.abs(fit.timeConstant.value - 90)).toBeLessThan(1.5);
  expect(fit.timeConstant.high - fit.timeConstant.low).toBeLessThan(3);
});
