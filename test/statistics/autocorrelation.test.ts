import { describe, expect, test } from 'vitest';
import { correlationTime, firstOrderTime, inBlocks, lagOne, mean, seriesMean, standardDeviation, tFactor } from '../../pipeline/statistics/index.js';
import { oracleJson } from '../oracles/table.js';
import { random } from './random.js';

/** Each value remembers a share r of the one before; standard deviation 1. */
function remembering(n: number, r: number, seed: number): number[] {
  const { normal } = random(seed);
  let x = normal();
  return Array.from({ length: n }, () => {
    const now = x;
    x = r * x + Math.sqrt(1 - r * r) * normal();
    return now;
  });
}

// NIST StRD, univariate: certified lag-1 autocorrelations. Binary inputs lose digits in NumAcc3 and NumAcc4, as with the standard deviation.
const nist = oracleJson<{ sets: Record<string, { lag1: string; data?: number[]; data_rule?: { first: string; then_repeat_500_times: string[] } }> }>('nist_strd_univariate.json').sets;
test.each(Object.entries(nist).filter(([name]) => name !== 'PiDigits'))('the certified correlation of neighbours in %s', (name, { lag1, data, data_rule: rule }) => {
  const values = data ?? [Number(rule!.first), ...Array.from({ length: 500 }, () => rule!.then_repeat_500_times.map(Number)).flat()];
  expect(Math.abs(lagOne(values) / Number(lag1) - 1)).toBeLessThan(/^NumAcc[34]$/.test(name) ? 1e-8 : 1e-12);
});

// n(1−r)/(1+r): the NCL manual on equiv_sample_size; the numbers follow from the formula, r of Michelso is NIST's.
test.each([[100, 0.5, 33.3333], [100, 0.9, 5.26316], [100, 0.535199668621283, 30.27621]])('%i samples of a first-order process with r %f', (n, r, effective) => {
  expect(n / firstOrderTime(r)).toBeCloseTo(effective, 4);
});

describe('the mean of a window', () => {
  test.each([[0, 1], [0.5, 3], [0.8, 9], [0.95, 39]])('of a long series with r %f one independent sample is worth %f', (r, time) => {
    const found = Array.from({ length: 10 }, (_, k) => seriesMean(remembering(20_000, r, 30 + k))!);
    expect(Math.abs(20_000 / mean(found.map((f) => f.effective)) / time - 1)).toBeLessThan(0.1);
    expect(Math.abs(mean(found.map((f) => f.standardError)) / Math.sqrt(time / 20_000) - 1)).toBeLessThan(0.05);
  });

  test('what is known of it does not depend on the number of blocks it is averaged down to', () => {
    const samples = remembering(30_000, 0.9, 4);
    const m = mean(samples);
    const time = correlationTime(samples.map((v) => v - m));
    const direct = standardDeviation(samples)! * Math.sqrt(time / samples.length);
    expect(Math.abs(seriesMean(samples)!.standardError / direct - 1)).toBeLessThan(0.06);
    expect(mean(inBlocks(samples, 1000))).toBeCloseTo(mean(samples), 12);
    expect(inBlocks(samples, 1000)).toHaveLength(1000);
    expect(inBlocks([1, 2, 3], 5)).toEqual([1, 2, 3]);
    expect(inBlocks([1, 2, 3, 4, 5, 6, 7], 3)).toEqual([2, 5.5]);
  });

  test('what leaps to and fro counts no better than independent samples', () => {
    expect(seriesMean(Array.from({ length: 100 }, (_, i) => (i % 2 ? 1 : -1)))!.effective).toBe(100);
  });

  test('one that drifts all the way has few', () => {
    expect(seriesMean(Array.from({ length: 400 }, (_, i) => i / 400))!.effective).toBeLessThan(4);
  });

  test('too few, or all equal', () => {
    expect(seriesMean([])).toBeUndefined();
    expect(seriesMean([5])).toBeUndefined();
    expect(seriesMean([67, 67, 67, 67])).toEqual({ mean: 67, standardError: 0, effective: 4 });
    expect(seriesMean([1, 2, 3])!.standardError).toBeCloseTo(Math.sqrt(1 / 3), 14);
    expect(seriesMean([1, 2, 3])!.effective).toBeCloseTo(3, 12);
  });

  // Windows of a minute at four samples a second, and shorter ones: the stated interval must hold the truth.
  test.each([[240, 0], [240, 0.5], [240, 0.8], [240, 0.9], [120, 0.8], [60, 0.5], [60, 0.8]])('intervals of %i samples with r %f hold the truth in 93 to 97 of a hundred', (n, r) => {
    let held = 0;
    for (let k = 0; k < 1000; k++) {
      const s = seriesMean(remembering(n, r, 1000 + k))!;
      if (Math.abs(s.mean) <= tFactor(0.95, Math.max(1, s.effective - 1)) * s.standardError) held++;
    }
    expect(held).toBeGreaterThanOrEqual(930);
    expect(held).toBeLessThanOrEqual(975);
  });
});
