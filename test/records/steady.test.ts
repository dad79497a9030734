// Windows that are found: how a layout says it, what comes of it, and what is wrong with it.
import { describe, expect, test } from 'vitest';
import type { Reading } from '../../pipeline/records/index.js';
import { random } from '../statistics/random.js';
import { marked, readEpisode } from './reading.js';

const record = (layout: string): string => `title: T
layouts:
  sensors: {time: {column: t}, phases: {column: phase}, columns: {c: temperature/core °C, p: power/board W}, ${layout}}
logs:
  - {files: log.csv, layout: sensors, for: {setup: bench}}
`;

/** 40 K of warming with a time constant of 60 s over ten minutes, one sample a second, after a minute of idle; power is at its level at once. */
const log = ['t,phase,c,p', ...Array.from({ length: 660 }, (_, t) => (t < 60 ? `${t},idle,30.0,50` : `${t},load,${(70 - 40 * Math.exp(-(t - 60) / 60)).toFixed(2)},${200 + (t % 2)}`))].join('\n') + '\n';
/** Seconds from the log's start at which the curve first moves by no more than `change` in `span`. */
const truth = (change: number, span: number): number => 60 + 60 * Math.log((40 * (1 - Math.exp(-span / 60))) / change);

function readings(layout: string, csv = log): Map<string, Reading> {
  const { episode, findings } = readEpisode(record(layout), { 'log.csv': csv });
  expect(findings.map((f) => f.message)).toEqual([]);
  return new Map(episode!.readings.map((r) => [r.key.replace('bench///', ''), r]));
}

describe('a window is found', () => {
  test.each([
    ['by the usual rule, 1 K in 5 min', 'windows: {load: steady}', truth(1, 300), 'at most 1 K in 5 min'],
    ['by the rule of the layout', 'windows: {load: steady}, steady: {change: 0.5 K, within: 2 min}', truth(0.5, 120), 'at most 0.5 K in 2 min'],
    ['by a rule of its own', 'windows: {load: steady to 2 K in 60 s}, steady: {change: 0.5 K}', truth(2, 60), 'at most 2 K in 60 s'],
    ['cut from another phase', 'windows: {soak: steady to 2 K in 60 s of load}', truth(2, 60), 'at most 2 K in 60 s'],
    ['within degrees Celsius, which are kelvins of change', 'windows: {load: steady}, steady: {change: 2 °C, within: 60 s}', truth(2, 60), 'at most 2 K in 60 s'],
  ])('%s', (_, layout, start, rule) => {
    const found = readings(layout);
    const { log: from, quantity } = found.get('temperature/core/load') ?? found.get('temperature/core/soak')!;
    expect(from!.steady).toMatchObject({ rule, by: 'temperature/core', finds: true, since: 60, until: 659 });
    expect(Math.abs(from!.steady!.start! - start)).toBeLessThan(1.6);
    expect(from!.firstLine).toBe(from!.steady!.start! + 2);
    expect(from!.lastLine).toBe(661);
    // Mean of the curve from the start to the end, 70 − 40·60·(e^(−a/60) − e^(−b/60))/(b−a).
    const [a, b] = [from!.steady!.start! - 60, 600];
    expect(quantity.value.toNumber()).toBeCloseTo(70 - (2400 * (Math.exp(-a / 60) - Math.exp(-b / 60))) / (b - a), 1);
  });

  test('by another column, in percent of its level', () => {
    const found = readings('windows: {load: steady}, steady: {by: power/board, change: 2 %, within: 60 s}');
    expect(found.get('temperature/core/load')!.log!.steady).toMatchObject({ start: 60, by: 'power/board', rule: 'at most 2 % in 60 s' });
  });

  test('by the marginal standard error', () => {
    const { normal } = random(3);
    const noisy = log.replace(/^(\d+),(\w+),([\d.]+)/gm, (_, t: string, phase: string, c: string) => `${t},${phase},${(Number(c) + 1.5 * normal()).toFixed(2)}`);
    const { log: from } = readings('windows: {load: steady}, steady: {rule: mser}', noisy).get('temperature/core/load')!;
    expect(from!.steady!.rule).toBe('by the marginal standard error (MSER-5)');
    expect(from!.steady!.start!).toBeGreaterThan(60 + 2.5 * 60);
    expect(from!.steady!.start!).toBeLessThan(60 + 300);
  });

  test('never: the last span is averaged, or with a phase shorter than the span all of it', () => {
    const short = log.split('\n').slice(0, 182).join('\n') + '\n';
    const { log: from } = readings('windows: {load: steady to 1 K in 60 s}', short).get('temperature/core/load')!;
    expect(from!.steady!.start).toBeUndefined();
    expect(from!.steady!.last!.change).toBeCloseTo(40 * (Math.exp(-1) - Math.exp(-2)), 0);
    expect([from!.firstLine, from!.lastLine]).toEqual([122, 182]);
    const { log: whole } = readings('windows: {load: steady}', short).get('temperature/core/load')!;
    expect(whole!.steady!.tooShort).toBe(true);
    expect(whole!.samples).toBe(121);
  });

  test('beside windows that a person gave, which are kept, and beside whole phases', () => {
    const given = readings('windows: {load: last 60 s}, steady: {change: 2 K, within: 60 s}').get('temperature/core/load')!.log!;
    expect(given).toMatchObject({ firstLine: 602, lastLine: 661, samples: 60, steady: { finds: false } });
    expect(Math.abs(given.steady!.start! - truth(2, 60))).toBeLessThan(1.6);
    const whole = readings('steady: {change: 2 K, within: 60 s}').get('temperature/core/load')!.log!;
    expect(whole).toMatchObject({ samples: 600, steady: { finds: false } });
  });

  test('in a log too long to be held sample by sample', () => {
    const { normal } = random(9);
    const long = `t,phase,c,p\n${Array.from({ length: 120_000 }, (_, i) => `${(i / 20).toFixed(2)},load,${(70 - 40 * Math.exp(-i / 20 / 600) + 0.3 * normal()).toFixed(2)},200`).join('\n')}\n`;
    const { log: from, quantity } = readings('windows: {load: steady}', long).get('temperature/core/load')!;
    // τ 600 s: 1 K in 300 s is met at 600·ln(40·(1−e^(−0.5))) = 1653.7 s.
    expect(Math.abs(from!.steady!.start! - 1653.7)).toBeLessThan(60);
    expect(Math.abs(from!.samples - (6000 - from!.steady!.start!) * 20)).toBeLessThan(20);
    const a = from!.steady!.start!;
    expect(quantity.value.toNumber()).toBeCloseTo(70 - (24_000 * (Math.exp(-a / 600) - Math.exp(-10))) / (6000 - a), 1);
    expect(from!.standardError).toBeLessThan(0.5); // the 2.5 K that it still rises in all are in it
  });

  test('without a rule nothing is looked for', () => {
    expect(readings('windows: {load: last 60 s}').get('temperature/core/load')!.log!.steady).toBeUndefined();
  });
});

describe('what the samples of a window are worth', () => {
  test('their number and the standard uncertainty of their mean stand with the reading', () => {
    // 200, 201, 200 …: leaps to and fro count as independent, standard deviation 0.5 of 60.
    const { log: from } = readings('windows: {load: last 60 s}').get('power/board/load')!;
    expect(from!.effective).toBe(60);
    expect(from!.standardError).toBeCloseTo(0.5 / Math.sqrt(59), 6);
    expect(readings('windows: {load: last 60 s}').get('temperature/core/idle')!.log!.standardError).toBe(0);
  });
  test('of sound levels in decibels, and none of an extreme', () => {
    const text = (column: string): string => `title: T\nlayouts:\n  s: {time: {column: t}, phase: load, columns: {n: ${column}}}\nlogs:\n  - {files: log.csv, layout: s, for: {setup: bench}}\n`;
    const csv = `t,n\n${Array.from({ length: 100 }, (_, i) => `${i},${i % 2 ? 40 : 40.2}`).join('\n')}\n`;
    const of = (column: string) => readEpisode(text(column), { 'log.csv': csv }).episode!.readings[0]!.log!;
    expect(of('noise/card dB(A)').standardError).toBeCloseTo(0.1 / Math.sqrt(99), 4);
    expect(of('{reads: noise/card dB(A), take: max}').standardError).toBeUndefined();
  });
});

describe('what is wrong with a rule', () => {
  test.each([
    ['windows: {load: steady}, steady: {change: ‹5 W›}', /"5 W" is no change of temperature; write it like 1 K/],
    ['windows: {load: steady}, steady: {change: ‹-1 K›}', /no change/],
    ['windows: {load: steady}, steady: {within: ‹1 K›}', /no span of time/],
    ['windows: {load: steady}, steady: {by: ‹power/bord›}', /did you mean power\/board/],
    ['windows: {load: steady}, steady: {rule: mser, change: ‹1 K›}', /mser has neither/],
    ['windows: {load: ‹steady to 1 K›}', /is no window; write .* or steady/],
    ['windows: {load: ‹steady to x in 60 s›}', /no change of temperature/],
    ['windows: {load: steady}, steady: {rule: ‹slop›}', /slope/],
    ['windows: {load: ‹steady of soak›}', /soak/],
  ])('%s', (layout, message) => {
    const { text, spans } = marked(record(layout));
    const { findings } = readEpisode(text, { 'log.csv': log });
    expect(findings.map((f) => f.message).join('\n')).toMatch(message);
    const { place } = findings.find((f) => message.test(f.message))!;
    if (!/soak/.test(layout)) expect(`${place.file}:${place.line}:${place.column}-${place.endColumn}`).toBe(spans[0]);
  });
  test('a column that is no temperature has to say how far it may move', () => {
    const text = 'title: T\nlayouts:\n  s: {time: {column: t}, phase: load, windows: {load: steady}, columns: {p: power/board W}}\nlogs:\n  - {files: log.csv, layout: s, for: {setup: bench}}\n';
    expect(readEpisode(text, { 'log.csv': 't,p\n0,1\n' }).findings.map((f) => f.message).join()).toMatch(/"power\/board" is no temperature; say under steady how far it may move \(change: 2 % or 5 W\)/i);
  });
});
