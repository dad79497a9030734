// Whatever names of files a command tells, they open from the folder that it was started in.
import * as fs from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { one } from '../build/sample.js';
import { scratch } from '../files/scratch.js';
import { run } from './run.js';

const record = `${one.replace('is: 29 K', 'is: 31 K')}tables: [more/table.csv]
script: script.md
layouts:
  sensor: {time: {column: t, unit: s}, phase: load, columns: {core: temperature/core °C}}
logs:
  - {files: logs/lost.csv, layout: sensor, for: {setup: bench, setting: capped, workload: loop}}
accept: [{finding: room-differs, subject: none, reason: known}]
severities: {log-column: warning}
`;
const files = {
  'episode.yaml': record,
  'more/table.csv': 'setup,setting,workload,measure,part,phase,run,value,unit\nbench,stock,loop,temperature,hotspot,load,1,80,degC\nbench,stock,loop,temperature,hotspot,load,2,71,degC\n',
  'logs/lost.csv': 't,cores\n0,1\n1,1\n',
  'script.md': 'On the bench at stock the core runs at 76 degrees under load.\n',
};

/** Every `NAME:LINE` of a text, and every `file` of a JSON. */
function named(text: string): string[] {
  if (!/^[[{]/.test(text)) return [...text.matchAll(/(?:^| )([^\s:(]+\.(?:yaml|csv|md)):\d/gm)].map((m) => m[1]!);
  const found: string[] = [];
  JSON.parse(text, (key, value: unknown) => {
    if (key === 'file') found.push(String(value));
    return value;
  });
  return found;
}

test.each([
  ['the folder of the episodes', 'own/data', '.'],
  ['a folder above', '.', 'own/data'],
  ['elsewhere, by a whole path', 'other', undefined],
])('from %s', (_name, from, given) => {
  const folder = scratch(Object.fromEntries(Object.entries(files).map(([name, text]) => [`own/data/bench/${name}`, text])));
  const data = join(folder, 'own/data');
  const cwd = join(folder, from);
  fs.mkdirSync(cwd, { recursive: true });
  const option = ['--data', given ?? data];
  const script = join(data, 'bench/script.md');
  const fact = 'rise:bench/stock/loop/temperature/core/load~workload=,phase=idle';
  const commands = [
    ['check'], ['check', '--json'], ['explain', fact], ['explain', fact, '--json'], ['explain', 'stated-value'], ['explain', 'stated-value', '--json'],
    ['proof', script], ['proof', script, '--json'], ['proof', script, '--sarif'],
  ];
  for (const command of commands) {
    const { stdout, stderr } = run(cwd, [...command, ...option]);
    const sarif = command.includes('--sarif') ? [...stdout.matchAll(/"uri": "(?!https?:)(?:file:\/\/)?([^"]+)"/g)].map((m) => m[1]!) : [];
    const told = [...named(stdout), ...sarif];
    expect(told.length, `${command.join(' ')}: ${stdout}${stderr}`).toBeGreaterThan(0);
    expect(told.filter((file) => !fs.existsSync(resolve(cwd, file))), command.join(' ')).toEqual([]);
    // By the shortest way: below the working folder none goes up first.
    if (given !== undefined) expect(told.filter((file) => file.startsWith('..')), command.join(' ')).toEqual([]);
    // What a message says of a log is read in any folder, and stands in what is built.
    if (command[0] === 'check') expect(stdout).toMatch(/(?:^  |": ")logs\/lost\.csv has no column/m);
    expect(stdout).not.toContain('data/bench/logs/lost.csv has');
  }
});
