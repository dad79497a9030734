import { spawnSync } from 'node:child_process';
import * as fs from 'node:fs';
import { join } from 'node:path';
import Ajv from 'ajv/dist/2020.js';
import { parse } from 'yaml';
import { expect, test } from 'vitest';
import { exitCodes } from '../../pipeline/exit-codes.js';
import { place, scratch } from '../files/scratch.js';
import { cli, run } from './run.js';

test('a new record is sound as it stands, and is never written over another', () => {
  const folder = scratch();
  const made = run(folder, ['new', 'two-coolers', '--setups', 'Cooler A, Cooler B', '--settings', 'Stock', '--date', '2026-02-03']);
  expect([made.status, made.stdout]).toEqual([0, 'Written: data/two-coolers/episode.yaml\nFill it in, then: figureproof check two-coolers\n']);
  const text = fs.readFileSync(join(folder, 'data/two-coolers/episode.yaml'), 'utf8');
  expect(parse(text)).toMatchObject({ title: 'Two coolers', date: expect.anything(), setups: { 'cooler-a': { name: 'Cooler A' }, 'cooler-b': { name: 'Cooler B' } } });
  const { status, stdout } = run(folder, ['check', '--json']);
  const { episodes } = JSON.parse(stdout) as { episodes: { findings: { severity: string; message: string }[] }[] };
  expect([status, episodes[0]!.findings.filter((f) => f.severity === 'error')]).toEqual([0, []]);
  const again = run(folder, ['new', 'two-coolers']);
  expect([again.status, again.stderr]).toEqual([exitCodes.usage.code, expect.stringMatching(/is there already/)]);
  expect(fs.readFileSync(join(folder, 'data/two-coolers/episode.yaml'), 'utf8')).toBe(text);
  expect(run(folder, ['new', 'two-coolers', '--print']).stdout).toMatch(/^title: Two coolers$/m);
});

test('what is to be typed next works as it is told, whatever the folder is called', () => {
  const folder = scratch({ 'x.csv': tidy });
  for (const data of ['.', 'my own', "it's"]) {
    const { stdout } = run(folder, ['new', 'bench', '--data', data]);
    const next = /^Fill it in, then: figureproof (.*)$/m.exec(stdout)![1]!;
    expect(spawnSync('sh', ['-c', `"$0" "$1" ${next}`, process.execPath, cli], { cwd: folder, encoding: 'utf8' }).stdout, next).toMatch(/^bench /m);
  }
  expect(run(folder, ['import', 'x.csv', '--episode', 'wholly-other', '--data', 'my own'])).toMatchObject({ status: exitCodes.usage.code, stderr: expect.stringContaining("begin one with: figureproof new wholly-other --data 'my own'") });
});

test.each(['../out', 'a/b', '.hidden', '', '-x '])('%j names no episode', (id) => {
  const folder = scratch();
  expect(run(folder, ['new', '--', id]).status).toBe(exitCodes.usage.code);
  expect(fs.readdirSync(folder)).toEqual([]);
});

test.each(['2026-02-30', '2026-13-01', '14.3.2026', 'today'])('%s is no day', (date) => {
  const { status, stderr } = run(scratch(), ['new', 'x', '--date', date]);
  expect([status, stderr]).toEqual([exitCodes.usage.code, expect.stringContaining('is no day')]);
});

const tidy = 'setup,setting,workload,measure,part,phase,run,value,unit\nopen-bench,stock,test-scene,temperature,core,load,1,61,degC\n';
const log = `elapsed_s,stage,core_temp_c,power_w\n${Array.from({ length: 40 }, (_, i) => `${i},${i < 20 ? 'idle' : 'load'},${i < 20 ? 35 : 60},${i < 20 ? 12 : 200}`).join('\n')}\n`;

test('a table is copied into the episode and named in its record', () => {
  const folder = scratch({ 'readings.csv': tidy });
  run(folder, ['new', 'bench']);
  const { status, stdout, stderr } = run(folder, ['import', 'readings.csv', '--episode', 'bench', '--append']);
  expect([status, stdout]).toEqual([0, 'tables: [readings.csv]\n']);
  expect(stderr).toContain('Copied to data/bench/readings.csv');
  expect(parse(fs.readFileSync(join(folder, 'data/bench/episode.yaml'), 'utf8'))).toMatchObject({ tables: ['readings.csv'] });
  const { episodes } = JSON.parse(run(folder, ['check', '--json']).stdout) as { episodes: { readings: number }[] };
  expect(episodes[0]!.readings).toBe(1);
  // What is there stays: neither the file nor the record is written over.
  const twice = run(folder, ['import', 'readings.csv', '--episode', 'bench']);
  expect([twice.status, twice.stderr]).toEqual([exitCodes.usage.code, expect.stringMatching(/is there already/)]);
  place(folder, 'data/bench/more.csv', tidy);
  expect(run(folder, ['import', 'data/bench/more.csv', '--append']).status).toBe(0);
  const record = join(folder, 'data/bench/episode.yaml');
  expect(parse(fs.readFileSync(record, 'utf8'))).toMatchObject({ tables: ['readings.csv', 'more.csv'] });
  fs.writeFileSync(record, fs.readFileSync(record, 'utf8').replace(/^tables: .*/m, 'tables: [readings.csv,\n  more.csv]'));
  place(folder, 'data/bench/third.csv', tidy);
  const clash = run(folder, ['import', 'data/bench/third.csv', '--append']);
  expect([clash.status, clash.stderr]).toEqual([exitCodes.usage.code, expect.stringMatching(/has "tables" already[^]*tables: \[third\.csv\]/)]);
});

test('a log is told as a layout and a line, and the record then reads it', () => {
  const folder = scratch();
  run(folder, ['new', 'bench']);
  place(folder, 'data/bench/logs/run-1.csv', log);
  const told = run(folder, ['import', 'data/bench/logs/run-1.csv', '--setup', 'open-bench', '--setting', 'stock', '--workload', 'test-scene', '--run', '1', '--append']);
  expect(told.status).toBe(0);
  expect(told.stdout).toMatch(/^layouts:[^]*core_temp_c: temperature\/core °C[^]*^logs:\n.*logs\/run-1\.csv/m);
  const { episodes } = JSON.parse(run(folder, ['check', '--json']).stdout) as { episodes: { readings: number; findings: { severity: string; message: string }[] }[] };
  expect(episodes[0]!.findings.filter((f) => f.severity === 'error')).toEqual([]);
  expect(episodes[0]!.readings).toBe(4);
});

test('trouble and mistakes of an import', () => {
  const folder = scratch({ 'empty.csv': '', 'readings.csv': tidy });
  expect(run(folder, ['import', 'nothing.csv'])).toMatchObject({ status: exitCodes.trouble.code, stderr: 'Cannot read nothing.csv: it is not there (ENOENT).\n' });
  expect(run(folder, ['import', 'empty.csv'])).toMatchObject({ status: exitCodes.findings.code, stderr: expect.stringMatching(/The file is empty/) });
  expect(run(folder, ['import', 'readings.csv', '--append'])).toMatchObject({ status: exitCodes.usage.code, stderr: expect.stringMatching(/needs a record/) });
  run(folder, ['new', 'bench']);
  expect(run(folder, ['import', 'readings.csv', '--episode', 'bnch'])).toMatchObject({ status: exitCodes.usage.code, stderr: expect.stringMatching(/did you mean "bench"/) });
});

test('the schema is JSON Schema 2020-12 and admits the demo', () => {
  const { status, stdout } = run(scratch(), ['schema']);
  expect(status).toBe(0);
  const validate = new (Ajv as unknown as typeof Ajv.default)({ strict: false, formats: { date: true } }).compile(JSON.parse(stdout) as object);
  const data = join(import.meta.dirname, '../../data');
  for (const id of fs.readdirSync(data).filter((n) => fs.existsSync(join(data, n, 'episode.yaml')))) {
    expect([id, validate(parse(fs.readFileSync(join(data, id, 'episode.yaml'), 'utf8'))), validate.errors]).toEqual([id, true, null]);
  }
});
