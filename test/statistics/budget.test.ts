// Uncertainties put together, against the worked examples of JCGM 100:2008 (numbers from memory, recomputed and consistent).
import { describe, expect, test } from 'vitest';
import { combine, coverageFactor, standardOfLimit, standardOfStep, type Term } from '../../pipeline/statistics/index.js';

const b = (source: string, contribution: number, dof: number): Term => ({ source, kind: 'B', standard: contribution, sensitivity: 1, dof });

describe('H.1, the end gauge', () => {
  const length = 50.000623e6;
  const budget = combine([
    b('standard', 25, 18), b('repeated readings', 5.8, 24), b('comparator, random', 3.9, 5), b('comparator, systematic', 6.7, 8),
    { source: 'difference of expansions', kind: 'B', standard: standardOfLimit(1e-6), sensitivity: -length * -0.1, dof: 50 },
    { source: 'difference of temperatures', kind: 'B', standard: standardOfLimit(0.05), sensitivity: -length * 11.5e-6, dof: 2 },
  ]);

  test('what each contributes, in nanometres', () => {
    const comparator = Math.hypot(...budget.rows.slice(1, 4).map((r) => r.contribution));
    expect([budget.rows[0]!.contribution, comparator, budget.rows[4]!.contribution, budget.rows[5]!.contribution].map((x) => x.toFixed(1))).toEqual(['25.0', '9.7', '2.9', '16.6']);
  });

  test('32 nm with 16 degrees of freedom, 93 nm at 99 %', () => {
    expect(budget.standard).toBeCloseTo(31.664, 2);
    expect(budget.dof).toBeCloseTo(16.75, 1);
    // The example truncates the degrees of freedom to 16: k is 2.92.
    expect(coverageFactor({ dof: 16 }, 0.99)).toBeCloseTo(2.92, 2);
    expect(coverageFactor({ dof: 16 }, 0.99) * 32).toBeCloseTo(93, 0);
  });
});

describe('H.2, resistance, reactance and impedance from simultaneous readings', () => {
  const V = [5.007, 4.994, 5.005, 4.99, 4.999];
  const I = [19.663, 19.639, 19.64, 19.685, 19.678].map((x) => x / 1000);
  const phase = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];
  const mean = (x: readonly number[]): number => x.reduce((s, v) => s + v, 0) / x.length;
  const together = (source: string, values: readonly number[], sensitivity: number): Term => {
    const m = mean(values);
    const deviations = values.map((v) => v - m);
    return { source, kind: 'A', standard: Math.sqrt(deviations.reduce((s, d) => s + d * d, 0) / 4 / 5), sensitivity, dof: 4, group: 'sets', deviations };
  };
  const [v, i, f] = [mean(V), mean(I), mean(phase)];
  const z = v / i;
  const [cos, sin] = [Math.cos(f), Math.sin(f)];

  test.each([
    ['R', z * cos, [cos / i, (-z * cos) / i, -z * sin], 127.732, 0.071],
    ['X', z * sin, [sin / i, (-z * sin) / i, z * cos], 219.847, 0.295],
    ['Z', z, [1 / i, -z / i, 0], 254.26, 0.236],
  ] as const)('%s', (_name, value, [cv, ci, cf], expected, u) => {
    const budget = combine([together('V', V, cv), together('I', I, ci), together('phase', phase, cf)]);
    expect(value).toBeCloseTo(expected, 2);
    // The printed figures come from rounded inputs.
    expect(Math.abs(budget.standard - u)).toBeLessThan(0.001);
    expect(budget.dof).toBe(4);
    expect(budget.rows).toHaveLength(1);
  });
});

test('G.4.1, second example: 0.25, 0.57 and 0.82 % from 10, 5 and 15 readings', () => {
  const budget = combine([b('a', 0.25, 9), b('b', 0.57, 4), b('c', 0.82, 14)]);
  expect(budget.standard).toBeCloseTo(1.03, 2);
  expect(budget.dof).toBeCloseTo(19, 1);
});

// JCGM 100, 4.3.7 and F.2.2.1; NIST TN 1297, 4.6: 4 °C of half-width is 2.309 °C, a step of 1 is 0.288675.
test('limits and steps', () => {
  expect(standardOfLimit(4)).toBeCloseTo(2.309, 3);
  expect([1, 0.5, 0.1].map(standardOfStep).map((x) => x.toFixed(7))).toEqual(['0.2886751', '0.1443376', '0.0288675']);
  // 4.3.4: limits of a stated level belong to a normal distribution, 1.96 standard uncertainties for 95 %.
  expect(standardOfLimit(1.96, 0.95)).toBeCloseTo(1, 4);
});

// The mean of three runs: t₉₅(2) = 4.303 (JCGM 100, Table G.2), and 4.303/√3 = 2.484; not 2/√3 = 1.155.
test('three runs: ± 2.484 standard deviations', () => {
  const budget = combine([{ source: 'runs', kind: 'A', standard: 1 / Math.sqrt(3), sensitivity: 1, dof: 2 }]);
  expect(coverageFactor(budget) * budget.standard).toBeCloseTo(2.484, 3);
});

test('what stands in both sides with the same sign of weight cancels, and stands in the table with nothing', () => {
  const budget = combine([{ source: 'offset', kind: 'B', standard: 2, sensitivity: 0, dof: Infinity }, b('scatter', 1, 2)]);
  expect(budget.rows[0]!.contribution).toBe(0);
  expect(budget).toMatchObject({ standard: 1, dof: 2 });
});
