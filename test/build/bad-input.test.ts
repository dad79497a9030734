// Whatever stands in an episode's folder: a clear finding in its place, nothing built, and what stood before untouched.
import * as fs from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { counts } from '../../pipeline/build.js';
import { place } from '../files/scratch.js';
import { bench, sample } from './sample.js';

const withTable = bench.replace('readings:', 'tables: [readings.csv]\nreadings:');
const header = 'setup,setting,workload,measure,part,phase,run,value,unit\n';
const withLog = bench.replace('readings:', `layouts:
  sensor: {time: {column: t, unit: s}, phases: {column: stage}, columns: {core: temperature/core °C}}
logs:
  - {files: log.csv, layout: sensor, for: {setup: bench, setting: capped, workload: loop}, run: 4}
readings:`);

function log(rows: string[]): string {
  return `t,stage,core\n${rows.join('\n')}\n`;
}

const sound = Array.from({ length: 20 }, (_, i) => `${i},${i < 10 ? 'idle' : 'load'},${i < 10 ? 38 : 60}`);

const bomb = ['a: &a [x, x, x, x, x, x, x, x, x]', ...'bcdefghi'.split('').map((c, i) => `${c}: &${c} [${Array(9).fill(`*${'abcdefgh'[i]}`).join(', ')}]`)].join('\n');

test.each<[string, string, Record<string, string | Uint8Array>, RegExp]>([
  ['broken YAML', 'title: [one\nsetups: {', {}, /episode\.yaml:\d+/],
  ['tabs', 'title: a\nsetups:\n\tbench: Bench\n', {}, /episode\.yaml:3/],
  ['an alias bomb', `title: x\n${bomb}\nreadings: *i\n`, {}, /episode\.yaml:\d+/],
  ['nothing', '', {}, /episode\.yaml:1/],
  ['a list', '- a\n- b\n', {}, /episode\.yaml:1/],
  ['no UTF-8', Buffer.from([0x74, 0x3a, 0x20, 0xff, 0xfe]).toString('latin1'), {}, /episode\.yaml:1/],
  ['a control character', 'title: a\u0001b\n', {}, /episode\.yaml:1/],
  ['a table that is not there', withTable, {}, /episode\.yaml:\d+/],
  ['an empty table', withTable, { 'readings.csv': '' }, /readings\.csv:1/],
  ['a ragged table', withTable, { 'readings.csv': `${header}bench,stock,loop,temperature,core,load,4,67\n` }, /readings\.csv:2/],
  ['a table in another encoding', withTable, { 'readings.csv': Buffer.from(`${header}bench,stock,loop,temperature,core,load,4,67,\u00b0C\n`, 'latin1') }, /readings\.csv:2/],
  ['no number', withTable, { 'readings.csv': `${header}bench,stock,loop,temperature,core,load,4,NaN,degC\nbench,stock,loop,temperature,core,load,5,inf,degC\n` }, /readings\.csv:2[^]*readings\.csv:3/],
  ['a quote never closed', withTable, { 'readings.csv': `${header}"bench,stock,loop,temperature,core,load,4,67,degC\n` }, /readings\.csv:2/],
  ['a path out of the folder', bench.replace('readings:', 'tables: [../other/readings.csv]\nreadings:'), {}, /episode\.yaml:\d+/],
  ['an absolute path', bench.replace('readings:', 'tables: [/etc/passwd]\nreadings:'), {}, /episode\.yaml:\d+/],
  ['a log that is not there', withLog, {}, /episode\.yaml:\d+/],
  ['an empty log', withLog, { 'log.csv': '' }, /log\.csv:1|episode\.yaml:\d+/],
  ['a log with no finite number', withLog, { 'log.csv': log(sound.map((r) => r.replace(/,\d+$/, ',NaN'))) }, /log\.csv:\d+|episode\.yaml:\d+/],
  ['a script that is not there', bench.replace('readings:', 'script: script.md\nreadings:'), {}, /episode\.yaml:\d+/],
])('%s', async (_name, record, files, where) => {
  const s = sample({ bench });
  await s.build();
  const before = s.outputs();
  fs.writeFileSync(join(s.data, 'bench/episode.yaml'), record, record.includes('\xff') ? 'latin1' : 'utf8');
  for (const [name, content] of Object.entries(files)) place(s.data, `bench/${name}`, content);
  const built = await s.build();
  const errors = built.examined[0]!.findings.filter((f) => counts(f, 'error'));
  expect(errors.map((f) => `${f.place.file}:${f.place.line} ${f.message}`).join('\n')).toMatch(where);
  for (const f of errors) {
    expect([f.code, f.place.column > 0, f.message.length > 10]).toEqual([expect.stringMatching(/^[a-z][a-z-]+$/), true, true]);
    expect(f.place.file.startsWith('data/bench/')).toBe(true);
  }
  expect(built.published).toBeUndefined();
  expect(s.outputs()).toEqual(before);
});

test('a link that leaves the folder is not followed', async () => {
  const s = sample({ bench: withTable });
  place(s.folder, 'secret.csv', `${header}bench,stock,loop,temperature,core,load,4,67,degC\n`);
  fs.symlinkSync(join(s.folder, 'secret.csv'), join(s.data, 'bench/readings.csv'));
  const { examined } = await s.check();
  expect(examined[0]!.findings.filter((f) => f.severity === 'error').map((f) => f.message).join()).toMatch(/link that leaves the episode folder/);
});

test('a log that stops in the middle of a row is told at that row', async () => {
  const s = sample({ bench: withLog });
  const text = log(sound).trimEnd().slice(0, -5);
  place(s.data, 'bench/log.csv', text);
  const { examined } = await s.check();
  expect(examined[0]!.findings.map((f) => `${f.place.file}:${f.place.line}`)).toContain(`data/bench/log.csv:${text.split('\n').length}`);
});

test('a folder named like a record, and a record that is a folder', async () => {
  const s = sample({ bench });
  fs.mkdirSync(join(s.data, 'odd/episode.yaml'), { recursive: true });
  const { examined } = await s.check();
  expect(examined.find((e) => e.id === 'odd')!.findings.map((f) => [f.code, f.message])).toEqual([['record-unreadable', expect.stringMatching(/a folder, not a file/)]]);
});

test('markup in names, titles and texts comes out as text', async () => {
  const evil = '<script>alert(1)</script><img src=x onerror=alert(1)>&"\'';
  const quoted = JSON.stringify(evil);
  const record = bench
    .replace('title: Bench notes', `title: ${quoted}\nsummary: ${quoted}\nmethod: [${quoted}]\ndisclosures: [${quoted}]`)
    .replace('name: Open bench', `name: ${JSON.stringify('<b onload="x">B</b>')}`)
    .replace('name: Power cap', `name: ${JSON.stringify('</svg><script>')}`);
  const s = sample({ bench: record });
  const built = await s.build({ draft: true });
  expect(built.published).toBeDefined();
  for (const [name, text] of Object.entries(s.outputs()).filter(([n]) => /\.(html|svg)$/.test(n))) {
    expect(text.match(/<script[^>]*>(?!\s*\{)[^<]*alert|<img src=x|<b onload|<\/svg><script>/g), name).toBeNull();
  }
});

test('a very long title or name is told, never drawn over the edge', async () => {
  const s = sample({ bench: bench.replace('name: Open bench', `name: ${'Exceedingly long name of a bench '.repeat(12)}`) });
  const { examined } = await s.check();
  expect(examined[0]!.findings.filter((f) => f.severity === 'error').length).toBeGreaterThan(0);
});
