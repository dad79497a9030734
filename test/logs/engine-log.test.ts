// A log read with the engine and without: the same values, traces and findings, whatever is in it.
import { readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { disk, LargeFile } from '../../pipeline/files/index.js';
import type { LogLayout } from '../../pipeline/logs/index.js';
import { withEngine } from '../../pipeline/logs/engine-log.js';
import { LogText } from '../../pipeline/logs/log-text.js';
import { readLog } from '../../pipeline/logs/read-log.js';
import { sensorLog } from '../../pipeline/logs/sensor-log.js';
import { unit } from '../../pipeline/quantities/index.js';
import { scratch } from '../files/scratch.js';
import { duckdb } from './duckdb.js';
import { elapsed, randomLog, steady } from './random-logs.js';

if (!duckdb) console.warn('DuckDB is not installed: logs are not read with it.');
test.runIf(process.env.CI)('the engine is there where it should be', () => expect(duckdb).toBeDefined());

const folder = resolve(import.meta.dirname, '../../data/measured-card/logs');
const place = { file: 'episode.yaml', line: 1, column: 1, endLine: 1, endColumn: 1 };
const asked = (layout: LogLayout): LogLayout => ({ ...layout, engine: { module: duckdb!, least: 0 } });
const open = (path: string, layout: LogLayout) => LogText.open('log.csv', new LargeFile(path, disk, 0), layout.encoding);

function read(path: string, layout: LogLayout, most?: number) {
  const text = open(path, layout);
  return text instanceof LogText ? sensorLog(text, layout, undefined, most) : { value: undefined, findings: [text] };
}

/** Holds the two to each other, and says whether the engine's figures were taken. */
function same(path: string, layout: LogLayout, most?: number): boolean {
  expect(read(path, asked(layout), most)).toEqual(read(path, layout, most));
  const text = open(path, layout);
  return text instanceof LogText && withEngine(text, asked(layout), most) !== undefined;
}
const written = (text: string | Uint8Array): string => join(scratch({ 'log.csv': text }), 'log.csv');

const columns: LogLayout['columns'] = ['core_temp_c temperature degC', 'power_w power W', 'power_limit_w power W', 'core_clock_mhz frequency MHz'].map((c) => {
  const [name = '', measure = '', u = ''] = c.split(' ');
  return { at: { name, place }, measure, part: name, unit: unit(u), take: 'mean' };
});
const measured: LogLayout = {
  ...steady, columns, phase: undefined, time: { kind: 'elapsed', at: { name: 'elapsed_s', place }, unit: unit('s') }, phaseColumn: { at: { name: 'phase', place }, place },
  windows: [{ phase: 'idle', last: 15, place }, { phase: 'load', last: 60, place }, { phase: 'early', of: 'load', from: 3.3, to: 40.1, place }],
};

describe.runIf(duckdb)('with the engine and without', () => {
  test.each(readdirSync(folder).filter((n) => !n.includes('frames')))('the measured log %s, sample by sample and in buckets', (name) => {
    expect([same(join(folder, name), measured), same(join(folder, name), measured, 100)]).toEqual([true, true]);
  });

  test('random logs, as loggers write them and as they should not', () => {
    fc.assert(fc.property(randomLog, fc.constantFrom(2, 4, 16, undefined), ({ bytes, layout }, most) => void same(written(bytes), layout, most)), { seed: 3, numRuns: 150 });
  });

  const number = fc.tuple(fc.integer({ min: -99_999, max: 999_999 }), fc.integer({ min: 0, max: 3 })).map(([n, d]) => (n / 10 ** d).toFixed(d));
  const cell = fc.oneof({ weight: 12, arbitrary: number }, { weight: 1, arbitrary: fc.constantFrom('', 'N/A') });
  const row = fc.tuple(fc.oneof({ weight: 20, arbitrary: fc.constant(1) }, { weight: 1, arbitrary: fc.constantFrom(0.5, 50, 7000) }), fc.oneof({ weight: 30, arbitrary: fc.constant('') }, { weight: 1, arbitrary: fc.constantFrom('idle', 'load', 'rest') }), cell, cell, cell);
  test('random logs without a fault: phases and windows that begin inside a bucket, gaps, empty cells', () => {
    let [taken, all] = [0, 0];
    fc.assert(fc.property(fc.array(row, { minLength: 30, maxLength: 900 }), fc.constantFrom(4, 16, 50, undefined), fc.constantFrom('\n', '\r\n'), fc.boolean(), fc.boolean(), (rows, most, end, ended, phased) => {
      let [t, said] = [0, 'load'];
      const lines = rows.map(([dt, phase, ...cells]) => `${(t += dt)},${(said = phase || said)},${cells.join(',')}`);
      const layout: LogLayout = {
        ...steady, time: elapsed, missing: new Set(['N/A']), windows: [{ phase: 'load', last: 10.5, place }, { phase: 'early', from: 3.5, to: 22, place, ...(phased && { of: 'load' }) }],
        ...(phased && { phase: undefined, phaseColumn: { at: { name: 'phase', place }, place } }),
      };
      all++;
      if (same(written(['t,phase,a,b,c', ...lines].join(end) + (ended ? end : '')), layout, most)) taken++;
    }), { seed: 4, numRuns: 60 });
    expect(taken / all).toBeGreaterThan(1 / 2);
  });

  const rows = Array.from({ length: 6000 }, (_, i) => `${i},load,${(40 + ((i * 7) % 90) / 10).toFixed(1)},35.2,${20 + (i % 10)}`);
  test.each<[string, (lines: string[]) => string | Uint8Array, boolean]>([
    ['plain', (l) => l.join('\n'), true],
    ['CR LF', (l) => l.join('\r\n'), true],
    ['both line ends', (l) => l.map((x, i) => x + (i % 9 ? '\n' : '\r\n')).join(''), false],
    ['a lone CR', (l) => l.map((x, i) => x + (i === 5000 ? '\r' : '\n')).join(''), false],
    ['a byte order mark', (l) => `\ufeff${l.join('\n')}`, false],
    ['a quoted number', (l) => l.with(5000, '4999,load,"42.0",35.2,20').join('\n'), false],
    ['a quoted delimiter', (l) => l.with(5000, '4999,"lo,ad",42.0,35.2,20').join('\n'), false],
    ['a decimal more than before', (l) => l.with(5000, '4999,load,42.05,35.2,20').join('\n'), false],
    ['hexadecimal', (l) => l.with(5000, '4999,load,0x1F,35.2,20').join('\n'), false],
    ['a decimal comma', (l) => l.with(5000, '4999,load,"42,5",35.2,20').join('\n'), false],
    ['digits in groups', (l) => l.with(5000, '4999,load,1_000.0,35.2,20').join('\n'), false],
    ['a text', (l) => l.with(5000, '4999,load,off,35.2,20').join('\n'), false],
    ['a row too short', (l) => l.with(5000, '4999,load,42.0,35.2').join('\n'), false],
    ['a row too long', (l) => l.with(5000, '4999,load,42.0,35.2,20,7').join('\n'), false],
    ['a blank line', (l) => l.with(5000, '').join('\n'), false],
    ['a time twice', (l) => l.with(5000, '4998,load,42.0,35.2,20').join('\n'), false],
    ['a quote never closed', (l) => l.with(5000, '4999,"load,42.0,35.2,20').join('\n'), false],
    ['cut off', (l) => l.join('\n').slice(0, -6), false],
    ['numbers too large for whole ones', (l) => l.with(5000, '4999,load,99999999999999,35.2,20').join('\n'), false],
  ])('%s', (_, text, taken) => {
    expect(same(written(text(['t,phase,a,b,c', ...rows])), { ...steady, time: elapsed }, 64)).toBe(taken);
  });

  test('sums are exact, and the scatter is the same', () => {
    const path = written(`t,phase,a,b,c\n${Array.from({ length: 40_000 }, (_, i) => `${i},load,${(((i * 7919) % 300_001) / 1000 - 100).toFixed(3)},-0.${10 + (i % 90)},${i % 11 ? 2e6 + ((i * 31) % 977) : ''}`).join('\n')}\n`);
    const [ours, theirs] = [steady, asked(steady)].map((layout) => readLog(open(path, layout) as LogText, layout, 200).value!);
    ours!.columns.forEach(({ figures }, i) => {
      const [a, b] = [figures, theirs!.columns[i]!.figures].map((f) => f.span([[0, ours!.times.length]]));
      expect({ ...b, squares: 0, sum: b!.sum.toString() }).toEqual({ ...a, squares: 0, sum: a!.sum.toString() });
      expect(Math.abs(b!.squares / a!.squares - 1)).toBeLessThan(1e-12);
    });
  });
});

test('a log that is small, or where the engine is not to be had, is read here alone', () => {
  const path = written('t,phase,a,b,c\n0,load,1,2,3\n1,load,2,2,3\n');
  const [layout, nowhere] = [{ ...steady, time: elapsed }, join(scratch(), 'package.json')];
  for (const least of [0, undefined]) expect(read(path, { ...layout, engine: { module: nowhere, least } })).toEqual(read(path, layout));
});
