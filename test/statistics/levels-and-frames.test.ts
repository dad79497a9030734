import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { backgroundCorrection, energyMean, energySum, frameRate, frameRateAt, mean, slowestRate } from '../../pipeline/statistics/index.js';
import { oracle } from '../oracles/table.js';

describe('sound levels', () => {
  const rows = oracle('sound_levels.csv');
  // Sums as printed in lecture slides, a consultant's guide and a sound-system handbook (some to whole decibels).
  test.each(rows.filter((r) => r['operation'] === 'sum'))('$levels_dB together are $result_dB dB ($source_or_formula)', ({ levels_dB, result_dB }) => {
    expect(Math.abs(energySum(levels_dB!.split(';').map(Number)) - Number(result_dB))).toBeLessThanOrEqual(0.051);
  });
  // The mean level of ISO 3744.
  test.each(rows.filter((r) => r['operation'] === 'energy_mean'))('$levels_dB average $result_dB dB', ({ levels_dB, result_dB }) => {
    expect(energyMean(levels_dB!.split(';').map(Number))).toBeCloseTo(Number(result_dB), 2);
  });
  test.each(rows.filter((r) => r['operation'] === 'n_equal'))('$levels_dB equal sources add $result_dB dB', ({ levels_dB, result_dB }) => {
    expect(energySum(Array.from({ length: Number(levels_dB) }, () => 40)) - 40).toBeCloseTo(Number(result_dB), 2);
  });
  // ISO 3744; ECMA TR/107 quotes 0.46 and 1.26 dB.
  test.each(rows.filter((r) => r['operation'] === 'background_K1'))('$levels_dB above the room: $result_dB dB', ({ levels_dB, result_dB }) => {
    expect(backgroundCorrection(Number(levels_dB!.replace('dL ', '')))).toBeCloseTo(Number(result_dB), 2);
  });
  test('an energy mean is never below the arithmetic one', () => {
    fc.assert(fc.property(fc.array(fc.integer({ min: 0, max: 120 }), { minLength: 1, maxLength: 12 }), (levels) => {
      expect(energyMean(levels)).toBeGreaterThanOrEqual(mean(levels) - 1e-9);
      expect(energyMean(levels)).toBeLessThanOrEqual(Math.max(...levels) + 1e-9);
    }));
  });
});

describe('frame rates', () => {
  const times = (text: string): number[] => text.split(';').flatMap((t) => (t.includes('*') ? Array.from({ length: Number(t.split('*')[0]) }, () => Number(t.split('*')[1])) : [Number(t)]));
  // Frames over time, the harmonic mean of 1000/t (definition).
  test.each(oracle('frame_rate_means.csv'))('$case', (row) => {
    const t = times(row['frame_times_ms']!);
    expect(frameRate(t)).toBeCloseTo(Number(row['total_frames_over_total_time']), 4);
    expect(mean(t.map((x) => 1000 / x))).toBeCloseTo(Number(row['arithmetic_mean_of_1000_over_t_WRONG']), 4);
  });
  test('one record has many "lows" (frame_percentiles.csv)', () => {
    const t = times('98*10;20;40');
    const row = (start: string): number => Number(oracle('frame_percentiles.csv').find((r) => r['statistic']!.startsWith(start))!['frame_rate_fps']);
    expect(frameRateAt(t, 0.99)).toBeCloseTo(row('p99 frame time, type 7'), 4);
    expect(frameRateAt(t, 0.99, 1)).toBeCloseTo(row('p99 frame time, type 1'), 4);
    expect(slowestRate(t, 0.01)).toBeCloseTo(row('mean of slowest 1%'), 4);
    expect(slowestRate(t, 0.02)).toBeCloseTo(row('mean of slowest 2%'), 4);
    expect(frameRateAt(t, 0.5)).toBeCloseTo(row('p50'), 4);
  });
  test('of no frames there is no rate', () => {
    expect(frameRate([])).toBeNaN();
  });
});
