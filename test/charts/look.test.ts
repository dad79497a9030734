// Every kind of chart: its text well set, its bars as long as its figures, its words and table true to the facts.
import { beforeAll, describe, expect, test } from 'vitest';
import { chartKinds, inParts, prepareChart, rowsOf } from '../../pipeline/charts/index.js';
import { type Fact, isFact } from '../../pipeline/facts/index.js';
import { showNumber } from '../../pipeline/quantities/index.js';
import { type Drawn, type Prepared, textBoxes } from '../../pipeline/theme/index.js';
import { expectWellSet } from './boxes.js';
import { cases, requestOf } from './requests.js';
import { sample, place } from './sample.js';
import { Facts } from '../../pipeline/facts/index.js';
import { stages, wide } from '../theme/stages.js';

test('there is a case for every kind', () => {
  expect(new Set(cases.map((c) => c.request.kind))).toEqual(new Set(chartKinds));
});

describe.each(cases)('$name', (c) => {
  const facts = c.facts();

  test.each(stages.map((s) => [s.id, s] as const))('on the %s stage its text is well set, in as few parts as have room', async (_id, stage) => {
    const rows = rowsOf(requestOf(c), facts);
    for (let count = 1; ; count++) {
      const made = inParts(requestOf(c), rows, count).map((r) => prepareChart(r, facts, stage));
      const codes = made.flatMap((m) => m.findings.map((f) => f.code));
      if (count < rows && codes.includes('too-many-rows')) continue;
      // Eight names beside eight points are too many for the least of plots, and that is said.
      if (c.name === 'tradeoff-two' && stage.id === 'square') return expect(new Set(codes)).toEqual(new Set(['label-too-long']));
      expect(codes).toEqual([]);
      for (const { value } of made) expectWellSet((await value!.draw()).svg, stage);
      // Three rows of two bars have room everywhere.
      expect(Math.ceil(rows / count)).toBeGreaterThanOrEqual(Math.min(rows, stage.id === 'wide' ? 6 : 2));
      return;
    }
  });

  let prepared: Prepared;
  let drawn: Drawn;

  beforeAll(async () => {
    const { value, findings } = prepareChart(requestOf(c), facts, wide);
    expect(findings).toEqual([]);
    prepared = value!;
    drawn = await prepared.draw();
  });

  test('its text is well set', () => {
    const boxes = expectWellSet(drawn.svg);
    expect(boxes.length).toBeGreaterThan(4);
  });

  test('names and figures are at least 48 px', () => {
    const shown = new Set(prepared.facts.map((id) => facts.get(id)).filter((f): f is Fact => isFact(f)).filter((f) => ['mean', 'percent_of', 'per_watt', 'raw'].includes(f.kind)).map((f) => showNumber(f.value, f.decimals)));
    const figures = textBoxes(drawn.svg).filter((b) => shown.has(b.text));
    for (const b of figures) if (!['dots', 'tradeoff'].includes(c.request.kind)) expect(b.size, b.text).toBeGreaterThanOrEqual(48);
    for (const [name] of prepared.table!.rows) if (!/^[\d.,]+$/.test(name!)) for (const b of textBoxes(drawn.svg)) if (b.text === name) expect(b.size).toBeGreaterThanOrEqual(48);
  });

  test('pixels depend on no text', () => {
    expect(drawn.outlined).not.toMatch(/<text|<tspan|font-family/);
    expect(drawn.svg).toContain('<text');
  });

  test('the page is told what it shows', () => {
    expect(drawn.svg).toMatch(new RegExp(`^<svg [^>]*role="img" aria-labelledby="${c.name}-1 ${c.name}-2">`));
    expect(drawn.svg.match(/\srole=/g)).toHaveLength(1);
    expect(drawn.svg).toContain(`<title id="${c.name}-1">`);
    expect(prepared.alt).toMatch(/\.$/);
    expect(prepared.table!.rows.length).toBeGreaterThan(0);
    for (const row of prepared.table!.rows) expect(row).toHaveLength(prepared.table!.head.length);
  });

  test('every fact it names can be derived, and those in the table stand in the words too', () => {
    expect(new Set(prepared.facts).size).toBe(prepared.facts.length);
    for (const id of prepared.facts) expect(isFact(facts.get(id)), id).toBe(true);
    if (c.request.kind !== 'curve') expect(prepared.facts.length).toBeGreaterThan(0);
  });

  test('unit and better end are said once, in the subtitle', () => {
    const texts = textBoxes(drawn.svg).map((b) => b.text);
    const better = facts.about.measures.get(c.request.measure ?? '')?.better;
    if (['bars', 'ranked', 'dots', 'bars-idle-load'].includes(c.request.kind) && better && better !== 'neither') expect(texts.filter((t) => t.includes(`${better} is better`))).toHaveLength(1);
  });

  test('the same request is the same inputs and the same picture', async () => {
    const again = prepareChart(requestOf(c), c.facts(), wide).value!;
    expect(again.inputs).toBe(prepared.inputs);
    expect(await again.draw()).toEqual(drawn);
  });

  test('a draft says so, whatever else it shows', async () => {
    const { outlined, svg } = await prepared.draw({ draft: true });
    expect(svg).toContain('>DRAFT</text>');
    expect(outlined.length).toBeGreaterThan(drawn.outlined.length);
  });
});

/** Bars of an SVG as Vega writes them: from their left end, `h` wide. */
function barLengths(svg: string): number[] {
  return [...svg.matchAll(/<path d="M([\d.-]+),[\d.-]+h([\d.]+)[^"]*" fill="#/g)].map((m) => Number(m[2]));
}

describe('bars have a true zero', () => {
  test.each([
    ['ranked-higher', (f: Facts) => ['umbry', 'quarrow', 'tessick', 'orlo', 'pennick', 'wexcomb'].map((id) => f.value(`${id}/full/heater/flow/loop/load`))],
    ['one-layer', (f: Facts) => ['stock', 'limit-75', 'undervolt', 'overclock'].map((id) => f.value(`open-bench/${id}/scene/power/board/load`))],
  ] as const)('%s: lengths are to each other as the values', async (name, valuesOf) => {
    const c = cases.find((x) => x.name === name)!;
    const facts = c.facts();
    const { svg } = await prepareChart(requestOf(c), facts, wide).value!.draw();
    const values = valuesOf(facts).filter(isFact).map((f) => f.value.toNumber());
    const lengths = barLengths(svg);
    expect(lengths).toHaveLength(values.length);
    lengths.forEach((l, i) => expect(l / lengths[0]!).toBeCloseTo(values[i]! / values[0]!, 3));
  });

  test('negative values go left of it, and their figures too', async () => {
    const facts = new Facts(sample({
      setups: { a: 'Alder', b: 'Birch', c: 'Cedar' }, settings: { s: 'Stock' }, measures: { power: ['Change', 'neither'] }, parts: { board: 'Board' },
      readings: { 'a/s/scene/power/board/load': '-20 -20 W', 'b/s/scene/power/board/load': '40 40 W', 'c/s/scene/power/board/load': '-5 -5 W' },
    }));
    const { svg } = await prepareChart({ kind: 'bars', name: 'n', measure: 'power', place }, facts, wide).value!.draw();
    const boxes = expectWellSet(svg);
    const zero = (b: string): number => boxes.find((x) => x.text === b)!.right;
    expect(zero('−20')).toBeLessThan(zero('−5'));
    expect(boxes.find((x) => x.text === '40')!.left).toBeGreaterThan(zero('−5'));
  });
});
