// Ids as people type them: with the workload of the subject, where what is meant was read without one.
import { describe, expect, test } from 'vitest';
import { explain, type Fact, Facts, isFact, listFacts, rightOf } from '../../pipeline/facts/index.js';
import { episodeOf } from './episode.js';

const readings = `
bench/stock//temperature/core/idle: 38 38 39 °C
bench/stock/scene/temperature/core/load: 67 68 67 °C
bench/stock/long/temperature/core/load: 70 70 70 °C
bench/stock//temperature/card/idle: 30 30 30 °C
bench/stock/scene/temperature/card/idle: 33 33 33 °C
bench/stock/scene/temperature/card/load: 60 60 60 °C
`.trim();
const facts = new Facts(episodeOf(readings));
const idOf = (id: string): string => (facts.get(id) as Fact).id;
const rise = 'rise:bench/stock/scene/temperature/core/load~workload=,phase=idle';

describe('what is read without a workload answers with its own id', () => {
  test.each([
    ['rise:bench/stock/scene/temperature/core/load~phase=idle', rise],
    ['rise:bench/stock/scene/temperature/core/load~bench/stock/scene/temperature/core/idle', rise],
    ['mean:bench/stock/scene/temperature/core/idle', 'mean:bench/stock//temperature/core/idle'],
    ['raw:bench/stock/long/temperature/core/idle#2', 'raw:bench/stock//temperature/core/idle#2'],
    ['difference:(rise:bench/stock/long/temperature/core/load~phase=idle)~(rise:bench/stock/scene/temperature/core/load~phase=idle)', `difference:(rise:bench/stock/long/temperature/core/load~workload=,phase=idle)~(${rise})`],
  ])('%s', (typed, id) => expect(idOf(typed)).toBe(id));
  test('it is the same fact', () => expect(facts.get('rise:bench/stock/scene/temperature/core/load~phase=idle')).toBe(facts.get(rise)));
  test('and stands once in the list', () => {
    const ids = listFacts(facts, ['rise:bench/stock/scene/temperature/core/load~phase=idle', rise]).map((f) => f.id);
    expect(ids.filter((id) => id.startsWith('rise:'))).toEqual([rise]);
  });
});

test('where the plain reading exists, it is meant', () => {
  expect(idOf('rise:bench/stock/scene/temperature/card/load~phase=idle')).toBe('rise:bench/stock/scene/temperature/card/load~phase=idle');
  expect((facts.get('rise:bench/stock/scene/temperature/card/load~phase=idle') as Fact).shown).toBe('27 K');
});

test('an unknown workload, another phase and another part mean nothing', () => {
  for (const id of ['mean:bench/stock/scen/temperature/core/idle', 'mean:bench/stock/scene/temperature/core/peak', 'rise:bench/stock/scene/temperature/core/load~part=board,phase=idle']) expect(isFact(facts.get(id)), id).toBe(false);
});

test('inside, where ids are whole, nothing falls back', () => {
  expect(isFact(facts.derive('rise', ['bench/stock/scene/temperature/core/load', 'bench/stock/scene/temperature/core/idle']))).toBe(false);
});

test('explained, and corrected', () => {
  expect(explain(facts, 'rise:bench/stock/scene/temperature/core/load~phase=idle').derivation?.id).toBe(rise);
  const correction = { fact: 'bench/stock/scene/temperature/core/idle' } as Parameters<typeof rightOf>[1];
  expect((rightOf(facts, correction) as Fact).id).toBe('mean:bench/stock//temperature/core/idle');
});
