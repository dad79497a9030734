import { expect, test } from 'vitest';
import { normalBelow, powerOfRuns, runsToTell } from '../../pipeline/statistics/index.js';

// Runs per group by the non-central t test, two-sided 5 %: the first three are in Cohen's table (from memory), the next three
// and the powers below were computed with scipy 1.17 (nct); power 0.90 is the example of R's power.t.test (22.02 → 23).
test.each([[0.2, 0.8, 394], [0.5, 0.8, 64], [0.8, 0.8, 26], [1, 0.8, 17], [1.5, 0.8, 9], [2, 0.8, 6], [1, 0.9, 23]])('a difference of %f standard deviations at power %f', (effect, power, runs) => {
  expect(runsToTell(effect * 3, 3, power)).toBe(runs);
});

test.each([[20, 1, 0.8689530277239899], [2, 1, 0.09520175549788396], [2, 4, 0.564514289260038], [3, 2, 0.462640811891307], [3, 0.5, 0.07684904996035914], [5, 1.3, 0.4400310875476508], [394, 0.2, 0.8005931284024349], [100, 0.3, 0.5600592535808472]])('the power of %i runs for %f standard deviations', (runs, effect, power) => {
  expect(powerOfRuns(runs, effect)).toBeCloseTo(power, 6);
});

test('what needs no runs, and what no runs would settle', () => {
  expect(runsToTell(0, 1)).toBeUndefined();
  expect(runsToTell(1e-4, 1)).toBeUndefined();
  expect(runsToTell(5, 0)).toBe(2);
  expect(runsToTell(-10, 1)).toBe(runsToTell(10, 1));
  expect(powerOfRuns(1, 100)).toBe(0);
  for (const runs of [2, 3, 10]) expect(powerOfRuns(runs, 0)).toBeCloseTo(0.05, 7);
});

// scipy 1.17 norm.cdf.
test('the normal distribution', () => {
  for (const [x, p] of [[-10, 7.61985302416047e-24], [-3.1, 0.0009676032132183563], [-2.9, 0.0018658133003840375], [-1, 0.15865525393145707], [0, 0.5], [0.3, 0.6179114221889526], [1.96, 0.9750021048517795], [4, 0.9999683287581669]] as const) {
    expect(Math.abs(normalBelow(x) / p - 1)).toBeLessThan(1e-12);
  }
  expect([normalBelow(-50), normalBelow(50)]).toEqual([0, 1]);
});
