// Nine logs of a real card: what a careful reader meets in them must be said unasked.
import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { runChecks } from '../../pipeline/checks/index.js';
import type { Finding } from '../../pipeline/places/index.js';
import { readRecord } from './read-example.js';

const folder = resolve(import.meta.dirname, '../../data/measured-card');
let found: Finding[] = [];

beforeAll(() => {
  const files = Object.fromEntries(readdirSync(resolve(folder, 'logs')).sort().map((n) => [`logs/${n}`, readFileSync(resolve(folder, 'logs', n))]));
  const { episode, facts, findings } = readRecord(readFileSync(resolve(folder, 'episode.yaml'), 'utf8'), files, 'measured-card');
  found = runChecks(episode, facts, findings);
});

test.each([
  ['runs of one workload that disagree', 'runs-disagree', /^server\/stock\/steady-half\/temperature\/core\/load$/, /64\.0, 57\.4, 56\.4/],
  ['idle before run 1 unlike idle before runs 2 and 3', 'idle-unlike', /steady-full\/temperature\/core\/idle$/, /before run 1 .*before runs 2 and 3/],
  ['the clock that falls while power is at its limit', 'clock-gives-way', /steady-full\/frequency\/core\/load$/, /1980.*limit.*three runs; it was held back for 99 % of the time/],
  ['the empty column', 'empty-column', /fan_duty/, /nine logs/],
  ['the missing room temperature', 'room-missing', /^room$/, /room/],
  ['how far idle still was from where it was heading', 'window-not-steady', /steady-half\/temperature\/core\/idle$/, /runs 2 and 3 .*; in run 2 it never was: it fell by 4\.\d\d K in the last 20 s, and it was still 3\.\d K above where it was heading \(36\.\d °C, time constant 26\.\d s\)$/],
  ['idle that has not settled', 'idle-not-settled', /steady-full\/temperature/, /not settled/],
])('%s', (_, code, subject, message) => {
  const [match] = found.filter((f) => f.code === code && subject.test(f.subject ?? ''));
  expect(match, found.map((f) => `${f.code} ${f.subject}`).join('\n')).toBeDefined();
  expect(match!.message).toMatch(message);
});

test('the clock is not said to fall where the power is below its limit, nor runs to disagree that agree', () => {
  expect(found.filter((f) => f.code === 'clock-gives-way').map((f) => f.subject)).toEqual(['server/stock/steady-full/frequency/core/load']);
  expect(found.filter((f) => f.code === 'runs-disagree' && /memory-heavy.*\/load$|steady-full\/temperature/.test(f.subject!))).toEqual([]);
});
