import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { geometricMean, harmonicMean, slowestOfTime, stuttersOf, warmUpFrames } from '../../pipeline/statistics/index.js';
import { oracle } from '../oracles/table.js';

const frames = (list: string) => list.split(';').flatMap((t) => (t.includes('*') ? Array<number>(Number(t.split('*')[0])).fill(Number(t.split('*')[1])) : [Number(t)]));

// Computed from the definition (the table names no publication): frames over time is the harmonic mean of the frames' rates.
test.each(oracle('frame_rate_means.csv'))('$case: the harmonic mean of rates is frames over time', (row) => {
  const times = frames(row['frame_times_ms']!);
  const rates = times.map((t) => 1000 / t);
  expect(harmonicMean(rates)).toBeCloseTo(Number(row['harmonic_mean_of_1000_over_t']), 4);
  expect((1000 * times.length) / times.reduce((a, b) => a + b)).toBeCloseTo(Number(row['total_frames_over_total_time']), 4);
});

// 3 ÷ (1/30 + 1/60 + 1/200), by hand.
test('30, 60 and 200 frames per second over equal frames are 54.5', () => {
  expect(harmonicMean([30, 60, 200])).toBeCloseTo(54.5455, 4);
});

describe('the geometric mean', () => {
  // Fleming & Wallace, CACM 29 (1986): only of it is the mean of ratios the ratio of means, whichever machine is the base.
  test('of ratios does not depend on the base', () => {
    fc.assert(fc.property(fc.array(fc.tuple(fc.double({ min: 0.1, max: 1000, noNaN: true }), fc.double({ min: 0.1, max: 1000, noNaN: true })), { minLength: 1, maxLength: 12 }), (pairs) => {
      const there = geometricMean(pairs.map(([a, b]) => a / b));
      const back = geometricMean(pairs.map(([a, b]) => b / a));
      expect(there * back).toBeCloseTo(1, 9);
    }));
    expect(geometricMean([2, 8])).toBeCloseTo(4, 12);
    expect(geometricMean([1, 0])).toBeNaN();
  });

  test('lies between the harmonic and the arithmetic', () => {
    fc.assert(fc.property(fc.array(fc.double({ min: 0.01, max: 1e4, noNaN: true }), { minLength: 1, maxLength: 20 }), (v) => {
      const [h, g, a] = [harmonicMean(v), geometricMean(v), v.reduce((x, y) => x + y) / v.length];
      expect(h).toBeLessThanOrEqual(g * (1 + 1e-12));
      expect(g).toBeLessThanOrEqual(a * (1 + 1e-12));
    }));
  });
});

const durations = fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 80 });

test('stutters are those that a median taken anew around every frame gives', () => {
  const plainly = (d: readonly number[], times: number, span: number) => d.filter((x, i) => {
    const around = d.slice(Math.max(0, i - (span >> 1)), i + (span >> 1) + 1).sort((a, b) => a - b);
    return x > times * ((around[(around.length - 1) >> 1]! + around[around.length >> 1]!) / 2);
  });
  fc.assert(fc.property(durations, fc.constantFrom(1.5, 2, 3), fc.constantFrom(3, 5, 11, 61), (d, times, span) => {
    const expected = plainly(d, times, span);
    expect(stuttersOf(d, times, span)).toEqual({ count: expected.length, time: expected.reduce((a, b) => a + b, 0) });
  }));
});

test('all of the time holds all of the frames, and the slowest of it never more than its share', () => {
  fc.assert(fc.property(durations, fc.integer({ min: 1, max: 100 }), (d, percent) => {
    const sorted = Float64Array.from(d).sort();
    const { frames: n, time } = slowestOfTime(sorted, percent);
    expect(time).toBeCloseTo((d.reduce((a, b) => a + b) * percent) / 100, 9);
    expect(n).toBeLessThanOrEqual((d.length * percent) / 100 + 1e-9);
    if (percent === 100) expect(n).toBeCloseTo(d.length, 9);
  }));
});

test('at most one frame in a hundred is a warm-up, and only at the beginning', () => {
  const even = Array<number>(400).fill(10);
  const after = (first: readonly number[]) => warmUpFrames(Float64Array.from([...first, ...even]));
  expect(after([])).toBe(0);
  expect(after([100])).toBe(1);
  expect(after([100, 90, 80])).toBe(3);
  expect(after([10, 100])).toBe(0);
  expect(after(Array<number>(8).fill(100))).toBe(0); // more than one in a hundred: this is how slow its frames are
  expect(warmUpFrames(Float64Array.from([500, 10, 10]))).toBe(0);
});
