import fc from 'fast-check';
import { expect, test } from 'vitest';
import { backgroundCorrection, energyMean, mean } from '../../pipeline/statistics/index.js';
import { oracle } from '../oracles/table.js';

const rows = oracle('sound_levels.csv');

// The mean level of ISO 3744.
test.each(rows.filter((r) => r['operation'] === 'energy_mean'))('$levels_dB average $result_dB dB', ({ levels_dB, result_dB }) => {
  expect(energyMean(levels_dB!.split(';').map(Number))).toBeCloseTo(Number(result_dB), 2);
});

// Published sums (lecture slides, a sound-system handbook; some to whole decibels): the mean level of n sources and 10·lg n more.
test.each(rows.filter((r) => r['operation'] === 'sum'))('$levels_dB together are $result_dB dB ($source_or_formula)', ({ levels_dB, result_dB }) => {
  const levels = levels_dB!.split(';').map(Number);
  expect(Math.abs(energyMean(levels) + 10 * Math.log10(levels.length) - Number(result_dB))).toBeLessThanOrEqual(0.051);
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
