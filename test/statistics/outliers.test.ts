import { expect, test } from 'vitest';
import { dixon, dixonLimit, grubbs, grubbsLimit, madToSd, medianDeviation, modifiedZ, tFactor } from '../../pipeline/statistics/index.js';
import { oracle } from '../oracles/table.js';
import { random } from './random.js';

// Rorabacher 1991, doi:10.1021/ac00002a010, as three public packages carry it.
test.each(oracle('dixon_q_critical_r10.csv'))('limits of Dixon for n $n', (row) => {
  for (const [column, level] of [['q90', 0.9], ['q95', 0.95], ['q99', 0.99]] as const) expect(dixonLimit(Number(row['n']), level)).toBe(Number(row[column]));
});

test('Dixon’s ratio is the gap over the range', () => {
  expect(dixon([10, 11, 12, 20])).toEqual({ q: 0.8, index: 3 });
  expect(dixon([20, 4, 18, 20])).toEqual({ q: 14 / 16, index: 1 });
  expect(dixon([5, 5, 5])).toBeUndefined();
  expect(dixon([1, 5])).toBeUndefined();
  expect([dixonLimit(2), dixonLimit(11)]).toEqual([undefined, undefined]);
});

// Textbook example; the factor and 0.6745 are Φ⁻¹(¾) (Iglewicz and Hoaglin 1993).
test('distances from the median', () => {
  expect(medianDeviation([1, 1, 2, 2, 4, 6, 9])).toEqual({ median: 2, mad: 1 });
  expect(1 / tFactor(0.5, Infinity)).toBeCloseTo(madToSd, 7);
  expect(modifiedZ([1, 1, 2, 2, 4, 6, 9])[6]).toBeCloseTo(0.674489750 * 7, 6);
  expect(modifiedZ([3, 3, 3, 9])).toEqual([0, 0, 0, 0]);
});

/** Iglewicz and Hoaglin 1993. */
const modifiedZLimit = 3.5;

/** Share of samples of n clean normal values in which a rule finds an outlier. */
function falseAlarms(n: number, rule: (values: number[]) => boolean): number {
  const { normal } = random(1000 + n);
  let flagged = 0;
  for (let i = 0; i < 4000; i++) if (rule(Array.from({ length: n }, normal))) flagged++;
  return flagged / 4000;
}

const byMedian = (values: number[]): boolean => modifiedZ(values).some((z) => Math.abs(z) > modifiedZLimit);

// The first two shares were found elsewhere with other draws: 28.5 % of three and 20.4 % of five (40,000 and 20,000 samples).
test('the rule of the median cries wolf among few values, the others keep to their five per cent', () => {
  expect(Math.abs(falseAlarms(3, byMedian) - 0.285)).toBeLessThan(0.025);
  expect(Math.abs(falseAlarms(5, byMedian) - 0.204)).toBeLessThan(0.025);
  expect(Math.abs(falseAlarms(20, byMedian) - 0.10)).toBeLessThan(0.02); // 10.3 % of 20,000 samples drawn with numpy
  expect(Math.abs(falseAlarms(50, byMedian) - 0.086)).toBeLessThan(0.02);
  expect(falseAlarms(20, (v) => modifiedZ(v).some((z) => Math.abs(z) > 5.2))).toBeLessThan(0.02); // 1.0 % of 40,000
  for (const n of [4, 6, 10]) {
    expect(Math.abs(falseAlarms(n, (v) => dixon(v)!.q > dixonLimit(n)!) - 0.05)).toBeLessThan(0.015);
    expect(Math.abs(falseAlarms(n, (v) => grubbs(v)!.g > grubbsLimit(n)) - 0.05)).toBeLessThan(0.015);
  }
});

test('two bad runs hide from Grubbs and not from the median', () => {
  const runs = [...Array.from({ length: 18 }, (_, i) => 60 + (i % 3) * 0.4), 75, 75.5];
  expect(grubbs(runs)!.g).toBeLessThan(grubbsLimit(runs.length, 0.01));
  expect(modifiedZ(runs).flatMap((z, i) => (Math.abs(z) > modifiedZLimit ? [i] : []))).toEqual([18, 19]);
});
