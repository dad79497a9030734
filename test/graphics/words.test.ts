// What stands on graphics, against figures of the trade.
import { describe, expect, test } from 'vitest';
import { Facts } from '../../pipeline/facts/index.js';
import { planGraphics, prepareGraphic } from '../../pipeline/graphics/index.js';
import { textBoxes } from '../../pipeline/theme/index.js';
import { cardFacts, place, pumpFacts, sample } from '../charts/sample.js';
import { described } from './requests.js';
import { template } from './templates.js';
import { wide } from '../theme/stages.js';

// 28 to 49 °C is a rise of 21; 415 W of a 450 W limit is 92 %; 99 to 97 frames is 2 %: common practice, no published source.
const trade = (): Facts => new Facts(sample({
  setups: { a: 'Alder' }, settings: { stock: 'Stock', limit: 'Power limit' }, measures: { temperature: ['Temperature', 'lower'], power: ['Power', 'lower'], frame_rate: ['Frame rate', 'higher'] }, parts: { core: 'Core', board: 'Board', average: 'Average' },
  readings: {
    'a/stock//temperature/core/idle': '28 28 28 °C', 'a/stock/scene/temperature/core/load': '49 49 49 °C',
    'a/stock/scene/power/board/load': '415 415 415 W', 'a/stock//power/board/limit': '450 W!', 'a/limit/scene/power/board/load': '355 355 355 W',
    'a/stock/scene/frame_rate/average/load': '99 99 99 fps', 'a/limit/scene/frame_rate/average/load': '97 97 97 fps',
  },
}));

async function wordsOf(request: object, facts: Facts): Promise<string[]> {
  const { value, findings } = prepareGraphic({ kind: 'figure', name: 'n', place, ...request }, facts, wide, template);
  expect(findings).toEqual([]);
  return textBoxes((await value!.draw()).svg).map((b) => b.text.replace(/[\u202f\u00a0]/g, ' '));
}

describe('a figure', () => {
  test.each([
    ['rise:a/stock/scene/temperature/core/load~workload=,phase=idle', ['Core temperature, rise', '21', 'K', 'From 28 °C to 49 °C', 'Alder, Stock, Test scene', 'Mean of 3 runs']],
    ['percent_of:a/stock/scene/power/board/load~workload=,phase=limit', ['Board power, share of the limit', '92', '%', '415 W of 450 W']],
    ['percent_change:a/limit/scene/frame_rate/average/load~setting=stock', ['Average frame rate, change', '−2', '%', 'From 99 fps to 97 fps', 'Power limit against Stock · Alder, Test scene']],
    ['difference:a/stock/scene/power/board/load~setting=limit', ['+60', 'W', 'From 355 W to 415 W']],
    ['mean:a/stock/scene/power/board/load', ['Board power, load', '415', 'W']],
    // A limit has no workload of its own: the one that it is held against stands below.
    ['difference:a/stock//power/board/limit~workload=scene,phase=load', ['35', 'W', '415 W, limit 450 W', 'Alder, Stock, Test scene']],
  ])('%s', async (id, words) => {
    expect(await wordsOf({ facts: [id] }, trade())).toEqual(expect.arrayContaining(words));
  });

  test('own words replace those of the record', async () => {
    const words = await wordsOf({ facts: ['mean:a/stock/scene/power/board/load'], title: 'Heavy', text: 'All of it' }, trade());
    expect(words).toEqual(expect.arrayContaining(['Heavy', 'All of it']));
    expect(words).not.toContain('Board power, load');
  });
});

describe('before and after', () => {
  test('from base to subject, the difference signed', async () => {
    const words = await wordsOf({ kind: 'before-after', facts: ['difference:a/limit/scene/power/board/load~setting=stock'] }, trade());
    expect(words).toEqual(expect.arrayContaining(['Stock', '415', 'Power limit', '355', 'Difference', '−60']));
  });
  test('two facts in the order given', async () => {
    const words = await wordsOf({ kind: 'before-after', facts: ['mean:a/limit/scene/power/board/load', 'mean:a/stock/scene/power/board/load'] }, trade());
    expect(words).toContain('+60');
  });
});

describe('where the figures as shown would give another result, it says so', () => {
  // 60.33 and 62.67 are shown as 60 and 63; their difference is 2.33, not 3. 14.33 W of 16 W are 89.6 %, and 14 of 16 would be 88 %.
  const facts = new Facts(sample({
    setups: { a: 'Alder', b: 'Birch' }, settings: { s: 'Stock' }, measures: { temperature: ['Temperature', 'lower'], power: ['Power', 'lower'] }, parts: { core: 'Core', board: 'Board' },
    readings: { 'a/s/scene/temperature/core/load': '60 60 61 °C', 'b/s/scene/temperature/core/load': '62 63 63 °C', 'a/s/scene/power/board/load': '14 14 15 W', 'b/s/scene/power/board/load': '12 12 12 W', '/s//power/board/limit': '16 W!' },
  }));
  const difference = 'difference:b/s/scene/temperature/core/load~setup=a';
  const share = (setup: string) => `percent_of:${setup}/s/scene/power/board/load~setup=,workload=,phase=limit`;
  test('a difference beside both', async () => {
    const words = await wordsOf({ kind: 'before-after', facts: [difference] }, facts);
    expect(words).toEqual(expect.arrayContaining(['60', '63', '+2']));
  });
  test.each([
    [{ kind: 'before-after', facts: [difference] }, 'ifference taken before rounding'],
    [{ kind: 'figure', facts: [difference] }, 'Difference taken before rounding'],
    [{ kind: 'figure', facts: ['mean:b/s/scene/temperature/core/load', difference] }, 'Differences taken before rounding'],
    [{ kind: 'span', facts: [difference] }, 'difference taken before rounding'],
    [{ kind: 'summary', facts: [difference] }, 'difference taken before rounding'],
    [{ kind: 'correction', facts: [difference], text: '3 K' }, 'difference taken before rounding'],
    [{ kind: 'gauge', facts: [share('a')] }, 'percentage taken before rounding'],
    [{ kind: 'gauge', facts: [share('a'), share('b')] }, 'percentages taken before rounding'],
  ])('%j', async (request, remark) => expect((await wordsOf(request, facts)).join(' ')).toContain(remark));
  test('not where they give the same', async () => expect((await wordsOf({ kind: 'gauge', facts: [share('b')] }, facts)).join(' ')).not.toContain('rounding'));
});

test('what is left of a limit is no change: without a sign, and at what of which limit', async () => {
  const facts = new Facts(sample({
    setups: { a: 'Alder' }, settings: { s: 'Stock' }, measures: { temperature: ['Temperature', 'lower'] }, parts: { core: 'Core' },
    readings: { 'a/s/scene/temperature/core/load': '97 97 97 °C', '/s//temperature/core/limit': '105 °C!' },
  }));
  const words = await wordsOf({ kind: 'figure', title: 'Below its limit', facts: ['difference:/s//temperature/core/limit~a/s/scene/temperature/core/load'] }, facts);
  expect(words).toEqual(expect.arrayContaining(['8', '97 °C, limit 105 °C']));
});

describe('what cannot be shown', () => {
  test.each([
    [{ kind: 'figure' }, 'picture-incomplete'],
    [{ kind: 'figure', facts: ['mean:a/b/c/d/e/f'] }, 'picture-empty'],
    [{ kind: 'figure', facts: ['percent_change:a/stock/scene/temperature/core/load~workload=,phase=idle'] }, 'picture-empty'],
    [{ kind: 'before-after', facts: ['mean:a/stock/scene/power/board/load'] }, 'picture-incomplete'],
    [{ kind: 'before-after', facts: ['mean:a/stock/scene/power/board/load', 'mean:a/stock/scene/temperature/core/load'] }, 'picture-empty'],
    [{ kind: 'ranking', facts: ['mean:a/stock/scene/power/board/load', 'mean:a/stock/scene/temperature/core/load'] }, 'picture-empty'],
    [{ kind: 'ranking', measure: 'noise' }, 'picture-empty'],
    [{ kind: 'now', setups: ['nobody'] }, 'picture-empty'],
    [{ kind: 'now' }, 'picture-incomplete'],
    [{ kind: 'chapter', title: 'W'.repeat(80) }, 'label-too-long'],
    [{ kind: 'chapter', title: 'שלום' }, 'missing-glyph'],
    [{ kind: 'banner' }, 'picture-kind'],
  ])('%o', (request, code) => {
    const { value, findings } = prepareGraphic({ name: 'n', place, ...request }, trade(), wide, template);
    expect(value).toBeUndefined();
    expect(findings.map((f) => f.code)).toContain(code);
    for (const f of findings) expect(f.place).toBe(place);
  });
});

test('a title that is too long is placed where the title stands, and is said once and not in full', () => {
  const title = `Alder ${'and so on '.repeat(30)}`;
  const at = { ...place, line: 3 };
  const episode = sample({ title, setups: { a: 'Alder' }, settings: {}, measures: {}, parts: {}, readings: {} });
  const { findings } = prepareGraphic({ kind: 'chapter', name: 'title', place }, new Facts({ ...episode, texts: [{ role: 'title', text: title, place: at }] }), wide, template);
  expect(findings.map((f) => f.code)).toEqual(['label-too-long']);
  expect(findings[0]!.place).toBe(at);
  expect(findings[0]!.message.length).toBeLessThan(200);
});

test('in the words of a picture every sentence begins with a capital', () => {
  const facts = pumpFacts();
  for (const p of planGraphics(facts).filter((r) => r.kind !== 'chapter')) expect(prepareGraphic(p, facts, wide, template).value!.alt).not.toMatch(/[.] \p{Ll}/u);
});

test('names with markup are shown as they are', async () => {
  const facts = new Facts(sample({
    setups: { a: '<b>"R&D"</b> {{x}}', b: 'Birch' }, settings: { s: 'Stock' }, measures: { power: ['Power', 'lower'] }, parts: { board: 'Board' },
    readings: { 'a/s/scene/power/board/load': '10 10 W', 'b/s/scene/power/board/load': '12 12 W' },
  }));
  const words = await wordsOf({ kind: 'ranking', measure: 'power' }, facts);
  expect(words).toContain('<b>"R&D"</b> {{x}}');
});

describe('planned where the record asks for none', () => {
  test.each([['card', described, ['chapter', 'conditions', 'parts', 'settings', 'figure', 'before-after', 'before-after', 'figure', 'summary', 'end']], ['card without versions', cardFacts, undefined], ['pumps', pumpFacts, ['chapter', 'conditions', 'before-after', 'ranking', 'end']]] as const)('%s', (_n, make, kinds) => {
    const facts = make();
    const planned = planGraphics(facts);
    if (kinds) expect(planned.map((p) => p.kind)).toEqual(kinds);
    expect(new Set(planned.map((p) => p.name)).size).toBe(planned.length);
    for (const p of planned) expect(prepareGraphic(p, facts, wide, template).findings, p.name).toEqual([]);
  });
  test('no percents of decibels', () => {
    const facts = pumpFacts();
    for (const p of planGraphics(facts)) for (const id of p.facts ?? []) expect(id).not.toMatch(/^percent.*noise/);
  });
});

test('before and after, the one quoted from an earlier episode', async () => {
  const episode = sample({
    setups: { old: 'Old paste', fresh: 'Fresh paste' }, settings: { s: 'Stock' }, measures: { temperature: ['Temperature', 'lower'] }, parts: { core: 'Core', room: 'Room' },
    readings: { 'old/s/scene/temperature/core/load': '66 °C!', 'fresh/s/scene/temperature/core/load': '62 62 62 °C', 'old/s/scene/temperature/room/load': '20.5 °C!', 'fresh/s/scene/temperature/room/load': '21.5 °C' },
  });
  const quotes = ['core', 'room'].map((part) => ({ episode: 'earlier', fact: `mean:bench/s/scene/temperature/${part}/load`, as: `old/s/scene/temperature/${part}/load`, place }));
  const facts = new Facts({ ...episode, quotes });
  const request = planGraphics(facts).find((p) => p.kind === 'before-after')!;
  const words = await wordsOf(request, facts);
  expect(words).toEqual(expect.arrayContaining(['Old paste', '66', 'Fresh paste', '62', 'Difference', '−4']));
  expect(words.join(' ')).toContain('Old paste from an earlier episode');
  expect(words.join(' ')).toContain('room 20.5 to 21.5 °C');
});
