import fc from 'fast-check';
import { expect, test } from 'vitest';
import { atDistance, backgroundCorrection, energyMean, leastCorrectable, levelSum, mean } from '../../pipeline/statistics/index.js';
import { oracle } from '../oracles/table.js';

const rows = oracle('sound_levels.csv');

// The mean level of ISO 3744.
test.each(rows.filter((r) => r['operation'] === 'energy_mean'))('$levels_dB average $result_dB dB', ({ levels_dB, result_dB }) => {
  expect(energyMean(levels_dB!.split(';').map(Number))).toBeCloseTo(Number(result_dB), 2);
});

// Published sums (lecture slides, a sound-system handbook; some to whole decibels): the mean level of n sources and 10·lg n more.
test.each(rows.filter((r) => r['operation'] === 'sum'))('$levels_dB together are $result_dB dB ($source_or_formula)', ({ levels_dB, result_dB }) => {
  const levels = levels_dB!.split(';').map(Number);
  expect(Math.abs(levelSum(levels) - Number(result_dB))).toBeLessThanOrEqual(0.051);
  expect(energyMean(levels) + 10 * Math.log10(levels.length)).toBeCloseTo(levelSum(levels), 9);
});

// 10 lg n (computed from the definition).
test.each(rows.filter((r) => r['operation'] === 'n_equal'))('$levels_dB equal sources: $result_dB dB', ({ levels_dB, result_dB }) => {
  expect(levelSum(Array<number>(Number(levels_dB)).fill(40)) - 40).toBeCloseTo(Number(result_dB), 2);
});

// What is left of 85 dB when 80 dB of it are another source (10·lg(10^8.5 − 10^8)): the background correction of 5 dB.
test.each(rows.filter((r) => r['operation'] === 'difference'))('$levels_dB: $result_dB dB', ({ result_dB }) => {
  expect(85 - backgroundCorrection(5)).toBeCloseTo(Number(result_dB), 1);
});

// 20 lg (r₁/r₂), a small source in a free field.
test.each([...rows.filter((r) => r['operation'] === 'distance').map((r) => [...r['levels_dB']!.replace('r ', '').split('->').map(Number), Number(r['result_dB'])] as [number, number, number]), [0.3, 1, -10.46] as [number, number, number]])('from %d m to %d m: %d dB', (from, to, change) => {
  expect(atDistance(40, from, to) - 40).toBeCloseTo(change, 2);
});

// The limit of measurement: 1.3 dB at 6 dB and below (ISO 10140-4, as a software manual describes it).
test.each(rows.filter((r) => r['operation'] === 'background_limit'))('$levels_dB: no more than $result_dB dB is ever taken off', ({ result_dB }) => {
  expect(backgroundCorrection(leastCorrectable)).toBeCloseTo(Number(result_dB), 1);
});

// ISO 3744; ECMA TR/107 quotes 0.46 and 1.26 dB.
test.each(rows.filter((r) => r['operation'] === 'background_K1'))('$levels_dB above the room: $result_dB dB', ({ levels_dB, result_dB }) => {
  expect(backgroundCorrection(Number(levels_dB!.replace('dL ', '')))).toBeCloseTo(Number(result_dB), 2);
});

test('an energy mean lies between the arithmetic mean and the loudest', () => {
  fc.assert(fc.property(fc.array(fc.integer({ min: 0, max: 120 }), { minLength: 1, maxLength: 12 }), (levels) => {
    expect(energyMean(levels)).toBeGreaterThanOrEqual(mean(levels) - 1e-9);
    expect(energyMean(levels)).toBeLessThanOrEqual(Math.max(...levels) + 1e-9);
  }));
});
