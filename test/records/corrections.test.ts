// Corrections of a published episode: all their fields, and what cannot be one.
import { describe, expect, test } from 'vitest';
import { marked, readEpisode, spanOf } from './reading.js';

const record = (corrections: string) => `title: T
setups: {bench: {}}
workloads: [scene]
parts: [core]
readings:
  - {for: {setup: bench, workload: scene}, temperature/core: {idle: 30 30 30 °C, load: 51 51 51 °C}}
corrections:
${corrections}
`;

test('every field', () => {
  const { episode, findings } = readEpisode(record('  - {said: 25 K, fact: "rise:bench//scene/temperature/core/load~workload=,phase=idle", is: 21, where: 3:12, date: 2026-03-20, reason: read off the wrong line}'));
  expect(findings).toEqual([]);
  const [c] = episode!.corrections;
  expect(c).toMatchObject({ said: '25 K', fact: 'rise:bench//scene/temperature/core/load~workload=,phase=idle', where: '3:12', date: '2026-03-20', reason: 'read off the wrong line' });
  // A rise of temperatures in °C is a difference, in kelvins.
  expect([c!.is!.quantity.value.toString(), c!.is!.quantity.unit.id]).toEqual(['21', 'K']);
});

test('a key with fields left out is completed, and nothing more than these is needed', () => {
  const { episode, findings } = readEpisode(record('  - {said: fifty, fact: temperature/core/load, where: thumbnail}'));
  expect(findings).toEqual([]);
  expect(episode!.corrections.map((c) => [c.fact, c.where, c.is, c.date, c.reason])).toEqual([['bench//scene/temperature/core/load', 'thumbnail', undefined, undefined, undefined]]);
});

test('a record without any has none', () => {
  expect(readEpisode(record('')).episode!.corrections).toEqual([]);
});

test.each(['0:05', '3:12', '75:40', '1:02:03', 'thumbnail', 'description', 'the 2nd chart'])('where: %s', (where) => {
  expect(readEpisode(record(`  - {said: 25 K, fact: temperature/core/load, where: "${where}"}`)).findings).toEqual([]);
});

describe('what cannot be', () => {
  test.each([
    ['  - {said: 25 K, fact: temperature/core/load, where: ‹3:72›}', 'no time mark'],
    ['  - {said: 25 K, fact: temperature/core/load, where: ‹1:02:3›}', 'no time mark'],
    ['  - {said: 25 K, fact: temperature/core/load, where: 3:12, ‹dat›: 2026-03-20}', 'did you mean date'],
    ['  - {said: 25 K, fact: temperature/core/load, where: 3:12, date: ‹20.3.2026›}', 'write 2026-03-20'],
    ['  - {said: 25 K, fact: temperature/core/load, is: ‹21 Kelvinn›, where: 3:12}', 'nknown unit'],
  ])('%s', (text, says) => {
    const { text: plain, spans } = marked(record(text));
    const { findings } = readEpisode(plain);
    expect(findings.map(spanOf)).toEqual(spans);
    expect(findings[0]!.message).toContain(says);
  });
  test.each(['said', 'fact', 'where'])('one without %s', (field) => {
    const all: Record<string, string> = { said: '25 K', fact: 'temperature/core/load', where: '3:12' };
    delete all[field];
    const { findings } = readEpisode(record(`  - {${Object.entries(all).map(([k, v]) => `${k}: "${v}"`).join(', ')}}`));
    expect(findings.map((f) => f.code)).toEqual(['record-missing']);
    expect(findings[0]!.message).toContain(`"${field}"`);
  });
});
