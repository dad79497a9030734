// What is said of windows that are not steady, against figures worked out by hand.
import { describe, expect, test } from 'vitest';
import { runChecks } from '../../pipeline/checks/index.js';
import { explain } from '../../pipeline/facts/index.js';
import { readRecord } from './read-example.js';

const record = (window: string, steady = '{change: 1 K, within: 60 s}', runs = 1): string => `title: T
setups: {bench: {name: Open bench}}
workloads: {scene: {name: Test scene}}
layouts:
  log: {time: {column: t, unit: s}, phase: load, windows: {load: ${window}}, steady: ${steady}, columns: {core: temperature/core °C}}
logs:
${Array.from({ length: runs }, (_, i) => `  - {files: run-${i + 1}.csv, layout: log, for: {setup: bench, workload: scene}, run: "${i + 1}"}`).join('\n')}
`;

const csv = (seconds: number, value: (t: number) => number): string => `t,core\n${Array.from({ length: seconds }, (_, t) => `${t},${(value(t) + 0.2 * Math.cos(3 * t)).toFixed(2)}`).join('\n')}\n`;
/** From 35 towards 75 °C with a time constant of 60 s. */
const warming = (t: number): number => 75 - 40 * Math.exp(-t / 60);

function said(text: string, files: Record<string, string>): { code: string; message: string; derivation?: string }[] {
  const { episode, facts, findings } = readRecord(text, files);
  return runChecks(episode, facts, findings).filter((f) => /steady/.test(f.code));
}

describe('never steady', () => {
  test('how far off it still was: 40 K · e^(−2) = 5.4 K after two time constants, and it rose by 40·(e^(−1) − e^(−2)) = 9.3 K in the last one', () => {
    const [one, ...rest] = said(record('steady'), { 'run-1.csv': csv(121, warming) });
    expect(rest).toEqual([]);
    expect(one!.message).toMatch(/^Core temperature, load \(Open bench, Test scene\): never steady in run 1 \(at most 1 K in 60 s\); it rose by 9\.[0-4]\d K in the last 60 s, and it was still 5\.[345] K below where it was heading \((74\.9|75\.[01]) °C, time constant (59\.\d|60\.\d) s\)\. Its end was averaged instead$/);
    expect(one!.derivation).toMatch(/^7[45]\.\d °C − (39\.9|40\.[01]) K · e\^\(−t\/\d\d\.\d s\), from samples that count as \d+(\.\d)? independent ones; at 95 % the final value is 7[45]\.\d to 7[45]\.\d °C, the time constant (58|59)\.\d to (60|61)\.\d s$/);
  });

  test('of several runs the one that was farthest off', () => {
    const [one] = said(record('steady', undefined, 3), { 'run-1.csv': csv(161, warming), 'run-2.csv': csv(121, warming), 'run-3.csv': csv(600, warming) });
    expect(one!.message).toMatch(/never steady in runs 1 and 2 \(at most 1 K in 60 s\); in run 2 it rose by 9\.\d+ K .* The ends of the two runs were averaged instead$/);
  });

  test('cooling counts as well', () => {
    const [one] = said(record('steady'), { 'run-1.csv': csv(121, (t) => 35 + 40 * Math.exp(-t / 60)) });
    expect(one!.message).toMatch(/it fell by 9\.\d+ K in the last 60 s, and it was still 5\.\d K above where it was heading \((34\.9|35\.[01]) °C/);
  });

  test('a phase shorter than the span', () => {
    const [one] = said(record('steady', '{change: 1 K, within: 5 min}'), { 'run-1.csv': csv(121, warming) });
    expect(one!.message).toMatch(/never steady in run 1 \(at most 1 K in 5 min\); the phase lasts 120 s, shorter than that span; it was still 5\.\d K below/);
  });

  test('a straight rise heads for anything', () => {
    const [one] = said(record('steady'), { 'run-1.csv': csv(200, (t) => 35 + t / 10) });
    expect(one!.message).toMatch(/it rose by [56]\.\d\d K in the last 60 s(\. Its end|, and where it was heading cannot be told yet)/);
  });
});

describe('a window given by hand', () => {
  test('that the rule agrees with is left alone; one that begins too early is told with what the rule gives', () => {
    const files = { 'run-1.csv': csv(600, warming) };
    expect(said(record('last 120 s'), files)).toEqual([]);
    // From 30 s on the mean is 75 − 40·60·(e^(−0.5) − e^(−10))/570 = 72.4; from where it moves by 1 K in 60 s (60·ln(40·(1−e^(−1))) = 194 s) it is 75 − 2400·e^(−3.23)/406 = 74.8.
    expect(said(record('from 30 s'), files)[0]!.message).toMatch(/the window given by hand is not steady in run 1 \(at most 1 K in 60 s\); it is so from 19\d s after the phase began on, which gives 74\.8 instead of 72\.4 °C$/);
  });
});

test('explain tells what a window’s samples are worth and where it came from', () => {
  const { facts } = readRecord(record('steady'), { 'run-1.csv': csv(600, warming) });
  expect(String(explain(facts, 'raw:bench//scene/temperature/core/load#1'))).toMatch(/from 40\d samples: these count as \d+(\.\d+)? independent ones; standard uncertainty of their mean 0\.\d+ K; steady from 19\d s of the phase on \(at most 1 K in 60 s, by temperature\/core\)/);
});
