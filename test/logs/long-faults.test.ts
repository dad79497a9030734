// Faults of sensors in logs that are held in stretches, and where equal samples follow each other anyway; and, a thousand times, healthy logs.
import { describe, expect, test } from 'vitest';
import { readEpisode } from '../records/reading.js';
import { random } from '../statistics/random.js';

const heading = 't,phase,c,w\n';
/** Ten samples a second; idle is the first tenth. */
function findings(n: number, row: (i: number, phase: string) => readonly [c: string, w: string] | undefined, phases = true): string[] {
  const lines = Array.from({ length: n }, (_, i) => {
    const phase = i < n / 10 && phases ? 'idle' : 'load';
    const cells = row(i, phase);
    return cells && [(i / 10).toFixed(1), phase, ...cells].join(',');
  });
  const record = `title: T\nlayouts:\n  sensors: {time: {column: t}, phases: {column: phase}, columns: {c: temperature/core °C, w: power/board W}}\nlogs:\n  - {files: log.csv, layout: sensors, for: {setup: bench}}\n`;
  return readEpisode(record, { 'log.csv': heading + lines.filter((l) => l !== undefined).join('\n') + '\n' }).findings.map((f) => `${f.place.line} ${f.code}: ${f.message}`);
}

const g = random(5);
const core = (phase: string): string => ((phase === 'idle' ? 35 : 70) + 0.3 * g.normal()).toFixed(1);
const watts = (phase: string): string => ((phase === 'idle' ? 40 : 250) + g.normal()).toFixed(2);
const plain = (_i: number, phase: string): readonly [string, string] => [core(phase), watts(phase)];

describe.each([['sample by sample', 6000], ['in stretches', 100_000]])('%s', (_, n) => {
  const at = n * 0.7;
  // By line: headings, then the samples from 0 on.
  const line = at + 2;

  test('a healthy one', () => expect(findings(n, plain)).toEqual([]));

  test('tenths of a degree that stand still for a minute, and stood still for moments before', () => {
    const told = findings(n, (i, p) => (i >= at && i < at + 600 ? ['70.1', watts(p)] : plain(i, p)));
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/^\d+ log-sensor-sticks: The column "c" says 70\.1 for 60 s from this line on, to the last digit, within load/);
    // Noise says the same number once or twice just before.
    expect(line - Number(told[0]!.split(' ')[0])).toBeOneOf([0, 1, 2, 3]);
  });

  test('what stands still for all of the load', () => {
    expect(findings(n, (_i, p) => (p === 'load' ? ['70.1', watts(p)] : plain(_i, p)))).toEqual([expect.stringMatching(new RegExp(`^${n / 10 + 2} log-sensor-sticks: The column "c"`))]);
  });

  test('watts to kilowatts, in the middle of a stretch', () => {
    for (const off of [0, 3]) {
      expect(findings(n, (i, p) => [core(p), i >= at + off ? (Number(watts(p)) / 1000).toFixed(5) : watts(p)])).toEqual([expect.stringMatching(new RegExp(`^${line + off} log-unit-changes: The column "w" goes from 2\\d\\d[.\\d]* to 0\\.2\\d+ from one line to the next`))]);
    }
  });

  test('Celsius to Fahrenheit', () => {
    expect(findings(n, (i, p) => [i >= at + 3 ? (32 + 1.8 * Number(core(p))).toFixed(1) : core(p), watts(p)])).toEqual([expect.stringMatching(new RegExp(`^${line + 3} log-unit-changes: .*Fahrenheit`))]);
  });

  test('a column that is empty for half a minute, and lines that are missing for as long', () => {
    expect(findings(n, (i, p) => (i >= at && i < at + 300 ? ['', watts(p)] : plain(i, p)))).toEqual([`${line + 300} log-gap: The column "c" has no value for 30.1 s before this line, within load; usually it has one every 0.1 s`]);
    expect(findings(n, (i, p) => (i >= at && i < at + 300 ? undefined : plain(i, p)))).toEqual([`${line} log-gap: No sample for 30.1 s before this line, within load; the log usually has one every 0.1 s`]);
  });

  test('a column that ends before the log', () => {
    expect(findings(n, (i, p) => (i >= at ? ['', watts(p)] : plain(i, p)))).toEqual([expect.stringMatching(new RegExp(`^${n + 1} log-gap: The column "c" has no value for ${(n - at) / 10} s before this line`))]);
  });

  test('a value that is missing now and then is none of it', () => {
    expect(findings(n, (i, p) => (i % 10 === 3 ? ['', watts(p)] : plain(i, p)))).toEqual([]);
  });
});

// Warm-ups to a level, as sensors of many steps and of many kinds of noise tell them: what stands still there is a level between two steps.
test('two hundred healthy logs, from no noise to much, in steps from fine to coarse: none sticks', () => {
  let told = 0;
  // Five has no divisor in common with any of the four cycles: all that they hold is met.
  for (let trial = 0; trial < 1000; trial += 5) {
    const [step, noise, memory, tau] = [[0.1, 0.5, 1][trial % 3]!, [0, 0.1, 0.2, 0.35, 0.5, 0.8, 1.5][trial % 7]!, [0, 0.5, 0.9][trial % 4] ?? 0, 5 + (trial % 11) * 6];
    let e = 0;
    const course = (i: number, phase: string): readonly [string, string] => {
      e = memory * e + Math.sqrt(1 - memory ** 2) * noise * step * g.normal();
      const level = phase === 'idle' ? 35.23 : 70.31 - 35 * Math.exp(-(i - 120) / 10 / tau);
      return [(Math.round((level + e) / step) * step).toFixed(1), watts(phase)];
    };
    told += findings(1200, course).filter((f) => f.includes('sticks')).length;
  }
  expect(told).toBe(0);
});
