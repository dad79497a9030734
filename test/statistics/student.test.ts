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

// Printed by @stdlib/stats-base-dists-t-quantile 0.2.3, a general-purpose library of another make; too large to install for this alone.
const dofs = [1, 1.5, 2, 3, 4, 7.03, 10, 16.75, 30, 100, 1000];
test.each<[number, number[]]>([
  [0.5, [1, 0.8725946625415716, 0.8164965809277261, 0.7648923284043456, 0.7406970841126829, 0.7109786306756937, 0.6998120613124315, 0.6894186864768812, 0.6827556933212927, 0.6769510430114716, 0.6747351646070093]],
  [0.9, [6.313751514675037, 3.705180820096749, 2.9199855803537242, 2.3533634348018224, 2.1318467863266495, 1.8933629355472295, 1.8124611228116765, 1.741101748171057, 1.6972608865939576, 1.6602343260853392, 1.646378817285464]],
  [0.95, [12.706204736174694, 6.016663104427929, 4.302652729749462, 3.182446305283708, 2.776445105197794, 2.36258019022566, 2.2281388519862744, 2.112216902315131, 2.0422724563012378, 1.9839715185235518, 1.9623390808264078]],
  [0.9545, [13.96781148750255, 6.41821500249524, 4.526550760081986, 3.306829920720108, 2.8693151696963834, 2.426632158087488, 2.2836816132996405, 2.160804851259619, 2.086847053536651, 2.0253116527641977, 2.002505517218672]],
  [0.99, [63.656741162871526, 17.820310514462797, 9.92484320091829, 5.840909309733356, 4.604094871349992, 3.4944017827992506, 3.169272672616951, 2.903588053212558, 2.749995653567225, 2.6258905214380177, 2.5807546980659506]],
  [0.999, [636.6192487687897, 82.84744670366369, 31.599054576445365, 12.923978636687963, 8.610301581379524, 5.3947407987149125, 4.586893858702707, 3.9769429097518927, 3.6459586350420627, 3.390491311164264, 3.300282648423944]],
])('t of a two-sided %f as another library has it', (level, factors) => {
  factors.forEach((t, i) => close(tFactor(level, dofs[i]!), t, 1e-11));
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
