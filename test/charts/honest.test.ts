// What a chart picks out, and what it says below.
import { describe, expect, test } from 'vitest';
import { prepareChart } from '../../pipeline/charts/index.js';
import { ticks } from '../../pipeline/charts/axis.js';
import { lower } from '../../pipeline/charts/words.js';
import { reduce } from '../../pipeline/charts/reduce.js';
import { bestOf, Facts, isFact } from '../../pipeline/facts/index.js';
import { cardFacts, place, sample } from './sample.js';
import { colours, wide } from '../theme/stages.js';

function two(a: string, b: string, better: 'lower' | 'higher' | 'neither' = 'lower', more: Record<string, string> = {}): Facts {
  return new Facts(sample({
    setups: { a: 'Alder', b: 'Birch' }, settings: { s: 'Stock' }, measures: { power: ['Power', better], temperature: ['Temperature', 'lower'] }, parts: { board: 'Board', core: 'Core', room: 'Room' },
    readings: { 'a/s/scene/power/board/load': `${a} W`, 'b/s/scene/power/board/load': `${b} W`, ...more },
  }));
}
const ranked = { kind: 'ranked', name: 'r', measure: 'power', place };

describe('the highlight', () => {
  test.each([
    ['runs lie apart, lower is better', '100 101 100', '103 104 103', 'lower', 'a'],
    ['runs lie apart, higher is better', '100 101 100', '103 104 103', 'higher', 'b'],
    ['runs overlap', '100 104', '103 105', 'lower', undefined],
    ['runs touch', '100 103', '103 105', 'lower', undefined],
    ['no end is better', '100 101', '103 104', 'neither', undefined],
  ] as const)('%s', async (_what, a, b, better, winner) => {
    const facts = two(a, b, better);
    const values = ['a', 'b'].map((s) => facts.value(`${s}/s/scene/power/board/load`)).filter(isFact);
    const got = bestOf(facts, 'power', values);
    expect(got.fact?.subject[0]).toBe(winner);
    const { value } = prepareChart(ranked, facts, wide);
    const { svg } = await value!.draw();
    expect(svg.includes(`fill="${colours.highlight}"`)).toBe(winner !== undefined);
    expect(svg.includes('overlap run by run')).toBe(better !== 'neither' && winner === undefined);
  });

  test('a derived figure is as unsure as what it is made of: 100 to 110 over 50 W against 101 to 103 over 50 W', () => {
    const facts = two('50 50', '50 50', 'lower', { 'a/s/scene/frame_rate/x/load': '100 110 fps', 'b/s/scene/frame_rate/x/load': '101 103 fps' });
    facts.about.measures.set('frame_rate', { id: 'frame_rate', name: 'Frame rate', spoken: [], better: 'higher', place });
    const per = (s: string) => facts.derive('per_watt', [`${s}/s/scene/frame_rate/x/load`, `${s}/s/scene/power/board/load`]);
    expect(bestOf(facts, 'frame_rate', [per('a'), per('b')].filter(isFact))).toEqual({ close: 'scatter' });
  });
});

describe('the foot', () => {
  const foot = async (facts: Facts, request: object): Promise<string> => (await prepareChart({ ...ranked, ...request }, facts, wide).value!.draw()).svg.replaceAll('\u202f', ' ');
  test.each([
    ['3 runs each', '1 2 3', '4 5 6', 'Mean of 3 runs'],
    ['runs differ', '1 2', '4 5 6', 'Mean of 2 to 3 runs'],
    ['one run', '1', '4', 'One run each'],
  ])('%s', async (_w, a, b, words) => expect(await foot(two(a, b), {})).toContain(words));

  const temperatures = { 'a/s/scene/temperature/core/load': '60 60 °C', 'b/s/scene/temperature/core/load': '70 70 °C' };
  test.each([
    ['no room', {}, 'room temperature not recorded'],
    ['one room', { '///temperature/room/': '21.0 °C' }, 'room 21.0 °C'],
    ['two rooms', { 'a///temperature/room/': '20.5 °C', 'b///temperature/room/': '22.0 °C' }, 'room 20.5 to 22.0 °C'],
  ])('%s', async (_w, room, words) => expect(await foot(two('1 1', '2 2', 'lower', { ...temperatures, ...room }), { measure: 'temperature' })).toContain(words));

  test('power says nothing of the room', async () => expect(await foot(two('1 1', '2 2'), {})).not.toContain('room'));

  test('where subtracting the shown figures gives another rise, it says so: 31 to 60 is shown as 30', async () => {
    const svg = await foot(cardFacts(), { kind: 'bars-idle-load', measure: 'temperature', setups: ['open-bench'], settings: ['undervolt'] });
    expect(svg).toContain('rise 30 K');
    expect(svg).toContain('difference taken before rounding');
  });
  test('so do differences by themselves, as their ends stand in other pictures, and shares', async () => {
    // 60.33 and 62.67 °C are shown as 60 and 63; 14.33 W of 16 W are 89.6 %, and 14 of 16 would be 88 %.
    const facts = two('14 14 15', '12 12 12', 'lower', { 'a/s/scene/temperature/core/load': '60 60 61 °C', 'b/s/scene/temperature/core/load': '62 63 63 °C', '/s//power/board/limit': '16 W!' });
    expect(await foot(facts, { kind: 'differences', measure: 'temperature' })).toContain('difference taken before rounding');
    expect(await foot(facts, { kind: 'share-of-limit' })).toContain('percentages taken before rounding');
    expect(await foot(facts, { kind: 'share-of-limit', setups: ['b'] })).not.toContain('rounding');
  });
});

describe('round steps', () => {
  test.each([
    [55.2, 71.9, 6, ['55', '60', '65', '70', '75']],
    [0, 0.093, 5, ['0.00', '0.02', '0.04', '0.06', '0.08', '0.10']],
    [31, 31, 5, ['20', '40']],
    [-12, 30, 6, ['−20', '−10', '0', '10', '20', '30']],
    [0, 12000, 5, ['0', '5,000', '10,000', '15,000']],
  ])('%d to %d', (low, high, most, texts) => {
    const t = ticks(low, high, most);
    if (low !== high) expect(t.at.map((x) => x.text)).toEqual(texts);
    expect(t.domain[0]).toBeLessThanOrEqual(low);
    expect(t.domain[1]).toBeGreaterThanOrEqual(high);
    expect(t.at.length).toBeLessThanOrEqual(most + 1);
  });
});

describe('long logs', () => {
  const n = 100_000;
  const times = Array.from({ length: n }, (_, i) => i / 10);
  test('keep their extremes and their gaps', () => {
    const values = times.map((t) => Math.sin(t / 50));
    values[54_321] = 9;
    values[54_322] = -9;
    values[70_000] = Number.NaN;
    const points = reduce(times, values, 1000);
    expect(points.length).toBeLessThanOrEqual(5000);
    const drawn = points.map((p) => p.v);
    expect(Math.max(...drawn.map((v) => v ?? 0))).toBe(9);
    expect(Math.min(...drawn.map((v) => v ?? 0))).toBe(-9);
    expect(drawn).toContain(null);
    expect(points.every((p, i) => i === 0 || p.t >= points[i - 1]!.t)).toBe(true);
  });
  test('short ones are left alone', () => {
    expect(reduce(times.slice(0, 4000), times.slice(0, 4000), 1000)).toHaveLength(4000);
  });
});

test('within a sentence a name has no capital', () => {
  expect(lower('Coolant')).toBe('coolant');
  expect(lower('CPU load')).toBe('CPU load');
});
