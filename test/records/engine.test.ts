// A record that asks for the engine: an error where it is not installed, with the command that installs it.
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { enginePackage } from '../../pipeline/logs/index.js';
import { duckdbPaths } from '../../pipeline/files/index.js';
import { marked, readEpisode, spanOf } from './reading.js';

const root = resolve(import.meta.dirname, '../..');
const record = (engine: string, layout = '{time: {column: t}, phase: load, columns: {c: temperature/core °C}}') => marked(`title: T\nlayouts: {a: ${layout}}\nlogs:\n  - {files: a.csv, layout: a, for: {setup: bench}, engine: ${engine}}\n`);
const files = { 'a.csv': 't,c\n0,40\n1,41\n' };
const told = ({ text, spans }: ReturnType<typeof marked>) => {
  const { findings } = readEpisode(text, files);
  expect(findings.map(spanOf)).toEqual(spans);
  return findings.map((f) => `${f.code} ${f.message}`);
};

test('it is not installed', () => expect(told(record('‹duckdb›'))).toEqual([expect.stringMatching(/^log-engine DuckDB is not installed; npm install --no-save @duckdb\/node-api@/)]));
test('another engine', () => expect(told(record('‹duck›'))).toEqual([expect.stringContaining('duckdb')]));
test('a frame log', () => expect(told(record('‹duckdb›', '{frames: {column: c, phase: load, average: frame_rate, skip: 0}}'))).toEqual([expect.stringMatching(/^record-form Engine is for sensor logs/)]));

test('the version is the same wherever it is said, and npm ci does not install it', () => {
  const read = (name: string): string => readFileSync(join(root, name), 'utf8');
  const [pack] = enginePackage.split(/(?<=.)@/);
  const { peerDependencies, peerDependenciesMeta } = JSON.parse(read('package.json')) as { peerDependencies: Record<string, string>; peerDependenciesMeta: unknown };
  expect(Object.entries(peerDependencies).map((e) => e.join('@'))).toEqual([enginePackage]);
  expect(peerDependenciesMeta).toEqual({ [pack!]: { optional: true } });
  expect(Object.keys((JSON.parse(read('package-lock.json')) as { packages: object }).packages).filter((p) => p.includes('duckdb'))).toEqual([]);
  for (const file of ['.ci/run', 'README.md']) expect(read(file)).toContain(enginePackage);
});

test('it is looked for in the folder that DUCKDB names first, then beside the program, then where one works', () => {
  const paths = duckdbPaths({ DUCKDB: '/a' }, '/b/c');
  expect(paths[0]).toBe('/a/node_modules/@duckdb/node-api/package.json');
  expect(paths).toContain(join(root, 'node_modules/@duckdb/node-api/package.json'));
  expect(paths).toContain('/b/node_modules/@duckdb/node-api/package.json');
});
