import { describe, expect, test } from 'vitest';
import { steadyByMser, steadyBySlope } from '../../pipeline/statistics/index.js';
import { random } from './random.js';

const every = (n: number, step = 1) => Array.from({ length: n }, (_, i) => i * step);

describe('thermal equilibrium by slope over a span', () => {
  // T(t) = T∞ − ΔT·e^(−t/τ) with ΔT 40 K and τ 10 min first meets "at most X in the next span" at t = τ·ln(ΔT(1−e^(−span/τ))/X):
  // 3 K in 30 min (IEC 62368-1, B.1.6) at 25.39 min, 1 K in 5 min at 27.56 min. Levels are smoothed over a tenth of the span, which
  // moves them by τ·ln(sinh(w/2τ)/(w/2τ)) = 2.2 s and 0.1 s.
  const times = every(12001, 0.5);
  const values = times.map((t) => 90 - 40 * Math.exp(-t / 600));
  test.each([[3, 1800, 25.39], [1, 300, 27.56]])('%f K in %f s', (change, span, minutes) => {
    const { from } = steadyBySlope({ times, values }, change, span);
    expect(Math.abs(times[from!]! / 60 - minutes)).toBeLessThan(0.05);
  });

  test('means over short steps give the same', () => {
    const coarse = every(600, 10).map((t) => t + 5);
    const { from } = steadyBySlope({ times: coarse, values: coarse.map((t) => 90 - 40 * Math.exp(-t / 600)) }, 1, 300);
    expect(Math.abs(coarse[from!]! / 60 - 27.56)).toBeLessThan(10 / 60);
  });

  test('never reached: the change over the last span is told', () => {
    const short = { times: times.slice(0, 1201), values: values.slice(0, 1201) };
    const { from, change } = steadyBySlope(short, 1, 300);
    expect(from).toBeUndefined();
    const truth = 40 * (Math.exp(-0.5) - Math.exp(-1));
    expect(Math.abs(change! / truth - 1)).toBeLessThan(0.025); // the last level has no samples behind it and counts a fortieth of the span early
  });

  test('it must stay steady until the end, and for a whole span', () => {
    const level = (t: number): number => (t < 400 ? 60 : t < 460 ? 66 : 60);
    const t = every(1001);
    expect(steadyBySlope({ times: t, values: t.map(level) }, 1, 60).from).toBeGreaterThan(455);
    expect(steadyBySlope({ times: t, values: t.map(level) }, 1, 60).from).toBeLessThan(470);
    expect(steadyBySlope({ times: t, values: t.map(level) }, 1, 600).from).toBeUndefined();
    expect(steadyBySlope({ times: t, values: t.map(() => 60) }, 1, 1000).from).toBe(0);
    expect(steadyBySlope({ times: t, values: t.map(() => 60) }, 1, 1001)).toEqual({ from: undefined, change: undefined });
  });

  test('a sensor of whole degrees that moves by one step is steady within one degree, cooling counts like warming', () => {
    const t = every(240, 0.5);
    expect(steadyBySlope({ times: t, values: t.map((x) => (x < 50 ? 66 : 67)) }, 1, 60).from).toBe(0);
    expect(steadyBySlope({ times: t, values: t.map((x) => 50 - x / 20) }, 1, 60).from).toBeUndefined();
  });

  test('dropouts and uneven steps', () => {
    const { uniform } = random(5);
    let at = 0;
    const t = every(4000).map(() => (at += 0.2 + 0.6 * uniform()));
    const v = t.map((x) => (uniform() < 0.2 ? NaN : 70 - 30 * Math.exp(-x / 100)));
    const found = t[steadyBySlope({ times: t, values: v }, 1, 60).from!]!;
    expect(Math.abs(found - 100 * Math.log((30 * (1 - Math.exp(-0.6))) / 1))).toBeLessThan(5);
  });

  test('nothing to go by', () => {
    expect(steadyBySlope({ times: [], values: [] }, 1, 60).from).toBeUndefined();
    expect(steadyBySlope({ times: [0, 100], values: [NaN, NaN] }, 1, 60).from).toBeUndefined();
  });
});

describe('the marginal standard error rule', () => {
  // Worked out by the formula of White 1997: 0.996, 0.30727, 0.0918, 0.05831, 0.05556 (d = 4), 0.08 …; the last, 0 at d = 9, is why d above n/2 does not count.
  test('the example', () => expect(steadyByMser([0, 5, 8, 9, 10, 10, 9, 11, 10, 10], 1)).toBe(4));

  test('in means of five samples, holes passed over', () => {
    const values = [0, 5, 8, 9, 10, 10, 9, 11, 10, 10].flatMap((m) => [m - 2, m + 2, NaN, m - 1, m + 1, m]);
    expect(steadyByMser(values)).toBe(4 * 6);
  });

  test('what only ever grows is never steady, what is level is so from the beginning', () => {
    expect(steadyByMser(every(100), 5)).toBeUndefined();
    expect(steadyByMser(every(100).map((i) => 60 + (i % 3)), 5)).toBeLessThan(15);
    expect(steadyByMser([60, 60, 60, 60], 1)).toBe(0);
    expect(steadyByMser([1, 2], 5)).toBeUndefined();
  });

  test('a large level does not hide small changes', () => {
    const shifted = [0, 5, 8, 9, 10, 10, 9, 11, 10, 10].map((x) => 1e9 + x);
    expect(steadyByMser(shifted, 1)).toBe(4);
  });
});
