// An entry of the record that gives a kind too much, too little or the wrong thing is told so, and nothing is passed over.
import { expect, test } from 'vitest';
import { prepareGraphic } from '../../pipeline/graphics/index.js';
import type { PictureRequest } from '../../pipeline/facts/index.js';
import { cardFacts, place } from '../charts/sample.js';
import { template, wide } from '../theme/stages.js';

const facts = cardFacts();
const core = 'open-bench/stock/scene/temperature/core/load';
const rise = `rise:${core}~workload=,phase=idle`;

test.each<[Partial<PictureRequest> & { kind: string }, RegExp]>([
  [{ kind: 'figure' }, /names no fact/],
  [{ kind: 'pair', facts: [rise] }, /names 1 fact, and a pair takes at least 2/],
  [{ kind: 'pair', facts: [rise, rise, rise, rise] }, /names 4 facts, and a pair takes 2 to 3/],
  [{ kind: 'gauge', facts: [rise] }, /a gauge is of a percent of/],
  [{ kind: 'span', facts: [`mean:${core}`] }, /a span is of rise, difference or over room/],
  [{ kind: 'parts', facts: [rise] }, /names facts, and a parts takes none/],
  [{ kind: 'chapter', measure: 'temperature' }, /gives `measure`, which a chapter does not show/],
  [{ kind: 'gauge', text: 'words' }, /gives `text`/],
  [{ kind: 'correction', facts: [rise] }, /does not say what was wrong/],
  [{ kind: 'name' }, /neither a title nor one of `setups`/],
])('%j', (request, message) => {
  const { value, findings } = prepareGraphic({ name: 'shown', place, ...request }, facts, wide, template);
  expect(value).toBeUndefined();
  expect(findings.map((f) => f.message).join('\n')).toMatch(message);
  expect(findings.every((f) => f.severity === 'error' && f.place === place)).toBe(true);
});
