// What a sensor may do to a log without one cell being wrong; each is a finding at its line, and healthy logs have none.
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readEpisode } from '../records/reading.js';
import { random } from '../statistics/random.js';

interface Row { t: number; phase: string; values: (number | string)[] }

function findings(columns: Record<string, string>, rows: Row[], layout = 'phases: {column: phase}'): string[] {
  const names = Object.keys(columns);
  const log = ['t,phase,' + names.join(','), ...rows.map((r) => [r.t, r.phase, ...r.values].join(','))].join('\n') + '\n';
  const record = `title: T\nlayouts:\n  sensors: {time: {column: t}, ${layout}, columns: {${Object.entries(columns).map(([k, v]) => `${k}: ${v}`).join(', ')}}}\nlogs:\n  - {files: log.csv, layout: sensors, for: {setup: bench}}\n`;
  return readEpisode(record, { 'log.csv': log }).findings.map((f) => `${f.place.line} ${f.code}: ${f.message}`);
}

/** 30 s idle and 90 s load, two samples a second. */
const course = (value: (t: number, phase: string) => (number | string)[]): Row[] => Array.from({ length: 240 }, (_, i) => {
  const t = i / 2;
  const phase = t < 30 ? 'idle' : 'load';
  return { t, phase, values: value(t, phase) };
});
const g = random(11);
const watts = (phase: string): string => ((phase === 'idle' ? 40 : 250) + g.normal()).toFixed(2);
const degrees = (t: number, phase: string, end = 70): number => (phase === 'idle' ? 35 : end - (end - 35) * Math.exp(-(t - 30) / 20));

describe('a sensor that sticks', () => {
  test('one that was noise and stands still', () => {
    let at = '';
    const rows = course((t, phase) => [t >= 60 && t < 80 && at ? at : (at = watts(phase))]);
    expect(findings({ p: 'power/board W' }, rows)).toEqual([expect.stringMatching(/^12[12] log-sensor-sticks: The column "p" says 2\d\d\.\d+ for (20|19) s from this line on, to the last digit, within load/)]);
  });
  test('one that stays behind a sensor it otherwise follows', () => {
    const rows = course((t, phase) => [degrees(t, phase).toFixed(1), degrees(Math.min(t, t < 60 ? t : 45), phase, 75).toFixed(1)].map((v, i) => (i === 1 && t >= 45 && t < 90 ? degrees(45, 'load', 75).toFixed(1) : v)));
    expect(findings({ a: 'temperature/core °C', b: 'temperature/memory °C' }, rows).map((f) => f.slice(0, 40))).toEqual([expect.stringMatching(/^92 log-sensor-sticks: The column "b"/)]);
  });
  test('whole degrees stand still, clocks and limits stand still, an idle part stands still: no alarm', () => {
    const rows = course((t, phase) => [Math.round(degrees(t, phase)), Math.round(degrees(t, phase, 68)), phase === 'idle' ? 1980 : 1400 + Math.round(20 * g.normal()), 300, phase === 'idle' ? 0 : 1200 + Math.round(5 * g.normal())]);
    expect(findings({ a: 'temperature/core °C', b: 'temperature/memory °C', f: 'frequency/core MHz', l: 'power/limit W', r: 'fan_speed/fan rpm' }, rows)).toEqual([]);
  });
});

describe('a sensor that reads zero', () => {
  test('now and then', () => {
    const rows = course((t, phase) => [t === 50 || t === 51.5 ? 0 : watts(phase), degrees(t, phase).toFixed(1)]);
    expect(findings({ p: 'power/board W', c: 'temperature/core °C' }, rows)).toEqual(['102 log-reads-zero: The column "p" reads zero from here on, 2 times in the 180 lines of load, and is never near it on the others; a mean of both is too low']);
  });
  test('all the time', () => {
    const rows = course((_, phase) => [watts(phase), 0]);
    expect(findings({ p: 'power/board W', c: 'temperature/core °C' }, rows)).toEqual([expect.stringMatching(/^2 log-reads-zero: The column "c" reads zero on every line of idle.* \(and on 1 more line\)$/)]);
  });
  test('a part that may be off, a fan that stops, a temperature about freezing: no alarm', () => {
    const rows = course((t, phase) => [Math.max(0, Math.round(3 * g.normal())), t % 20 < 10 ? 0 : 900 + Math.round(9 * g.normal()), (2 * g.normal()).toFixed(0).replace('-0', '0'), phase === 'idle' ? 0 : 55]);
    expect(findings({ p: 'power/aux W', r: 'fan_speed/fan rpm', c: 'temperature/outside °C', u: 'utilisation/card "%"'.replace(/"/g, '') }, rows).filter((f) => !/never|sticks/.test(f))).toEqual([]);
  });
});

describe('a long log, held in stretches', () => {
  const long = (value: (i: number) => number): Row[] => Array.from({ length: 40_000 }, (_, i) => ({ t: i / 10, phase: 'load', values: [value(i)] }));
  test('a sawtooth that begins at zero: no alarm', () => {
    expect(findings({ p: 'power/board W' }, long((i) => i % 90))).toEqual([]);
    expect(findings({ p: 'power/board W' }, long((i) => (i % 3 === 1 ? 1 : i % 2 ? 0 : 89)))).toEqual([]);
  });
  test('zeros are counted by lines, and the first is told at its own', () => {
    expect(findings({ p: 'power/board W' }, long((i) => (i === 30_001 || i === 30_002 || i === 35_003 ? 0 : 240 + (i % 7))))).toEqual(['30003 log-reads-zero: The column "p" reads zero from here on, 3 times in the 40000 lines of load, and is never near it on the others; a mean of both is too low']);
  });
  test('of very many it is not said how many', () => {
    expect(findings({ p: 'power/board W' }, long((i) => (i % 100 === 51 ? 0 : 240 + (i % 7))))).toEqual(['53 log-reads-zero: The column "p" reads zero from here on, time and again in the 40000 lines of load, and is never near it on the others; a mean of both is too low']);
  });
  test('one that goes away for good is told', () => {
    expect(findings({ p: 'power/board W' }, long((i) => (i >= 25_001 ? 0 : 240 + (i % 7))))).toEqual([expect.stringMatching(/^25003 log-reads-zero: .* 14999 times in the 40000 lines of load/)]);
  });
});

describe('healthy logs have no alarm', () => {
  const hour = (value: (t: number) => (number | string)[]): Row[] => Array.from({ length: 3600 }, (_, t) => ({ t, phase: 'load', values: value(t) }));
  test.each<[string, Record<string, string>, Row[]]>([
    ['a fan at constant duty', { d: 'utilisation/fan "%"'.replace(/"/g, ''), r: 'fan_speed/fan rpm', c: 'temperature/core °C' }, course((t, phase) => [60, 1200, degrees(t, phase).toFixed(1)])],
    ['a clock locked at its limit', { f: 'frequency/core MHz', p: 'power/board W' }, course((_, phase) => [2500, watts(phase)])],
    ['a clock that is off when idle', { f: 'frequency/core MHz' }, course((_, phase) => [phase === 'idle' ? 0 : 2500])],
    ['a voltage in whole steps of 5 mV', { v: 'voltage/core V' }, course((_, phase) => [((phase === 'idle' ? 700 : 1050) + 5 * Math.round(g.normal())) / 1000])],
    ['a voltage that drops its final zeros and ends on one', { v: 'voltage/core V' }, course((t) => [t === 119.5 ? '1.05' : '1.055'])],
    ['a power meter that shows 0 W when idle', { p: 'power/wall W' }, course((_, phase) => [phase === 'idle' ? 0 : watts(phase)])],
    ['a power meter that shows 0 W at standby and wakes now and then', { p: 'power/wall W' }, course((t, phase) => [phase === 'idle' ? (t % 10 === 5 ? 4.1 : 0) : watts(phase)])],
    ['from 0.25 W at idle to 250 W under load', { p: 'power/wall W' }, course((_, phase) => [phase === 'idle' ? 0.25 : watts(phase)])],
    ['a load that pulses between nothing and all', { p: 'power/rail W' }, course((t) => [t % 4 < 2 ? 0 : watts('load')])],
    ['a rate of frames that is 0 while loading', { n: 'frame_rate/shown fps' }, course((t, phase) => [phase === 'idle' || t % 40 < 6 ? 0 : 90 + Math.round(3 * g.normal())])],
    ['an hour in steps of 1 °C, beside one in steps of 0.1 °C that drifts below a degree', { a: 'temperature/core °C', b: 'temperature/memory °C' }, hour((t) => [t < 1800 ? (t % 2 ? 70 : 71) : 70, (68 + 0.6 * (t / 3600) + 0.05 * g.normal()).toFixed(1)])],
    ['a processor held at 100 °C while the memory still warms', { a: 'temperature/core °C', b: 'temperature/memory °C' }, course((t, phase) => [Math.min(100, Math.round(degrees(t, phase, 160))), degrees(t, phase, 80).toFixed(1)])],
    ['a part that draws whole watts and stands still while another rises', { a: 'power/processor W', b: 'power/card W' }, course((t, phase) => [phase === 'idle' ? 12 : t < 60 ? 30 : 65, degrees(t, phase, 250).toFixed(1)])],
    ['an ambient sensor in whole degrees beside a core that warms', { a: 'temperature/room °C', b: 'temperature/core °C' }, course((t, phase) => [22, degrees(t, phase).toFixed(1)])],
    ['five lines', { p: 'power/board W', c: 'temperature/core °C', f: 'frequency/core MHz' }, [0, 1, 2, 3, 4].map((t) => ({ t, phase: 'load', values: [250, 70, 2500] }))],
  ])('%s', (_, columns, rows) => {
    expect(findings(columns, rows)).toEqual([]);
  });
});

describe('a unit that changes in the middle', () => {
  test('watts to milliwatts', () => {
    const rows = course((t, phase) => [t < 70 ? watts(phase) : (Number(watts(phase)) * 1000).toFixed(0)]);
    expect(findings({ p: 'power/board W' }, rows)).toEqual([expect.stringMatching(/^142 log-unit-changes: The column "p" goes from 2\d\d\.?\d* to 2\d{5} from one line to the next, a thousand times as much or as little/)]);
  });
  test('Celsius to Fahrenheit, and back', () => {
    const f = (c: number) => 1.8 * c + 32;
    const rows = course((t, phase) => [watts(phase), (t < 70 ? degrees(t, phase) : f(degrees(t, phase))).toFixed(1)]);
    expect(findings({ p: 'power/board W', c: 'temperature/core °C' }, rows)).toEqual([expect.stringMatching(/^142 log-unit-changes: The column "c" goes from 6\d\.\d+ to 1[45]\d\.?\d* .*Fahrenheit/)]);
    const back = course((t, phase) => [(t < 70 ? f(degrees(t, phase)) : degrees(t, phase)).toFixed(1)]);
    expect(findings({ c: 'temperature/core °F' }, back)).toEqual([expect.stringMatching(/^142 log-unit-changes/)]);
  });
  test('litres a minute to millilitres, and to litres an hour; percent to a fraction; Celsius to kelvins', () => {
    const litres = () => 1.1 + 0.01 * g.normal();
    for (const [factor, words] of [[1000, 'a thousand times'], [60, 'sixty times']] as const) {
      const rows = course((t) => [(litres() * (t < 70 ? 1 : factor)).toFixed(3)]);
      expect(findings({ q: 'flow/loop L/min' }, rows)).toEqual([expect.stringMatching(new RegExp(`^142 log-unit-changes: The column "q" goes from 1\\.\\d+ to [\\d.]+ from one line to the next, ${words}`))]);
    }
    const share = (t: number) => (96 + 0.4 * g.normal()) / (t < 70 ? 1 : 100);
    expect(findings({ u: 'utilisation/card "%"'.replace(/"/g, '') }, course((t) => [share(t).toFixed(3)]))).toEqual([expect.stringMatching(/^142 log-unit-changes: .*fraction to percent/)]);
    expect(findings({ c: 'temperature/core °C' }, course((t, phase) => [(degrees(t, phase) + (t < 70 ? 0 : 273.15)).toFixed(1)]))).toEqual([expect.stringMatching(/^142 log-unit-changes: .*Celsius to kelvins/)]);
  });
  test('a flow of nothing amid noise is told', () => {
    expect(findings({ q: 'flow/loop L/min' }, course((t) => [t >= 60 && t < 80 ? '0.000' : (1.1 + 0.01 * g.normal()).toFixed(3)]))).toEqual([expect.stringMatching(/^122 log-sensor-sticks: The column "q" says 0 for 20 s/)]);
  });
  test('what sets in at once is none: a pump, a load of one percent that becomes one of a hundred', () => {
    const rows = course((t) => [(t < 70 ? 0.02 : 1.1 + 0.01 * g.normal()).toFixed(2), t < 70 ? 1 : 100]);
    expect(findings({ q: 'flow/loop L/min', u: 'utilisation/card "%"'.replace(/"/g, '') }, rows)).toEqual([]);
  });
  test('a load that sets in at once is no change of unit: 38 °C to 100 °C with the power, and at the border of a phase', () => {
    const hot = (phase: string): string => (phase === 'idle' ? 38 : 100.4).toFixed(1);
    expect(findings({ c: 'temperature/core °C' }, course((_, phase) => [hot(phase)]))).toEqual([]);
    const whole = course((_, phase) => [hot(phase), watts(phase)]).map((r) => ({ ...r, phase: 'load' }));
    expect(findings({ c: 'temperature/core °C', p: 'power/board W' }, whole)).toEqual([]);
  });
  test('the unit written into the cells', () => {
    const rows = course((t, phase) => [t < 70 ? watts(phase) : `${watts(phase)} W`]);
    expect(findings({ p: 'power/board W' }, rows)).toEqual([expect.stringMatching(/^142 log-value: "2\d\d\.\d\d W" in column "p" is not a number; a unit stands behind it.*\(and on 99 more lines\)$/)]);
  });
});

test('decimal commas in the times are told as such', () => {
  const record = 'title: T\nlayouts:\n  sensors: {time: {column: t}, delimiter: ";", phase: load, columns: {p: power/board W}}\nlogs:\n  - {files: log.csv, layout: sensors}\n';
  const told = readEpisode(record, { 'log.csv': 't;p\n0,0;250,1\n0,5;250,2\n' }).findings.map((f) => `${f.place.line} ${f.code}: ${f.message}`);
  expect(told).toContain('2 log-time: "0,0" is not a time (a number of seconds); it has a decimal comma: say decimal: comma (and on 1 more line)');
});

describe('a log that breaks off within a number', () => {
  const rows = course((_, phase) => [watts(phase)]);
  const cut = (last: string): Row[] => rows.map((r, i) => (i === rows.length - 1 ? { ...r, values: [last] } : r));
  test('is told at that number', () => {
    expect(findings({ p: 'power/board W' }, cut('24'))).toEqual(['241 log-cut-off: The log seems to break off here: its last number, 24, has 2 decimals less than all before it']);
    expect(findings({ p: 'power/board W' }, cut('249.'))).toHaveLength(1);
  });
  test('not where decimals vary anyway', () => {
    const varied = rows.map((r) => ({ ...r, values: [String(Number(r.values[0]))] }));
    expect(findings({ p: 'power/board W' }, varied.map((r, i) => (i === rows.length - 1 ? { ...r, values: ['249'] } : r)))).toEqual([]);
  });
});

test('a temperature that rises on every line is no counter', () => {
  expect(findings({ c: 'temperature/core °C' }, course((t) => [(30 + t / 10).toFixed(2)]))).toEqual([]);
  expect(findings({ e: 'energy/board Wh' }, course((t) => [(30 + t / 10).toFixed(2)]))).toEqual([expect.stringMatching(/log-counter/)]);
});

test('nine logs of a real card have none of it', () => {
  const folder = resolve(import.meta.dirname, '../../data/measured-card');
  const files = Object.fromEntries(readdirSync(join(folder, 'logs')).sort().map((n) => [`logs/${n}`, readFileSync(join(folder, 'logs', n))]));
  expect(readEpisode(readFileSync(join(folder, 'episode.yaml'), 'utf8'), files).findings.map((f) => `${f.place.file}:${f.place.line} ${f.message}`)).toEqual([]);
});
