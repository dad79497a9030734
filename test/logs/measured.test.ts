// Nine logs of a real card: figures that anyone can work out from the files again.
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Episode, Trace } from '../../pipeline/records/index.js';
import { fitApproach } from '../../pipeline/statistics/index.js';
import { readEpisode } from '../records/reading.js';

const folder = resolve(import.meta.dirname, '../../data/measured-card');
let episode: Episode;

beforeAll(() => {
  const files = Object.fromEntries(readdirSync(join(folder, 'logs')).sort().map((n) => [`logs/${n}`, readFileSync(join(folder, 'logs', n))]));
  episode = readEpisode(readFileSync(join(folder, 'episode.yaml'), 'utf8'), files).episode!;
});

const reading = (workload: string, run: string, rest: string) => episode.readings.find((r) => r.key === `server/stock/${workload}/${rest}` && r.run === run)!;

// Means over the last 60 s of load and the last 15 s of idle, in exact fractions by a few lines of Python (csv and fractions); samples counted there too.
// Fits of the whole load by scipy.optimize.curve_fit, of every sample and without weights: final value and time constant.
interface Row { workload: string; run: string; samples: number; core: number; power: number; clock: number; idle: number; final?: number; tau?: number }
const rows: Row[] = [
  { workload: 'memory-heavy', run: '1', samples: 239, core: 45, power: 375.03339, clock: 1980, idle: 35, final: 45.0079, tau: 16.9129 },
  { workload: 'memory-heavy', run: '2', samples: 239, core: 45, power: 375.87372, clock: 1980, idle: 36.65, final: 45.0101, tau: 16.4185 },
  { workload: 'memory-heavy', run: '3', samples: 239, core: 45, power: 375.41816, clock: 1980, idle: 36.35, final: 45.0417, tau: 17.7538 },
  { workload: 'steady-full', run: '1', samples: 240, core: 71.0792, power: 697.24958, clock: 1366.875, idle: 38, final: 71.208, tau: 17.1017 },
  { workload: 'steady-full', run: '2', samples: 240, core: 71.3417, power: 697.00208, clock: 1364.688, idle: 43.6667, final: 71.3203, tau: 13.7783 },
  { workload: 'steady-full', run: '3', samples: 240, core: 70.4083, power: 696.88967, clock: 1371.188, idle: 43.0833, final: 70.4434, tau: 15.4845 },
  { workload: 'steady-half', run: '1', samples: 240, core: 63.9542, power: 542.58775, clock: 1979.188, idle: 41.2, final: 64.2541, tau: 23.4319 },
  { workload: 'steady-half', run: '2', samples: 240, core: 57.375, power: 541.84233, clock: 1980, idle: 41.5667, final: 57.423, tau: 8.6669 },
  { workload: 'steady-half', run: '3', samples: 240, core: 56.3667, power: 537.16692, clock: 1980, idle: 37.8 },
];

describe.each(rows)('$workload, run $run', ({ workload, run, samples, core, power, clock, idle, final, tau }) => {
  test('means of the windows', () => {
    const load = reading(workload, run, 'temperature/core/load');
    expect(load.log!.samples).toBe(samples);
    expect(Math.abs(load.quantity.value.toNumber() - core)).toBeLessThanOrEqual(0.0051);
    expect(Math.abs(reading(workload, run, 'power/board/load').quantity.value.toNumber() - power)).toBeLessThanOrEqual(0.000051);
    expect(Math.abs(reading(workload, run, 'frequency/core/load').quantity.value.toNumber() - clock)).toBeLessThanOrEqual(0.0051);
    expect(Math.abs(reading(workload, run, 'temperature/core/idle').quantity.value.toNumber() - idle)).toBeLessThanOrEqual(0.0051);
  });

  test('the warm-up', () => {
    const { times, values } = load(trace(workload, run));
    const fit = fitApproach(times, values);
    if (tau === undefined || final === undefined) {
      // It overshoots and falls again: an exponential explains it no better than a level does, once its few independent samples are counted.
      expect(fit).toBeUndefined();
      return;
    }
    expect(Math.abs(fit!.timeConstant.value / tau - 1)).toBeLessThan(0.025);
    expect(Math.abs(fit!.final.value - final)).toBeLessThan(0.02);
    expect(fit!.timeConstant.low).toBeLessThan(tau);
    expect(fit!.timeConstant.high).toBeGreaterThan(tau);
  });
});

test('power scatters at its limit, and its 240 samples are not 240 independent ones', () => {
  for (const run of ['1', '2', '3']) {
    const { effective, standardError } = reading('steady-full', run, 'power/board/load').log!;
    expect(effective).toBeLessThan(240);
    expect(standardError).toBeLessThan(0.5);
    expect(standardError).toBeGreaterThan(0);
  }
});

// By the rule "at most 1 K in 20 s", read off the whole degrees by hand: the last sample from which the temperature moves by more than 1 K in 20 s
// stands at 15.9, 10.8 and 12.8 s of the memory load and at 51.1 s of the first full load; the levels of a tenth of the span smooth one step away or add one.
test.each([['memory-heavy', '1', 15.9], ['memory-heavy', '2', 10.8], ['memory-heavy', '3', 12.8], ['steady-full', '1', 51.1]])('%s, run %s is steady from about %f s of load on', (workload, run, seconds) => {
  const { start, since } = reading(workload, run, 'temperature/core/load').log!.steady!;
  expect(Math.abs(start! - since - seconds)).toBeLessThan(12);
});

test.each([['steady-full', '2'], ['steady-full', '3'], ['steady-half', '2'], ['steady-half', '3']])('%s: idle before run %s is never steady, it still cools down', (workload, run) => {
  const { start, last } = reading(workload, run, 'temperature/core/idle').log!.steady!;
  expect(start).toBeUndefined();
  expect(last!.change).toBeLessThan(-1);
});

function trace(workload: string, run: string): Trace {
  return episode.traces.find((t) => t.id === `server/stock/${workload}/temperature/core#${run}`)!;
}

function load({ times, values, windows }: Trace): { times: number[]; values: number[] } {
  const { since, until } = windows.find((w) => w.phase === 'load')!.steady!;
  const rows = times.flatMap((t, i) => (t >= since && t <= until ? [i] : []));
  return { times: rows.map((i) => times[i]!), values: rows.map((i) => values[i]!) };
}
