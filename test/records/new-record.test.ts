// A new record reads without a finding, and so does what its comments hold once they are taken away.
import { expect, test } from 'vitest';
import { newRecord } from '../../pipeline/records/index.js';
import { readEpisode } from './reading.js';

const options = { title: 'Two coolers: "quiet", #2', setups: ['Open bench', 'Varrow 12, small', 'Öl'], settings: ['Stock', 'Power limit 80 %'], workload: 'Test scene', date: '2026-03-14' };

test.each([['the least', { title: 'T' }], ['with names of every kind', options]])('%s', (_, given) => {
  const { episode, findings } = readEpisode(newRecord(given));
  expect(findings.map((f) => `${f.place.line}:${f.place.column} ${f.message}`)).toEqual([]);
  expect(episode!.title).toBe(given.title);
});

test('with its comments taken away it is a record with values', () => {
  const text = newRecord(options);
  const full = text.split('\n').map((l) => (/^ *# +(- |temperature|power|frame|noise|room|limit-80|undervolt)/.test(l) ? l.replace('# ', '') : l)).join('\n');
  const { episode, findings } = readEpisode(full);
  expect(findings.map((f) => `${f.place.line}:${f.place.column} ${f.message}`)).toEqual([]);
  expect(episode!.setups.size).toBe(3);
  expect([...episode!.settings.keys()]).toEqual(['stock', 'power-limit-80', 'limit-80', 'undervolt']);
  // Three setups at two settings, each with the room and five values of three runs; idle stands once a setup and setting.
  expect(episode!.readings.filter((r) => !r.constant).length).toBe(3 * 2 * 6 * 3);
  expect(episode!.stated.map((s) => s.operands)).toEqual([['open-bench/stock/test-scene/temperature/core/load', 'open-bench/stock//temperature/core/idle']]);
});

test('it names no file that may not be there', () => {
  expect(newRecord(options)).not.toMatch(/\$schema|\.\.\//);
});
