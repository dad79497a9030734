// One episode that is wrong in every way a check knows: each check speaks at its marked line, and nothing else is said.
import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { checks, runChecks } from '../../pipeline/checks/index.js';
import { expected, readRecord, told } from './read-example.js';

const folder = resolve(import.meta.dirname, '../episodes/all-wrong');
const read = (name: string) => readFileSync(resolve(folder, name));

test('every check speaks, at the marked lines and nowhere else', () => {
  const record = read('episode.yaml').toString('utf8');
  const logs = readdirSync(resolve(folder, 'logs')).sort().map((name) => `logs/${name}`);
  const { episode, facts, findings } = readRecord(record, Object.fromEntries(['readings.csv', ...logs].map((n) => [n, read(n)])), 'all-wrong');
  const found = runChecks(episode, facts, findings);
  const marked = expected(record, 'data/all-wrong/episode.yaml').flatMap(({ at, codes }) => codes.map((code) => {
    const [name, elsewhere] = code.split('@');
    return `${elsewhere ? `data/all-wrong/${elsewhere}` : at} ${name}`;
  }));
  expect([...new Set(found.map((f) => `${f.place.file}:${f.place.line} ${f.code}`))].sort(), told(found)).toEqual([...new Set(marked)].sort());
  expect(checks.map((c) => c.name).filter((name) => !found.some((f) => f.code === name))).toEqual([]);
});
