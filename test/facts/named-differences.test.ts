import { expect, test } from 'vitest';
import { isFact } from '../../pipeline/facts/index.js';
import { factsOf } from './episode.js';

const facts = factsOf(`
a/full//temperature/over-room/load: 53.0 53.2 °C
b/full//temperature/over-room/load: 60.0 60.2 °C
a/full//temperature/liquid-over-ambient/load: 18 °F
a/full//temperature_rise/core/load: 30 °C
a/full//temperature/overclocked/load: 30 °C
a/full//temperature/core/load: 74 °C
`.trim());
const unitOf = (key: string): string => {
  const f = facts.value(key);
  return isFact(f) ? f.unit.id : f.why;
};

test.each([
  ['a/full//temperature/over-room/load', 'K'],
  ['a/full//temperature/liquid-over-ambient/load', 'delta-degF'],
  ['a/full//temperature_rise/core/load', 'K'],
  ['a/full//temperature/overclocked/load', 'degC'],
  ['a/full//temperature/core/load', 'degC'],
])('%s is in %s', (key, id) => {
  expect(unitOf(key)).toBe(id);
});

test('a temperature over the room has percentages; a temperature has none', () => {
  const f = facts.derive('percent_change', ['b/full//temperature/over-room/load', 'a/full//temperature/over-room/load']);
  expect(isFact(f) && f.shown).toBe('13 %');
  expect(isFact(facts.derive('ratio', ['a/full//temperature/core/load', 'a/full//temperature/overclocked/load']))).toBe(false);
});
