// Every kind of graphic: its text well set inside its panel, its words true to the facts.
import { beforeAll, describe, expect, test } from 'vitest';
import { graphicKinds, prepareGraphic } from '../../pipeline/graphics/index.js';
import { isFact } from '../../pipeline/facts/index.js';
import type { Drawn, Prepared } from '../../pipeline/theme/index.js';
import { expectWellSet } from '../charts/boxes.js';
import { cases, requestOf } from './requests.js';
import { template } from './templates.js';
import { stages, wide } from '../theme/stages.js';

test('there is a case for every kind', () => {
  expect(new Set(cases.map((c) => c.request.kind))).toEqual(new Set(graphicKinds));
});

describe.each(cases)('$name', (c) => {
  const facts = c.facts();
  let prepared: Prepared;
  let drawn: Drawn;

  beforeAll(async () => {
    const { value, findings } = prepareGraphic(requestOf(c), facts, wide, template);
    expect(findings).toEqual([]);
    prepared = value!;
    drawn = await prepared.draw();
  });

  test('its text is well set, and inside the panel', () => {
    const boxes = expectWellSet(drawn.svg);
    const [x, y, width, height] = /<rect x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)" rx/.exec(drawn.svg)!.slice(1).map(Number) as [number, number, number, number];
    for (const b of boxes) {
      expect(b.left - x, b.text).toBeGreaterThanOrEqual(40);
      expect(x + width - b.right, b.text).toBeGreaterThanOrEqual(40);
      expect(b.top - y, b.text).toBeGreaterThanOrEqual(40);
      expect(y + height - b.bottom, b.text).toBeGreaterThanOrEqual(40);
    }
    expect(drawn.svg).toContain(`fill-opacity="${wide.theme.panel.opacity}"`);
  });

  test.each(stages.map((s) => [s.id, s] as const))('on the %s stage its text is well set', async (_id, stage) => {
    const { value, findings } = prepareGraphic(requestOf(c), facts, stage, template);
    expect(findings).toEqual([]);
    expectWellSet((await value!.draw()).svg, stage);
  });

  test('pixels depend on no text', () => expect(drawn.outlined).not.toMatch(/<text|<tspan|font-family/));

  test('every fact it names can be derived', () => {
    for (const id of prepared.facts) expect(isFact(facts.get(id)), id).toBe(true);
    expect(new Set(prepared.facts).size).toBe(prepared.facts.length);
  });

  test('its first fact stands in its words', () => {
    const fact = c.request.facts && facts.get(c.request.facts[0]!);
    if (isFact(fact || undefined)) expect(prepared.alt).toContain((fact as { shown: string }).shown);
  });

  test('the same again', async () => {
    const again = prepareGraphic(requestOf(c), c.facts(), wide, template).value!;
    expect(again.inputs).toBe(prepared.inputs);
    expect(await again.draw()).toEqual(drawn);
  });

  test('a draft says so', async () => {
    expect((await prepared.draw({ draft: true })).svg).toContain('>DRAFT</text>');
  });
});
