import { describe, expect, test } from 'vitest';
import { dixonQ, fitLine, grubbs, grubbsLimit, meanInterval, medianDeviation, modifiedZ, tFactor, twoSidedP, welch } from '../../pipeline/statistics/index.js';
import { oracle } from '../oracles/table.js';

const close = (a: number, b: number, relative: number): void => expect(Math.abs(a - b)).toBeLessThanOrEqual(Math.abs(b) * relative);

// Coverage factors: JCGM 100:2008 Table G.2 and NIST TN 1297 Table B.1 (recalled, recomputed).
test.each(oracle('t_factors.csv'))('t for $dof degrees of freedom', (row) => {
  for (const [column, level] of [['t95', 0.95], ['t95.45', 0.9545], ['t99', 0.99]] as const) {
    const decimals = row[column]!.split('.')[1]!.length;
    expect(Math.abs(tFactor(level, Number(row['dof'])) - Number(row[column]))).toBeLessThanOrEqual(0.501 * 10 ** -decimals + (column === 't95.45' ? 0.006 : 0));
  }
});

test('t has closed forms for one and two degrees of freedom, and becomes the normal one', () => {
  for (const level of [0.5, 0.9, 0.95, 0.99, 0.999]) {
    close(tFactor(level, 1), Math.tan((Math.PI * level) / 2), 1e-10);
    close(tFactor(level, 2), level * Math.sqrt(2 / (1 - level ** 2)), 1e-10);
  }
  close(tFactor(0.95, 1e7), 1.959964, 1e-6);
  expect(() => tFactor(0.95, 0)).toThrow(RangeError);
  for (const [t, dof] of [[1.5, 3], [0.2, 7.03], [12, 1.5]] as const) close(tFactor(1 - twoSidedP(t, dof), dof), t, 1e-9);
});

test('of three runs the mean is known to 2.48 standard deviations either side (4.303/√3)', () => {
  const i = meanInterval([61, 62, 63])!;
  expect((i.high - i.low) / 2).toBeCloseTo(2.484, 3);
  expect(meanInterval([61])).toBeUndefined();
});

// Worked examples of Welch's test that R and scipy give, as four public test suites carry them.
describe('Welch', () => {
  test('fifteen a side', () => {
    const a = [27.5, 21.0, 19.0, 23.6, 17.0, 17.9, 16.9, 20.1, 21.9, 22.6, 23.1, 19.6, 19.0, 21.7, 21.4];
    const b = [27.1, 22.0, 20.8, 23.4, 23.4, 23.5, 25.8, 22.0, 24.8, 20.2, 21.9, 22.1, 22.9, 20.5, 24.4];
    const w = welch(a, b)!;
    close(w.t, -2.455356398286, 1e-10);
    close(w.dof, 24.988529290231, 1e-10);
    close(w.p, 0.021378001462867, 1e-9);
    expect(w.interval.low).toBeCloseTo(-3.984096, 6);
    expect(w.interval.high).toBeCloseTo(-0.349237, 6);
  });
  test.each([
    [[30.02, 29.99, 30.11, 29.97, 30.01, 29.99], [29.89, 29.93, 29.72, 29.98, 30.02, 29.98], 1.959005808, 7.03055996, 0.090773324285671],
    [[3, 4, 1, 2.1], [490.2, 340, 433.9], -9.559497722, 2.000852349, 0.0107515611498],
  ])('small and unequal', (a, b, t, dof, p) => {
    const w = welch(a, b)!;
    close(w.t, t, 1e-8);
    close(w.dof, dof, 1e-8);
    close(w.p, p, 1e-8);
  });
  test('too few, or no scatter at all', () => {
    expect(welch([1], [1, 2])).toBeUndefined();
    expect(welch([1, 1], [2, 2])).toBeUndefined();
  });
});

describe('outliers', () => {
  // NIST/SEMATECH e-Handbook 1.3.5.17, data of Tietjen and Moore.
  const mass = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];
  test('the e-Handbook example of Grubbs', () => {
    const { g, index } = grubbs(mass)!;
    expect(g).toBeCloseTo(2.4687646, 6);
    expect(index).toBe(7);
    expect(grubbsLimit(8)).toBeCloseTo(2.1266, 4);
    expect(grubbsLimit(8, 0.1)).toBeCloseTo(2.0317, 4); // the handbook's one-sided 5 %
  });
  test.each(oracle('grubbs_critical.csv'))('limits of Grubbs for n $n', (row) => {
    const n = Number(row['n']);
    for (const [column, alpha] of [['one_sided_0.05', 0.1], ['two_sided_0.05', 0.05], ['one_sided_0.01', 0.02], ['two_sided_0.01', 0.01]] as const) expect(grubbsLimit(n, alpha)).toBeCloseTo(Number(row[column]), 3.9);
  });
  test('three values cannot tell, and equal ones have none', () => {
    expect(grubbs([1, 1, 9])!.g).toBeLessThan(1.1548);
    expect(grubbs([1, 9])).toBeUndefined();
    expect(grubbs([4, 4, 4, 4])).toBeUndefined();
  });
  // Rorabacher, Analytical Chemistry 63 (1991) 139.
  test.each(oracle('dixon_q_critical_r10.csv'))('limit of Q for n $n', (row) => {
    const values = Array.from({ length: Number(row['n']) }, (_, i) => i);
    expect(dixonQ(values)!.limit).toBe(Number(row['q95']));
  });
  test('the gap over the range, at either end', () => {
    expect(dixonQ([64, 56, 56])).toMatchObject({ index: 0, statistic: 1, outlier: true });
    expect(dixonQ([10, 1, 11, 12])).toMatchObject({ index: 1, statistic: 9 / 11, outlier: false });
    expect(dixonQ([5, 5, 5])).toBeUndefined();
    expect(dixonQ([1, 2])).toBeUndefined();
    expect(dixonQ(Array.from({ length: 11 }, (_, i) => i))).toBeUndefined();
  });
  // Textbook example of the median deviation; 3.5: Iglewicz & Hoaglin 1993.
  test('median deviation and modified z', () => {
    expect(medianDeviation([1, 1, 2, 2, 4, 6, 9])).toBe(1);
    expect(modifiedZ([1, 1, 2, 2, 4, 6, 9])).toBeUndefined();
    const z = modifiedZ([10, 11, 9, 10, 12, 10, 11, 9, 10, 30])!;
    expect(z.filter((x) => Math.abs(x) > 3.5)).toHaveLength(1);
    expect(z[9]).toBeCloseTo(0.6745 * 20, 9);
    expect(modifiedZ(Array.from({ length: 12 }, () => 3))).toBeUndefined();
  });
});

describe('a straight line', () => {
  test('through points that lie on one', () => {
    expect(fitLine([0, 1, 2, 3], [5, 7, 9, 11])).toEqual({ slope: 2, intercept: 5, slopeError: 0, p: 0, slopeHalf95: 0 });
    expect(fitLine([1, 1], [2, 3])).toBeUndefined();
    expect(fitLine([1], [2])).toBeUndefined();
    expect(fitLine([0, 2], [1, 5])).toMatchObject({ slope: 2, intercept: 1, slopeError: undefined });
  });
  // JCGM 100:2008, H.3: calibration of a thermometer, y₂ and its uncertainty, by least squares with t₀ = 20.
  test('the thermometer of the Guide', () => {
    const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511].map((x) => x - 20);
    const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
    const line = fitLine(t, b)!;
    expect(line.intercept).toBeCloseTo(-0.1712, 4);
    expect(line.slope).toBeCloseTo(0.00218, 5);
    expect(line.slopeError).toBeCloseTo(0.00067, 5);
  });
});
