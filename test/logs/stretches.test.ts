// A log is read by stretches: where they end changes nothing, nor does how many samples are held together.
import { Buffer } from 'node:buffer';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decode, type LogLayout } from '../../pipeline/logs/index.js';
import { LogText } from '../../pipeline/logs/log-text.js';
import { sensorLog } from '../../pipeline/logs/sensor-log.js';
import { elapsed, randomLog, steady } from './random-logs.js';

function read(bytes: Uint8Array, layout: LogLayout, block: number, most?: number) {
  const text = LogText.open('log.csv', bytes, layout.encoding, block);
  return text instanceof LogText ? sensorLog(text, layout, undefined, most) : { value: undefined, findings: [text] };
}

const oneStretch = 64 * 1024;

test('of one byte, seven, some, or about 64 KiB: the same values, traces and findings', () => {
  fc.assert(fc.property(randomLog, fc.constantFrom(1, 2, 3, 7, 64, 4096, oneStretch - 1, oneStretch + 1), ({ bytes, layout }, block) => {
    expect(read(bytes, layout, block)).toEqual(read(bytes, layout, oneStretch));
  }), { seed: 1, numRuns: 400 });
});

test('a log beyond 64 KiB, at its borders', () => {
  const lines = Array.from({ length: 9000 }, (_, i) => `${i},load,${(40 + (i % 97) / 10).toFixed(1)},${i % 7 ? 35.2 : ''},"2${i % 10}"`);
  const bytes = Buffer.from(`t,phase,a,b,c\r\n${lines.join('\r\n')}`);
  expect(bytes.length).toBeGreaterThan(3 * oneStretch);
  const whole = read(bytes, { ...steady, time: elapsed }, 1 << 20);
  expect(whole.value!.traces[0]!.values.length).toBe(9000);
  for (const block of [7, oneStretch - 1, oneStretch, oneStretch + 1]) {
    expect(read(bytes, { ...steady, time: elapsed }, block)).toEqual(whole);
  }
});

// Faults of sensors are looked for on the means of a long log, and are not the same there.
const ofSamples = new Set(['log-unit-changes', 'log-reads-zero', 'log-sensor-sticks']);

test('held in a few buckets, a log gives the same figures, windows and findings as sample by sample', () => {
  fc.assert(fc.property(randomLog, fc.constantFrom(2, 4, 8, 16), ({ bytes, layout }, most) => {
    const [whole, few] = [read(bytes, layout, oneStretch), read(bytes, layout, oneStretch, most)].map(({ value, findings }) => ({
      values: value?.values.map(({ scatter: _, ...v }) => v), windows: value?.traces.map((t) => t.windows), findings: findings.filter((f) => !ofSamples.has(f.code)),
    }));
    // Where time goes back there is no window to speak of, and an error.
    if (!whole!.findings.some((f) => f.code === 'log-time-order')) expect(few).toEqual(whole);
  }), { seed: 2, numRuns: 400 });
});

test('a trace of a long log has means, and what lies between its lowest and highest values', () => {
  const lines = Array.from({ length: 100 }, (_, i) => `${i},load,${i},,`);
  const { value } = read(Buffer.from(`t,phase,a,b,c\n${lines.join('\n')}\n`), steady, oneStretch, 10);
  const { times, values, lows, highs } = value!.traces[0]!;
  // A hundred samples in ten buckets at most, which hold a power of two each: seven of 16, the last of four.
  expect([times.length, times[0], values[0], lows![0], highs![0], times.at(-1), values.at(-1)]).toEqual([7, 7.5, 7.5, 0, 15, 97.5, 97.5]);
});

describe('what is not in its encoding is the same finding by stretches as at once', () => {
  const heading = 't,phase,a,b,c\n0,idle,1,2,3\n';
  test.each<[string, Uint8Array]>([
    ['a byte that is not UTF-8', Buffer.concat([Buffer.from(`${heading}1,`), Uint8Array.from([0xfc]), Buffer.from('x,1,2,3\n')])],
    ['a letter cut off at the end', Buffer.from(`${heading}1,é`).subarray(0, -1)],
    ['a letter that goes on with nothing', Buffer.concat([Buffer.from(`${heading.replace('\n', '\r\n')}é `), Uint8Array.from([0xf0, 0x9f, 0x98]), Buffer.from('x\n')])],
    ['a lone surrogate', Buffer.concat([Buffer.from(`\ufeff${heading}`, 'utf16le'), Uint8Array.from([0x00, 0xd8]), Buffer.from('x\n', 'utf16le')])],
    ['half a unit of UTF-16', Buffer.from(`\ufeff${heading}`, 'utf16le').subarray(0, -1)],
  ])('%s', (_, bytes) => {
      const expected = decode('log.csv', bytes).findings;
    expect(expected.length).toBe(1);
    for (const block of [1, 2, 5, 1000]) expect(read(bytes, steady, block)).toEqual({ value: undefined, findings: expected });
  });
});

describe('a quote that nobody closes does not take the file with it', () => {
  const rows = '1,load,1,2,3\n'.repeat(200_000);
  const told = (text: string) => read(Buffer.from(text), steady, oneStretch).findings.map((f) => `${f.code} ${f.place.line}:${f.place.column} ${f.message}`);
  test('to the end', () => expect(told(`t,phase,a,b,c\n0,load,1,2,3\n1,"load,1,2,3\n${rows}`)).toEqual(['log-cut-off 3:3 A quote is opened here and never closed']));
  test('for more than a megabyte', () => {
    expect(told(`t,phase,a,b,c\n0,load,1,2,3\n1,"load,1,2,3\n${rows}x",1,2,3\n2,load,x,2,3\n`)).toEqual([
      'log-form 3:3 A quote is opened here, and the cell goes on for more than 1 MB; that is no row of a log',
      expect.stringMatching(/^log-value 200005:8 /),
    ]);
  });
  test('a line without end', () => expect(told(`t,phase,a,b,c\n0,load,1,2,3\n${'x'.repeat(2_500_000)}\n2,load,1,2,3\n`)).toEqual([expect.stringMatching(/^log-form 3:1 The line that begins here goes on/)]));
});
