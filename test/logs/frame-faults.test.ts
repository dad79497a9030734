// What may be wrong with a log of frame durations without one cell being wrong; each is a finding at its line, and healthy logs have none.
import { describe, expect, test } from 'vitest';
import { readEpisode } from '../records/reading.js';
import { random } from '../statistics/random.js';

function findings(heading: string, rows: readonly string[], more = '', ended = true): string[] {
  const record = `title: T\nlayouts:\n  steps: {${more}frames: {column: ms, average: frame_rate/average, skip: 0}}\nlogs:\n  - {files: log.csv, layout: steps}\n`;
  return readEpisode(record, { 'log.csv': [heading, ...rows].join('\n') + (ended ? '\n' : '') }).findings.map((f) => `${f.place.line} ${f.severity} ${f.code}: ${f.message}`);
}

const g = random(21);
/** Four thousand frames of 8 to 10 ms, some 36 s. */
const frames = Array.from({ length: 4000 }, () => (8 + 2 * g.uniform()).toFixed(3));
const from = (n: number, other: (said: string) => string): string[] => frames.map((f, i) => (i < n ? f : other(f)));
const stamped = (list: readonly string[], shown = (t: number) => t.toFixed(4)): string[] => {
  let t = 0;
  return list.map((f) => `${shown((t += Number(f) / 1000))},${f}`);
};
const timed = 'time: {column: t, unit: s}, ';

test('a healthy log has none of it, with time stamps and without, fine and coarse ones', () => {
  expect(findings('ms', frames)).toEqual([]);
  expect(findings('t,ms', stamped(frames), timed)).toEqual([]);
  expect(findings('t,ms', stamped(frames, (t) => t.toFixed(0)), timed).filter((f) => !f.includes('log-time-twice'))).toEqual([]);
});

test('a stall is a long frame and no gap', () => {
  const list = frames.with(2000, '4500.000');
  expect(findings('ms', list)).toEqual([]);
  expect(findings('t,ms', stamped(list), timed)).toEqual([]);
});

test('frames that are missing, by the time stamps: at the first line behind them', () => {
  expect(findings('t,ms', stamped(frames).toSpliced(1000, 100), timed)).toEqual([expect.stringMatching(/^1002 warning log-gap: No frame for 0\.(8|9)\d* s before this line/)]);
});

test('time stamps that go back or stand still', () => {
  const list = stamped(frames);
  expect(findings('t,ms', list.with(1000, `1.0000,${frames[1000]}`), timed)[0]).toMatch(/^1002 error log-time-order/);
  expect(findings('t,ms', list.with(1000, `${list[999]!.split(',')[0]},${frames[1000]}`), timed)).toEqual([expect.stringMatching(/^1002 warning log-time-twice/)]);
});

test('durations that stand still', () => {
  expect(findings('ms', from(2000, () => '8.750'))).toEqual([expect.stringMatching(/^2002 warning log-sensor-sticks: Each frame from this line on took 8\.75 ms for 1[78] s/)]);
});

test.each([
  ['whole milliseconds at a steady hundred a second', Array.from({ length: 4000 }, (_, i) => (i < 500 ? String(9 + (i % 3)) : '10'))],
  ['a limit of sixty a second, in steps of 0.1 ms', Array.from({ length: 4000 }, (_, i) => (i % 40 ? '16.7' : '16.6'))],
  ['a scene of twice the work', from(2000, (f) => (2 * Number(f)).toFixed(3))],
])('no alarm: %s', (_, list) => expect(findings('ms', list)).toEqual([]));

test.each([['seconds', 0.001, 6], ['microseconds', 1000, 0]] as const)('a unit that changes to %s', (_, factor, decimals) => {
  expect(findings('ms', from(2000, (f) => (Number(f) * factor).toFixed(decimals)))).toEqual([expect.stringMatching(/^2002 error log-unit-changes: The frame times go from \d\.\d+ to [\d.]+ from one line to the next/)]);
});

test('zeros, and less than that, are no frames; a decimal comma is no number', () => {
  expect(findings('ms', frames.with(2000, '0.000'))).toEqual([expect.stringMatching(/^2002 error log-value: A frame cannot last 0 ms/)]);
  expect(findings('ms', frames.with(2000, '-8.100'))).toEqual([expect.stringMatching(/^2002 error log-value: A frame cannot last -8\.1 ms/)]);
  expect(findings('ms', from(2000, (f) => `"${f.replace('.', ',')}"`))).toEqual([expect.stringMatching(/^2002 error log-value: .*decimal comma.*\(and on 1999 more lines\)$/)]);
  expect(findings('ms', frames.map((f) => f.replace('.', ',')))).toEqual([expect.stringMatching(/^2 error log-ragged: .*decimal comma/)]);
});

describe('empty cells', () => {
  test('between frames', () => {
    expect(findings('n,ms', frames.map((f, i) => `${i},${i % 1000 === 500 ? '' : f}`))).toEqual(['502 warning log-gap: This line has no frame time, and later ones have: the frame is left out of every figure (and on 3 more lines)']);
  });
  test('at the end of the shorter of two columns: no alarm', () => {
    expect(findings('ms,other', [...frames.slice(0, 3000).map((f) => `${f},9.1`), ...frames.slice(3000).map(() => ',9.1')])).toEqual([]);
  });
});

describe('a log that breaks off within a number', () => {
  test('a decimal less', () => expect(findings('ms', frames.with(3999, '8.1'), '', false)).toEqual([expect.stringMatching(/^4001 warning log-cut-off: .*its last number, 8\.1, has 2 decimals less/)]));
  test('digits less, where the last line is not ended', () => {
    const whole = frames.map((f) => String(Math.round(Number(f) * 1000)));
    expect(findings('ms', whole.map((f) => (f.length === 4 ? f : '9999')).with(3999, '84'), '', false)).toEqual([expect.stringMatching(/^4001 warning log-cut-off: .*its last number, 84, has 2 digits less/)]);
    expect(findings('ms', whole.map((f) => (f.length === 4 ? f : '9999')).with(3999, '984'))).toEqual([]);
  });
  test('not where only the line end is missing', () => expect(findings('ms', frames, '', false)).toEqual([]));
});
