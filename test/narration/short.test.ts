// The short telling: comparisons that the readings decide come first, and no more than three minutes.
import { describe, expect, test } from 'vitest';
import { narrate } from '../../pipeline/narration/index.js';
import type { Sentence } from '../../pipeline/narration/sentence.js';
import { shortTelling } from '../../pipeline/narration/short.js';
import { factsOf } from '../facts/episode.js';
import { arrangement, bench, box, mapOf, measure, parts, place, stock, undervolt } from './episodes.js';

const sentence = (section: string, text: string, seconds: number, more: Partial<Sentence> = {}): Sentence => ({ section, text, facts: [], seconds, ...more });
const result = (measure: string, size: number, decided = true, between: 'setup' | 'setting' = 'setup'): Partial<Sentence> => ({ measure, result: { between, decided, size } });
const texts = (all: readonly Sentence[], measures?: ReadonlyMap<string, { better: 'lower' | 'higher' | 'neither' }>): string[] => shortTelling(all, measures).map((s) => s.text);
const measures = new Map([['voltage', { better: 'neither' as const }], ['temperature', { better: 'lower' as const }], ['noise', { better: 'lower' as const }]]);

test('where nothing is compared, the first sentence of each section, in order', () => {
  expect(texts([sentence('a', 'one', 5), sentence('a', 'two', 5), sentence('b', 'three', 5)])).toEqual(['one', 'three']);
});

test('in a section, a measure with a better end speaks first', () => {
  expect(texts([sentence('how', 'we tested', 5), sentence('a', 'volts', 5, { measure: 'voltage' }), sentence('a', 'degrees', 5, { measure: 'temperature' })], measures)).toEqual(['we tested', 'degrees']);
});

test('what no longer fits into three minutes is left out', () => {
  expect(texts([sentence('a', 'long', 170), sentence('b', 'too long', 20), sentence('c', 'short', 10)])).toEqual(['long', 'short']);
});

describe('what was compared', () => {
  const how = sentence('how', 'we tested', 5);
  test('by measures in the order of the record; those without a better end give way', () => {
    const all = [how, sentence('x', 'volts', 5, result('voltage', 9)), sentence('x', 'decibels', 5, result('noise', 9)), sentence('x', 'degrees', 5, result('temperature', 1))];
    expect(texts(all, measures)).toEqual(['we tested', 'degrees', 'decibels']);
    expect(texts([how, sentence('x', 'volts', 5, result('voltage', 9))], measures)).toEqual(['we tested', 'volts']);
  });
  test('decided before undecided, the largest first', () => {
    const all = [how, sentence('x', 'unsure', 5, result('noise', 50, false)), sentence('x', 'small', 5, result('noise', 1)), sentence('x', 'large', 5, result('noise', 7))];
    expect(texts(all, measures)).toEqual(['we tested', 'large', 'small']);
  });
  test('what makes no difference stands behind what makes one, of whatever measure', () => {
    const all = [how, sentence('x', 'about the same temperature', 5, result('temperature', 1, false)), sentence('x', 'quieter', 5, result('noise', 7)), sentence('y', 'warmer', 5, result('temperature', 6, true, 'setting'))];
    expect(texts(all, measures)).toEqual(['we tested', 'warmer', 'quieter', 'about the same temperature']);
  });
  test('setups before settings', () => {
    const all = [how, sentence('y', 'settings', 5, result('noise', 9, true, 'setting')), sentence('x', 'setups', 5, result('noise', 1))];
    expect(texts(all, measures)).toEqual(['we tested', 'setups', 'settings']);
  });
  test('before single results where time is short', () => {
    const all = [how, sentence('alone', 'single', 100, { measure: 'noise' }), sentence('x', 'compared', 100, result('noise', 1))];
    expect(texts(all, measures)).toEqual(['we tested', 'compared']);
  });
  test('one of each measure before a second of any', () => {
    const all = [how, sentence('x', 'first', 60, result('temperature', 9)), sentence('x', 'second', 60, result('temperature', 8)), sentence('x', 'quieter', 60, result('noise', 1)), sentence('x', 'third', 50, result('temperature', 7))];
    expect(texts(all, measures)).toEqual(['we tested', 'first', 'quieter']);
  });
});

test('of a ranking the first and the last, not those between', () => {
  const rows = [['a', '9 9'], ['b', '5 5'], ['c', '7 7'], ['d', '3 3']].map(([id, runs]) => `${id}/s/w/noise/pump/load: ${runs} dB(A)`);
  const facts = factsOf(rows.join('\n'), { setups: mapOf(...['a', 'b', 'c', 'd'].map((id) => arrangement(id, `the ${id}`))), measures: mapOf(measure('noise', 'lower')) });
  const compared = shortTelling(narrate(facts), facts.about.measures).filter((s) => s.result).map((s) => s.text);
  expect(compared.map((t) => /The (\w) had the (\w+)/i.exec(t)!.slice(1))).toEqual([['d', 'lowest'], ['a', 'highest']]);
});

test('of real sentences: the setups at the front, power last where the record names it last', () => {
  const facts = factsOf(`bench/stock/w/power/board/load: 300 301 300 W
box/stock/w/power/board/load: 280 281 280 W
bench/undervolt/w/power/board/load: 250 251 250 W
box/undervolt/w/power/board/load: 240 241 240 W
bench/stock/w/temperature/core/load: 66 66 67 °C
box/stock/w/temperature/core/load: 75 75 76 °C
bench/undervolt/w/temperature/core/load: 60 60 61 °C
box/undervolt/w/temperature/core/load: 66 66 67 °C`, { parts, setups: mapOf(bench, box), settings: mapOf(stock, undervolt), measures: mapOf(measure('temperature', 'lower'), measure('power', 'lower')) });
  const short = shortTelling(narrate(facts), facts.about.measures);
  expect(short[1]!.text).toMatch(/core .*nine degrees warmer/);
  const compared = short.filter((s) => s.result).map((s) => s.measure);
  expect(compared.lastIndexOf('temperature')).toBeLessThan(compared.indexOf('power'));
  expect(short.reduce((sum, s) => sum + s.seconds, 0)).toBeLessThanOrEqual(180);
});

test('what is quoted from an earlier episode is compared with what was measured now', () => {
  const facts = factsOf('old/s/w/temperature/core/load: = 66 °C\nfresh/s/w/temperature/core/load: 62 62 62 °C', {
    parts, setups: mapOf(arrangement('old', 'the old paste'), arrangement('fresh', 'the fresh paste')), measures: mapOf(measure('temperature', 'lower')),
    quotes: [{ episode: 'earlier', fact: 'mean:bench/s/w/temperature/core/load', as: 'old/s/w/temperature/core/load', place }],
  });
  expect(shortTelling(narrate(facts), facts.about.measures)[1]!.text).toBe('With the fresh paste, the core under load was four degrees cooler than with the old paste, at sixty-two degrees.');
});
