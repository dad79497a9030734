// Nine logs of a real card against figures computed without our code, from the same files:
//   energy      Σ (pᵢ + pᵢ₋₁)/2 · (tᵢ − tᵢ₋₁) over the lines whose phase is load
//   throttled   Σ (hᵢ + hᵢ₋₁)/2 · (tᵢ − tᵢ₋₁), h = 1 where power_w ≥ 0.97 · power_limit_w and core_clock_mhz < 0.98 · the highest of the log
//   rates       1000 · n ÷ Σ dᵢ of the frames meant; percentiles x₍j₎ + g · (x₍j+1₎ − x₍j₎) with j + g = (n − 1) p + 1
// (Python 3, sums by math.fsum, one pass a file.)
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readEpisode } from '../records/reading.js';

const logs = resolve(import.meta.dirname, '../../data/measured-card/logs');
const record = (skip: string) => `title: Nine logs
layouts:
  sensors:
    time: {column: elapsed_s}
    phases: {column: phase, map: {idle: idle, load: load}}
    windows: {idle: last 15 s, load: last 60 s}
    columns: {core_temp_c: temperature/core °C, power_w: power/board W, power_limit_w: power/board/limit W, core_clock_mhz: frequency/core MHz}
    energy: {power/board: energy/board J}
    throttle: {clock: frequency/core, limits: [power/board], time: throttled_time/core, share: throttled_share/core}
  steps:
    frames:
      column: frame_ms
      average: frame_rate/average
      low: {frame_rate/slowest-frames: slowest 1 %, frame_rate/slowest-time: slowest 1 % of time, frame_rate/p99-time: p99 frame time, frame_rate/p1-rate: p1 frame rate}
      times: {frame_time/p50: p50, frame_time/p99: p99, frame_time/longest: longest}
      count: frames
${skip}logs:
  - {files: "logs/{workload}-run{run}.csv", layout: sensors}
  - {files: "logs/{workload}-run{run}-frames.csv", layout: steps}
workloads: {steady-full: {}, steady-half: {}, memory-heavy: {}}
`;
const workloads = ['steady-full', 'steady-half', 'memory-heavy'] as const;
const names = workloads.flatMap((w) => [1, 2, 3].flatMap((run) => [`logs/${w}-run${run}.csv`, `logs/${w}-run${run}-frames.csv`]));
const files = Object.fromEntries(names.map((n) => [n, readFileSync(resolve(logs, n.slice(5)))]));
const read = (skip: string) => {
  const { episode, findings } = readEpisode(record(skip), files);
  const of = (workload: string, run: number, path: string) => episode!.readings.find((r) => r.run === String(run) && r.key === `//${workload}/${path}/load`)!.quantity.value.toNumber();
  return { of, findings };
};
const all = read('      skip: 0\n');
const rest = read('      skip: 1\n');

// workload, run: energy in J, throttled seconds and their share in percent
test.each([
  ['steady-full', 1, 83198.912, 118.912, 99.268], ['steady-full', 2, 83272.197, 118.918, 99.268], ['steady-full', 3, 83251.87, 118.952, 99.267],
  ['steady-half', 1, 64372.684, 0, 0], ['steady-half', 2, 64390.703, 0, 0], ['steady-half', 3, 64107.353, 0, 0],
  ['memory-heavy', 1, 44664.845, 0, 0], ['memory-heavy', 2, 44786.274, 0, 0], ['memory-heavy', 3, 44755.479, 0, 0],
] as const)('%s, run %d: energy and time at the power limit', (workload, run, joules, seconds, share) => {
  expect(all.of(workload, run, 'energy/board')).toBeCloseTo(joules, 1);
  expect(all.of(workload, run, 'throttled_time/core')).toBeCloseTo(seconds, 2);
  expect(all.of(workload, run, 'throttled_share/core')).toBeCloseTo(share, 3);
});

interface Pacing {
  frames: number;
  average: number;
  p50: number;
  p99: number;
  longest: number;
  slowestFrames: number;
  slowestTime: number;
  p1: number;
}
const pacing = (frames: number, average: number, p50: number, p99: number, longest: number, slowestFrames: number, slowestTime: number, p1: number): Pacing => ({ frames, average, p50, p99, longest, slowestFrames, slowestTime, p1 });

describe.each<[string, number, Pacing, Pacing]>([
  ['steady-full', 1, pacing(18345, 152.9076, 6.559, 6.9608, 128.1643, 127.578, 124.4807, 143.6616), pacing(18344, 153.0628, 6.559, 6.960757, 8.1929, 139.3529, 138.9466, 143.6625)],
  ['steady-half', 1, pacing(10315, 85.982, 11.5907, 12.5132, 248.4575, 62.2052, 56.0311, 79.9156), pacing(10314, 86.1521, 11.5907, 12.513031, 24.4925, 72.5421, 71.2773, 79.9167)],
  ['memory-heavy', 1, pacing(20913, 174.3345, 5.7395, 5.787988, 10.548, 171.3636, 171.3401, 172.7716), pacing(20912, 174.3415, 5.7395, 5.7879, 7.8738, 172.0351, 172.0256, 172.7742)],
  ['steady-full', 3, pacing(18313, 152.658, 6.5652, 7.062428, 8.374, 137.4903, 137.0574, 141.5944), pacing(18312, 152.657, 6.5652, 7.062434, 8.374, 137.4903, 137.0572, 141.5942)],
])('%s, run %d', (workload, run, withFirst, without) => {
  test.each([['with the first frame', all, withFirst], ['without it', rest, without]] as const)('frame pacing %s', (_, { of }, expected) => {
    const got = (path: string) => of(workload, run, path);
    expect(got('frames/')).toBe(expected.frames);
    for (const [path, value] of [
      ['frame_rate/average', expected.average], ['frame_rate/slowest-frames', expected.slowestFrames], ['frame_rate/slowest-time', expected.slowestTime],
      ['frame_rate/p1-rate', expected.p1], ['frame_rate/p99-time', 1000 / expected.p99],
    ] as const) expect(got(path), path).toBeCloseTo(value, 3);
    for (const [path, value] of [['frame_time/p50', expected.p50], ['frame_time/p99', expected.p99], ['frame_time/longest', expected.longest]] as const) expect(got(path), path).toBeCloseTo(value, 5);
  });
});

test('three of the nine logs begin with a warm-up, and each of them says so where no rule does', () => {
  const silent = read('');
  expect(silent.findings.filter((f) => f.code === 'log-warm-up').map((f) => f.place.file.split('/').at(-1))).toEqual(['memory-heavy-run1-frames.csv', 'steady-full-run1-frames.csv', 'steady-half-run1-frames.csv']);
  expect([...all.findings, ...rest.findings].filter((f) => f.code === 'log-warm-up')).toEqual([]);
  const ruled = read('      skip: warm-up\n');
  for (const w of workloads) for (const run of [1, 2, 3]) expect(ruled.of(w, run, 'frames/'), `${w} ${run}`).toBe((run === 1 ? rest : all).of(w, run, 'frames/'));
});
