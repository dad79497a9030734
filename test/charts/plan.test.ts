import { describe, expect, test } from 'vitest';
import { changes } from '../../pipeline/charts/changes.js';
import { chartKinds, planCharts, prepareChart, splitRows } from '../../pipeline/charts/index.js';
import { Facts } from '../../pipeline/facts/index.js';
import { mostRows, textBoxes } from '../../pipeline/theme/index.js';
import { expectWellSet } from './boxes.js';
import { cardFacts, place, pumpFacts, sample, withCurve } from './sample.js';
import { colours, wide } from '../theme/stages.js';

describe.each([['one card, two boxes', cardFacts], ['six pumps', pumpFacts], ['a card with a curve', withCurve]])('%s', (_name, make) => {
  const facts = make();
  const planned = planCharts(facts, wide);

  test('as many charts as an episode can show, each name once and fit for a file', () => {
    expect(planned.length).toBeGreaterThanOrEqual(3);
    expect(planned.length).toBeLessThanOrEqual(12);
    expect(new Set(planned.map((p) => p.name)).size).toBe(planned.length);
    for (const p of planned) {
      expect(p.name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
      expect(chartKinds).toContain(p.kind);
    }
  });

  test('all of them can be drawn, well set', async () => {
    for (const p of planned) {
      const { value, findings } = prepareChart(p, facts, wide);
      expect(findings, p.name).toEqual([]);
      expectWellSet((await value!.draw()).svg);
    }
  });

  test('planned the same again', () => expect(planCharts(make(), wide)).toEqual(planned));
});

test('a card with idle, limits, logs and frame rates gets a chart of each', () => {
  expect(new Set(planCharts(cardFacts(), wide).map((p) => p.kind))).toEqual(new Set(['bars-idle-load', 'bars', 'share-of-limit', 'trace', 'tradeoff', 'dots']));
});

describe('what was compared stands side by side, and first', () => {
  test('two setups over four settings: each measure as one picture of both, idle and load of each after the first', () => {
    const facts = cardFacts();
    const planned = planCharts(facts, wide);
    const bars = planned.filter((p) => p.kind === 'bars' && !p.facts);
    expect(bars.map((p) => p.measure)).toEqual(['temperature', 'power', 'frame_rate']);
    for (const p of bars) expect(prepareChart(p, facts, wide).value!.table).toMatchObject({ head: ['', 'Open bench', 'Closed case'], rows: [['Stock'], ['Power limit 75 %'], ['Undervolt'], ['Overclock']].map(([name]) => [name, expect.anything(), expect.anything()]) });
    expect(planned.slice(0, 3).map((p) => [p.kind, p.setups])).toEqual([['bars', undefined], ['bars-idle-load', ['open-bench']], ['bars-idle-load', ['closed-case']]]);
  });

  test('frames per watt are of both setups', () => {
    const facts = cardFacts();
    const per = planCharts(facts, wide).find((p) => p.name === 'frames-per-watt')!;
    expect(new Set(per.facts!.map((id) => /:([\w-]+)/.exec(id)![1]))).toEqual(new Set(['open-bench', 'closed-case']));
  });

  test('a measure without a better end never comes first', () => {
    const episode = sample({ setups: { a: 'Alder', b: 'Birch' }, settings: { s: 'Stock' }, measures: { voltage: ['Voltage', 'neither'], noise: ['Noise', 'lower'] }, parts: { core: 'Core' }, readings: { 'a/s/scene/voltage/core/load': '1.0 1.0 V', 'b/s/scene/voltage/core/load': '0.9 0.9 V', 'a/s/scene/noise/core/load': '40 40 dB(A)', 'b/s/scene/noise/core/load': '30 30 dB(A)' } });
    expect([...new Set(planCharts(new Facts(episode), wide).map((p) => p.measure))]).toEqual(['noise', 'voltage']);
  });

  test('what is quoted from an earlier episode stands beside what was measured now', () => {
    const episode = sample({ setups: { old: 'Old paste', fresh: 'Fresh paste' }, settings: { s: 'Stock' }, measures: { temperature: ['Temperature', 'lower'] }, parts: { core: 'Core' }, readings: { 'old/s/scene/temperature/core/load': '66 °C!', 'fresh/s/scene/temperature/core/load': '62 63 63 °C', '/s//temperature/core/limit': '95 °C!' } });
    const facts = new Facts({ ...episode, quotes: [{ episode: 'earlier', fact: 'mean:bench/s/scene/temperature/core/load', as: 'old/s/scene/temperature/core/load', place }] });
    const first = prepareChart(planCharts(facts, wide)[0]!, facts, wide);
    expect(first.findings).toEqual([]);
    expect(first.value!.table!.rows.map((r) => r[1])).toEqual(['Fresh paste', 'Old paste']);
    expect(first.value!.alt).toContain('Old paste from an earlier episode');
  });

  test('different work is shown without a better end', async () => {
    const facts = new Facts(sample({ setups: { a: 'Alder' }, settings: { s: 'Stock' }, workloads: { dig: 'Dig', fill: 'Fill' }, measures: { power: ['Power', 'lower'] }, parts: { board: 'Board' }, readings: { 'a/s/dig/power/board/load': '10 11 W', 'a/s/fill/power/board/load': '20 21 W' } }));
    for (const p of planCharts(facts, wide)) expect((await prepareChart(p, facts, wide).value!.draw()).svg).not.toContain('is better');
  });
});

describe('logs over time are drawn where something happens', () => {
  const at = (f: (t: number) => number): number[] => Array.from({ length: 400 }, (_, t) => f(t));
  test.each([
    ['a climb to a plateau', at((t) => Math.round(34 + 32 * (t < 60 ? 0 : 1 - Math.exp((60 - t) / 40)))), true],
    ['a step', at((t) => (t < 60 ? 20 : 250) + Math.sin(t)), true],
    ['a flat line with noise', at((t) => 250 + 3 * Math.sin(t * 1.7)), false],
    ['a flat line of whole degrees', at((t) => (t % 5 ? 66 : 67)), false],
    ['a constant', at(() => 300), false],
    ['a drift that nobody would see from zero', at((t) => 250 + t / 100), false],
    ['noise alone', at((t) => 50 + 20 * Math.sin(t * t)), false],
    ['two samples', [1, 9], false],
  ])('%s', (_what, values, expected) => expect(changes(values)).toBe(expected));
});

test('an episode without readings gets none', () => {
  expect(planCharts(new Facts(sample({ setups: {}, settings: {}, measures: {}, parts: {}, readings: {} })), wide)).toEqual([]);
});

describe('more rows than a phone can show', () => {
  const ids = Array.from({ length: 9 }, (_, i) => `p${i}`);
  const facts = new Facts(sample({
    setups: Object.fromEntries(ids.map((id, i) => [id, `Product ${i + 1}`])), settings: { s: 'Stock' }, measures: { flow: ['Flow', 'higher'] }, parts: { loop: 'Loop' },
    readings: Object.fromEntries(ids.map((id, i) => [`${id}/s/scene/flow/loop/load`, `${10 - i} ${10 - i} L/min`])),
  }));
  const request = { kind: 'ranked', name: 'flow', measure: 'flow', place };

  test('are an error where they are asked for in one picture', () => {
    expect(prepareChart(request, facts, wide).findings.map((f) => f.code)).toEqual(['too-many-rows']);
  });

  test('are split as evenly as can be, places and scale running on', async () => {
    const parts = splitRows(request, facts);
    expect(parts.map((p) => [p.name, p.slice!.from, p.slice!.to])).toEqual([['flow-1', 0, 5], ['flow-2', 5, 9]]);
    const pictures = parts.map((p) => prepareChart(p, facts, wide).value!);
    expect(pictures.map((p) => p.title)).toEqual(['Loop flow (1 of 2)', 'Loop flow (2 of 2)']);
    expect(pictures[1]!.table!.rows.map((r) => r[0])).toEqual(['6', '7', '8', '9']);
    const longest = await Promise.all(pictures.map(async (p) => Math.max(...[...(await p.draw()).svg.matchAll(new RegExp(`h([\\d.]+)v[^"]*" fill="(?:${colours.plain}|${colours.highlight})"`, 'g'))].map((m) => Number(m[1])))));
    expect(longest[1]! / longest[0]!).toBeCloseTo(5 / 10, 1);
    expect(textBoxes((await pictures[0]!.draw()).svg).map((b) => b.text)).toContain('Product 1');
  });

  test('few enough are left alone', () => {
    expect(splitRows({ ...request, setups: ids.slice(0, mostRows) }, facts)).toHaveLength(1);
  });
});
