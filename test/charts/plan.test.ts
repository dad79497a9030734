import { describe, expect, test } from 'vitest';
import { chartKinds, planCharts, prepareChart, splitRows } from '../../pipeline/charts/index.js';
import { Facts } from '../../pipeline/facts/index.js';
import { mostRows, textBoxes } from '../../pipeline/theme/index.js';
import { expectWellSet } from './boxes.js';
import { cardFacts, place, pumpFacts, sample, withCurve } from './sample.js';

describe.each([['one card, two boxes', cardFacts], ['six pumps', pumpFacts], ['a card with a curve', withCurve]])('%s', (_name, make) => {
  const facts = make();
  const planned = planCharts(facts);

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
      const { value, findings } = prepareChart(p, facts);
      expect(findings, p.name).toEqual([]);
      expectWellSet((await value!.draw()).svg);
    }
  });

  test('planned the same again', () => expect(planCharts(make())).toEqual(planned));
});

test('a card with idle, limits, logs and frame rates gets a chart of each', () => {
  expect(new Set(planCharts(cardFacts()).map((p) => p.kind))).toEqual(new Set(['bars-idle-load', 'bars', 'share-of-limit', 'trace', 'ranked', 'tradeoff', 'dots']));
});

test('an episode without readings gets none', () => {
  expect(planCharts(new Facts(sample({ setups: {}, settings: {}, measures: {}, parts: {}, readings: {} })))).toEqual([]);
});

describe('more rows than a phone can show', () => {
  const ids = Array.from({ length: 9 }, (_, i) => `p${i}`);
  const facts = new Facts(sample({
    setups: Object.fromEntries(ids.map((id, i) => [id, `Product ${i + 1}`])), settings: { s: 'Stock' }, measures: { flow: ['Flow', 'higher'] }, parts: { loop: 'Loop' },
    readings: Object.fromEntries(ids.map((id, i) => [`${id}/s/scene/flow/loop/load`, `${10 - i} ${10 - i} L/min`])),
  }));
  const request = { kind: 'ranked', name: 'flow', measure: 'flow', place };

  test('are an error where they are asked for in one picture', () => {
    expect(prepareChart(request, facts).findings.map((f) => f.code)).toEqual(['too-many-rows']);
  });

  test('are split as evenly as can be, places and scale running on', async () => {
    const parts = splitRows(request, facts);
    expect(parts.map((p) => [p.name, p.slice!.from, p.slice!.to])).toEqual([['flow-1', 0, 5], ['flow-2', 5, 9]]);
    const pictures = parts.map((p) => prepareChart(p, facts).value!);
    expect(pictures.map((p) => p.title)).toEqual(['Loop flow (1 of 2)', 'Loop flow (2 of 2)']);
    expect(pictures[1]!.table!.rows.map((r) => r[0])).toEqual(['6', '7', '8', '9']);
    const longest = await Promise.all(pictures.map(async (p) => Math.max(...[...(await p.draw()).svg.matchAll(/h([\d.]+)v[^"]*" fill="#(?:b9c9dc|ffb53d)"/g)].map((m) => Number(m[1])))));
    expect(longest[1]! / longest[0]!).toBeCloseTo(5 / 10, 1);
    expect(textBoxes((await pictures[0]!.draw()).svg).map((b) => b.text)).toContain('Product 1');
  });

  test('few enough are left alone', () => {
    expect(splitRows({ ...request, setups: ids.slice(0, mostRows) }, facts)).toHaveLength(1);
  });
});
