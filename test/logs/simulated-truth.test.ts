// A thousand logs whose truth is known, read as any other: windows are found, means and time constants hold what they claim.
import { beforeAll, describe, expect, test } from 'vitest';
import type { Reading } from '../../pipeline/records/index.js';
import { fitApproach, mean, steadyBySlope, tFactor } from '../../pipeline/statistics/index.js';
import { readEpisode } from '../records/reading.js';
import { idleSeconds, type Simulated, simulated } from './simulated.js';

const logs = 1000;
const span = 60;
const record = `title: Simulated
layouts:
  sensors: {time: {column: t}, phases: {column: stage}, windows: {idle: from 0 s, load: steady to 1 K in ${span} s, late: last 120 s of load, mser: steady of load}, steady: {rule: mser}, columns: {core: temperature/core °C}}
logs:
  - {files: log.csv, layout: sensors, for: {setup: bench}}
`;

interface Trial {
  truth: Simulated;
  readings: Map<string, Reading>;
}

const trials: Trial[] = [];
beforeAll(() => {
  for (let seed = 0; seed < logs; seed++) {
    const truth = simulated({ seed });
    const { episode, findings } = readEpisode(record, { 'log.csv': truth.csv }, seed % 25 === 0);
    if (findings.some((f) => f.severity === 'error')) throw new Error(findings[0]!.message);
    trials.push({ truth, readings: new Map(episode!.readings.map((r) => [r.key.split('/')[5]!, r])) });
  }
});

const share = (list: readonly boolean[]): number => list.filter(Boolean).length / list.length;
const at = (list: readonly number[], p: number): number => [...list].sort((a, b) => a - b)[Math.floor(p * (list.length - 1))]!;

/** When the noiseless curve first moves by no more than 1 K in a span: τ·ln(ΔT(1−e^(−span/τ))/1 K). */
const steadyFrom = ({ amplitude, tau }: Simulated): number => Math.max(0, tau * Math.log(-amplitude * (1 - Math.exp(-span / tau))));

/** Whether the stated 95 % interval of a window's mean holds the mean of the noiseless curve over the same samples. */
function holds({ truth, readings }: Trial, phase: string, from: number, to: number): boolean {
  const { standardError = 0, effective = 0 } = readings.get(phase)!.log!;
  const { times, values, curve } = truth;
  const level = phase === 'idle' ? curve(0) : mean(times.filter((t, i) => t >= from && t < to && !Number.isNaN(values[i]!)).map(curve));
  const half = tFactor(0.95, Math.max(1, effective - 1)) * standardError;
  return Math.abs(readings.get(phase)!.quantity.value.toNumber() - level) <= half;
}

describe('the window found by slope', () => {
  const found = (): { start: number | undefined; truth: Simulated }[] => trials.map(({ truth, readings }) => ({ truth, start: readings.get('load')!.log!.steady!.start }));
  test('is found wherever the load lasts long enough', () => {
    expect(share(found().map((f) => f.start !== undefined))).toBeGreaterThan(0.99);
  });
  test('begins, in 95 of a hundred, where the curve moves by no more than 1.2 K in a span, and no more than a span late', () => {
    const starts = found().filter((f) => f.start !== undefined).map(({ truth, start }) => ({ truth, since: start! - idleSeconds }));
    const moves = starts.map(({ truth, since }) => truth.curve(since + span) - truth.curve(since));
    expect(at(moves, 0.95)).toBeLessThan(1.2);
    expect(Math.max(...moves)).toBeLessThan(2);
    const late = starts.map(({ truth, since }) => since - steadyFrom(truth));
    expect(at(late, 0.95)).toBeLessThan(span);
    expect(Math.abs(at(late, 0.5))).toBeLessThan(10);
  });
  test('is not found where the load ends before the curve is steady', () => {
    const cut = trials.slice(0, 500).map(({ truth }) => truth).filter((t) => steadyFrom(t) > 30);
    const never = cut.map((t) => {
      const n = t.times.findIndex((x) => x > steadyFrom(t) + span - 0.4 * t.tau);
      return steadyBySlope({ times: t.times.slice(0, n), values: t.values.slice(0, n) }, 1, span).from === undefined;
    });
    expect(share(never)).toBeGreaterThan(0.93);
  });
});

test('the window found by MSER begins after two and before eight time constants', () => {
  const starts = trials.flatMap(({ truth, readings }) => {
    const { start } = readings.get('mser')!.log!.steady!;
    return start === undefined ? [] : [(start - idleSeconds) / truth.tau];
  });
  expect(starts.length / logs).toBeGreaterThan(0.95);
  expect(at(starts, 0.01)).toBeGreaterThan(2);
  expect(at(starts, 0.99)).toBeLessThan(8);
});

describe('the interval of a window’s mean holds the truth', () => {
  test('in 93 to 97 of a hundred where scatter is all there is', () => {
    for (const held of [share(trials.map((t) => holds(t, 'idle', 0, 0))), share(trials.map((t) => holds(t, 'late', t.truth.load - 120, Infinity)))]) {
      expect(held).toBeGreaterThanOrEqual(0.93);
      expect(held).toBeLessThanOrEqual(0.97);
    }
  });
  test('in at least 93 where what is left of the warm-up adds to it', () => {
    const held = trials.filter((t) => t.readings.get('load')!.log!.steady!.start !== undefined).map((t) => holds(t, 'load', t.readings.get('load')!.log!.steady!.start! - idleSeconds, Infinity));
    expect(share(held)).toBeGreaterThanOrEqual(0.93);
  });
});

test('a load of two time constants: intervals of its time constant, final value and distance from it hold the truth in 93 to 97.5', () => {
  const fitted = 600;
  const held = { timeConstant: 0, final: 0, gap: 0 };
  let fits = 0;
  for (let seed = 5000; seed < 5000 + fitted; seed++) {
    const s = simulated({ seed, lengths: 2 });
    const fit = fitApproach(s.times, s.values);
    if (!fit) continue;
    fits++;
    const truth = { timeConstant: s.tau, final: s.final, gap: s.curve(s.times[s.values.findLastIndex((v) => !Number.isNaN(v))]!) - s.final };
    for (const k of ['timeConstant', 'final', 'gap'] as const) if (fit[k].low <= truth[k] && truth[k] <= fit[k].high) held[k]++;
  }
  expect(fits).toBeGreaterThan(0.95 * fitted);
  for (const k of ['timeConstant', 'final', 'gap'] as const) {
    expect(held[k] / fits, k).toBeGreaterThanOrEqual(0.93);
    expect(held[k] / fits, k).toBeLessThanOrEqual(0.975);
  }
});
