// Logs of a size that nothing could hold as objects, read by processes with little memory.
import { spawnSync } from 'node:child_process';
import { closeSync, mkdirSync, openSync, writeFileSync, writeSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { scratch } from '../files/scratch.js';
import { duckdb } from './duckdb.js';

const dist = resolve(import.meta.dirname, '../../dist');

/** `row` gives the line of each sample; written by ten thousand. */
function written(path: string, heading: string, rows: number, row: (i: number) => string): void {
  const fd = openSync(path, 'w');
  writeSync(fd, `${heading}\n`);
  for (let from = 0; from < rows; from += 10_000) writeSync(fd, Array.from({ length: Math.min(10_000, rows - from) }, (_, i) => `${row(from + i)}\n`).join(''));
  closeSync(fd);
}

function episode(record: string): string {
  const data = join(scratch(), 'data');
  mkdirSync(join(data, 'long'), { recursive: true });
  writeFileSync(join(data, 'long/episode.yaml'), record);
  return data;
}

/** The facts and findings of `check --json` in a process with so many megabytes for objects and strings. */
function check(data: string, heap: number): { findings: { code: string; message: string }[]; readings: number } {
  const { status, stdout, stderr } = spawnSync(process.execPath, [`--max-old-space-size=${heap}`, join(dist, 'cli.js'), 'check', '--json', '--data', data, '--no-cache'], { encoding: 'utf8', maxBuffer: 1 << 28 });
  expect([0, 1], stderr.slice(0, 2000)).toContain(status);
  const { episodes } = JSON.parse(stdout) as { episodes: { findings: { code: string; message: string }[]; readings: number }[] };
  return episodes[0]!;
}

const ofStated = (findings: { code: string; message: string }[]) => findings.filter((f) => /stated/.test(f.code) || f.code.startsWith('log-') || f.code.startsWith('record-')).map((f) => `${f.code} ${f.message}`);

test('a frame log of a million rows, in 64 MB', () => {
  const data = episode(`title: Long
layouts: {frames: {frames: {column: ms, phase: load, average: frame_rate/average, low: {frame_rate/low: slowest 1 %}, each: frame_time, skip: 0}}}
logs: [{files: frames.csv, layout: frames, for: {setup: bench}}]
stated:
  - {mean: bench///frame_rate/average/load, is: 100.0 fps}
  - {mean: bench///frame_rate/low/load, is: 95.2 fps}
  - {mean: bench///frame_rate/low/load, is: 95.3 fps}
`);
  // Half of the frames last 9.5 ms and half 10.5: 10 on average; the slowest hundredth all last 10.5, 1000 / 10.5 = 95.238.
  written(join(data, 'long/frames.csv'), 'n,ms', 1_000_000, (i) => `${i},${i % 2 ? '10.500' : '9.500'}`);
  const { findings, readings } = check(data, 64);
  expect(readings).toBe(3);
  expect(ofStated(findings)).toEqual([expect.stringContaining('95.3')]);
});

const sensors = ['core', 'hot-spot', 'memory', 'board', 'plug', 'inlet', 'outlet', 'pump', 'fan', 'rail'];
/** In hundredths. */
const sample = (i: number, k: number): number => 4000 + ((i * 7 + k * 13) % 501);

/** A day at ten samples a second, or a part of it. */
function sensorLog(path: string, rows: number): void {
  written(path, ['t', ...sensors].join(','), rows, (i) => `${(i / 10).toFixed(1)},${sensors.map((_, k) => (sample(i, k) / 100).toFixed(2)).join(',')}`);
}

test('a sensor log of a day at ten samples a second, 52 MB, in 64 MB', () => {
  const [from, to] = [36_005, 828_005];
  const mean = (k: number): string => {
    let sum = 0n;
    for (let i = from; i < to; i++) sum += BigInt(sample(i, k));
    const hundredths = (2n * sum * 100n + BigInt(to - from)) / (2n * BigInt(to - from));
    return `${hundredths / 10_000n}.${String(hundredths % 10_000n).padStart(4, '0').slice(0, 2)}`;
  };
  const data = episode(`title: Long
parts: {${sensors.map((s) => `${s}: {}`).join(', ')}}
layouts:
  day: {time: {column: t}, windows: {load: 3600.5 s to 82800.5 s}, columns: {${sensors.map((s) => `${s}: temperature/${s} °C`).join(', ')}}}
logs: [{files: day.csv, layout: day, for: {setup: bench}}]
stated:
${sensors.map((s, k) => `  - {mean: bench///temperature/${s}/load, is: ${mean(k)} °C}`).join('\n')}
  - {mean: bench///temperature/core/load, is: 40.49 °C}
`);
  sensorLog(join(data, 'long/day.csv'), 864_000);
  const { findings, readings } = check(data, 64);
  expect(readings).toBe(10);
  expect(ofStated(findings)).toEqual([expect.stringContaining('40.49')]);
});

test.each(['our own reader', 'the engine'].filter((by) => duckdb || by !== 'the engine'))('memory does not grow with a log read by %s', (by) => {
  const folder = scratch();
  const script = `
    const [{ LogText }, { readLog }, { LargeFile }, { unit }, fs] = await Promise.all(['logs/log-text.js', 'logs/read-log.js', 'files/large-file.js', 'quantities/index.js'].map((f) => import(${JSON.stringify(`${dist}/`)} + f)).concat(import('node:fs')));
    const place = { file: '', line: 1, column: 1, endLine: 1, endColumn: 1 };
    const at = (name) => ({ name, place });
    const layout = { name: '', place, delimiter: ',', decimalComma: false, skip: 0, under: 0, header: true, missing: new Set(), energies: [], windows: [], phase: 'load', time: { kind: 'elapsed', at: at('t'), unit: unit('s') },
      columns: ${JSON.stringify(sensors)}.map((s) => ({ at: at(s), measure: s, part: '', unit: unit('degC'), take: 'mean' }))${by === 'the engine' ? `, engine: { module: ${JSON.stringify(duckdb)}, least: 0 }` : ''} };
    const { value } = readLog(LogText.open('log.csv', new LargeFile(process.argv[1], fs, 0)), layout);
    console.log(JSON.stringify({ samples: value.rows.reduce((a, b) => a + b), buckets: value.times.length, megabytes: process.resourceUsage().maxRSS / 1024 }));`;
  const [short, long] = [100_000, 800_000].map((rows) => {
    const path = join(folder, `${rows}.csv`);
    sensorLog(path, rows);
    const { stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', script, path], { encoding: 'utf8' });
    expect(stderr).toBe('');
    return JSON.parse(stdout) as { samples: number; buckets: number; megabytes: number };
  });
  expect([short!.samples, long!.samples]).toEqual([100_000, 800_000]);
  expect(Math.max(short!.buckets, long!.buckets)).toBeLessThanOrEqual(16_384);
  // Held whole, 700,000 rows more of eleven numbers would be 62 MB more.
  expect(long!.megabytes - short!.megabytes).toBeLessThan(20);
});
