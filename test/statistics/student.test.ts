import { expect, test } from 'vitest';
import { dofOfFactor, effectiveDof, tFactor, twoSidedP } from '../../pipeline/statistics/index.js';
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

test('the degrees of freedom of a factor are found again', () => {
  for (const dof of [0.5, 1, 1.234, 2, 7.03, 40, 12345]) close(dofOfFactor(tFactor(0.95, dof), 0.95), dof, dof < 1000 ? 1e-9 : 1e-6);
  expect(dofOfFactor(1.9, 0.95)).toBe(Infinity);
  expect(dofOfFactor(1.9, 0.95, 12)).toBe(12);
});

// JCGM 100:2008, G.4.1, example 2 (recalled, recomputed): 0.25, 0.57 and 0.82 % with 9, 4 and 14 degrees of freedom.
test('effective degrees of freedom', () => {
  expect(effectiveDof([{ u2: 0.25 ** 2, dof: 9 }, { u2: 0.57 ** 2, dof: 4 }, { u2: 0.82 ** 2, dof: 14 }])).toBeCloseTo(19.0, 1);
  expect(effectiveDof([{ u2: 1, dof: Infinity }])).toBe(Infinity);
});
