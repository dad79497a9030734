// What the sheets of instruments promise, as they print it.
import { describe, expect, test } from 'vitest';
import { readAccuracy, readLevel } from '../../pipeline/records/accuracy.js';
import { readEpisode } from './reading.js';

const read = (text: string): string | undefined => {
  const found = readAccuracy(text);
  if (!found || 'why' in found) return found && `? ${found.why}`;
  return [`${found.share.toString()}`, ...found.constant.map((q) => `${q.value.toString()} ${q.unit.id}`), `${found.digits.toString()} digits`].join(', ');
};

describe('limits of error', () => {
  test.each([
    ['±1 %', '0.01, 0 digits'],
    ['+/- 0.5%', '0.005, 0 digits'],
    ['±0.5 °C', '0, 0.5 K, 0 digits'],
    ['± 0.9 °F', '0, 0.9 delta-degF, 0 digits'],
    ['±1.4 dB', '0, 1.4 dB(A), 0 digits'],
    ['±(0.5 % + 2 digits)', '0.005, 2 digits'],
    ['±(0.5% of reading + 2 counts)', '0.005, 2 digits'],
    ['±0.3 % ±1 W', '0.003, 1 W, 0 digits'],
    ['±1 % of range 3000 W', '0, 30 W, 0 digits'],
    ['±0.5 % of full scale 10 L/min', '0, 0.05 L/min, 0 digits'],
    ['±(0.4 % of reading + 0.1 % of 600 W + 1 digit)', '0.004, 0.6 W, 1 digits'],
    ['not stated', undefined],
    ['unknown', undefined],
    ['', undefined],
  ])('%s', (text, limits) => expect(read(text)).toBe(limits));

  test.each([
    ['class 2', 'no number in "class 2"'],
    ['good', 'is no limit of error'],
    ['±1 % of range', 'does not say which range'],
    ['±1.2.3 %', 'is not a number'],
    ['±3 parsecs', 'unknown unit "parsecs"'],
  ])('%s is not one', (text, why) => expect(read(text)).toContain(why));

  test.each([['95 %', 0.95], ['99.7%', 0.997], ['k=2', undefined], ['100 %', undefined], ['5 %', undefined]])('level %s', (text, level) => expect(readLevel(text)).toBe(level));
});

const record = (instrument: string): string => `title: T\nsetups: [a, b]\nmeasures: {power: {}}\ninstruments:\n  - {name: meter, measures: [power], ${instrument}}\nreadings:\n  - {for: {setup: a}, power: {load: 1 2 3 W}}\n  - {for: {setup: b}, power: {load: 1 2 3 W}}\n`;

test('an instrument as a record has it', () => {
  const { episode, findings } = readEpisode(record('resolution: 0.1 W, accuracy: ±(1 % + 2 digits), level: 95 %, setups: [a], one per: setup'));
  expect(findings).toEqual([]);
  expect(episode!.instruments[0]).toMatchObject({ accuracy: '±(1 % + 2 digits)', level: 0.95, setups: ['a'], perSetup: true });
});

test.each([
  ['accuracy: better than most', 'is no limit of error'],
  ['accuracy: ±(1 % + 2 digits)', 'state the resolution'],
  ['accuracy: ±1 %, level: sure', 'level of confidence'],
  ['setups: [c]', 'c'],
])('%s is a finding at its place', (instrument, says) => {
  const { findings } = readEpisode(record(instrument));
  expect(findings.map((f) => f.message).join('\n')).toContain(says);
  expect(findings[0]!.place).toMatchObject({ line: 5 });
  expect(findings[0]!.place.column).toBeGreaterThan(30);
});

test('a room to correct to is a temperature', () => {
  expect(readEpisode(`${record('resolution: 0.1 W')}reference room: 21 °C\ndigits: earned\n`).episode).toMatchObject({ referenceRoom: { unit: { id: 'degC' } }, digits: 'earned' });
  expect(readEpisode(`${record('resolution: 0.1 W')}reference room: 21 W\n`).findings.map((f) => f.message)).toEqual(['"21 W" is no temperature; write it like 21 °C']);
});
