import { expect, test } from 'vitest';
import { type Fact, Facts, isFact, outcomeOf, uncertaintyOf, withQuotes } from '../../pipeline/facts/index.js';
import { readQuantity } from '../../pipeline/quantities/index.js';
import type { Episode, Quote } from '../../pipeline/records/index.js';
import { episodeOf, factsOf } from './episode.js';

const earlier = factsOf('bench/stock/scene/temperature/core/load: 66 66 67 °C\nbench/stock/scene/voltage/core/load: 0.905 0.905 0.905 V');
const id = 'mean:bench/stock/scene/temperature/core/load';
const lookup = (episode: string, fact: string): Fact | undefined => {
  const f = episode === 'earlier' ? earlier.get(fact) : undefined;
  return isFact(f) ? f : undefined;
};
const own = 'after/stock/scene/temperature/core/load: 63 63 62 °C';
const as = 'before/stock/scene/temperature/core/load';

function quoting(...quotes: Partial<Quote>[]): Episode {
  const base = episodeOf(own);
  return { ...base, quotes: quotes.map((q) => ({ episode: 'earlier', fact: id, as, place: { ...base.place, line: 7 }, ...q })) };
}
const was = (text: string): Quote['was'] => {
  const q = readQuantity(text);
  if ('why' in q) throw new Error(q.why);
  return q.quantity;
};

test('a quoted result stands among the readings, exact', () => {
  const { episode, findings } = withQuotes(quoting({ was: was('66 °C') }), lookup);
  expect(findings).toEqual([]);
  const facts = new Facts(episode);
  const f = facts.derive('difference', ['after/stock/scene/temperature/core/load', as]);
  expect(isFact(f) && f.value.toString()).toBe('-3.66666666666667');
  expect(facts.isQuoted(as)).toBe(true);
  expect(facts.holders()).toEqual([]);
});

test.each<[string, Partial<Quote>, string, string]>([
  ['unknown fact', { fact: 'mean:no/such/fact/at/all/x' }, 'quote-unknown-fact', 'earlier has no fact "mean:no/such/fact/at/all/x"'],
  ['unknown episode', { episode: 'never' }, 'quote-unknown-fact', 'never has no fact'],
  ['itself', { episode: 'example' }, 'quote-cycle', 'example quotes example, which is itself'],
  ['a key that has readings', { as: 'after/stock/scene/temperature/core/load' }, 'quote-twice', 'has a value already'],
  ['a changed result', { was: was('66.4 °C') }, 'quote-changed', 'was 66.4 °C when it was quoted; it is now 66.3 °C'],
  ['a changed result in another unit', { fact: 'mean:bench/stock/scene/voltage/core/load', was: was('900 mV') }, 'quote-changed', 'was 900 mV when it was quoted; it is now 905 mV'],
  ['a result of another kind', { was: was('66 W') }, 'quote-changed', 'was 66 W when it was quoted; it is now 66 °C'],
])('%s is a finding', (_, quote, code, message) => {
  const { findings } = withQuotes(quoting(quote), lookup);
  expect(findings.map((f) => f.code)).toEqual([code]);
  expect(findings[0]!.message).toContain(message);
  expect(findings[0]!.place.line).toBe(7);
});

test('the caller can tell an unknown episode and a cycle, with the name that was meant', () => {
  const { findings } = withQuotes(quoting({ episode: 'erlier' }, { episode: 'ring', as: 'x/stock/scene/temperature/core/load' }), (e) => (e === 'ring' ? { missing: 'cycle' } : { missing: 'episode', nearest: 'earlier' }));
  expect(findings.map((f) => [f.code, f.suggest])).toEqual([['quote-unknown-episode', 'earlier'], ['quote-cycle', undefined]]);
  expect(findings[0]!.message).toBe('there is no episode "erlier" to quote from; did you mean "earlier"?');
});

test('two quotes cannot have one key, and one that failed leaves the others', () => {
  const { episode, findings } = withQuotes(quoting({}, {}, { fact: 'mean:gone', as: 'y/stock/scene/temperature/core/load' }), lookup);
  expect(findings.map((f) => f.code)).toEqual(['quote-twice', 'quote-unknown-fact']);
  expect(episode.readings.filter((r) => r.key === as)).toHaveLength(1);
});

test('how well it is known there comes with it, and what is not known decides nothing', () => {
  const outcome = (episode: Episode): unknown => {
    const facts = new Facts(episode);
    const f = facts.derive('difference', ['after/stock/scene/temperature/core/load', as]);
    return isFact(f) && outcomeOf(facts, f);
  };
  expect(outcome(withQuotes(quoting({}), lookup).episode)).toBe('undecided');
  // 66.3 ± 0.9 then and 62.7 ± 0.9 now.
  expect(outcome(withQuotes(quoting({}), lookup, (_, fact) => uncertaintyOf(earlier, fact)).episode)).toBe('lower');
});

test('a quoted mean keeps its runs and was read: a room beside it makes it no finer', () => {
  const { episode } = withQuotes(quoting({}), lookup);
  const facts = new Facts({ ...episode, readings: [...episode.readings, ...episodeOf('before/stock/scene/temperature/room/load: 21.1 21.2 21.1 °C').readings] });
  const runs = facts.derive('count', [as], 'runs');
  expect(isFact(runs) && runs.value.toString()).toBe('3');
  const over = facts.derive('over_room', [as, 'before/stock/scene/temperature/room/load']);
  // 66.33 °C of a board that reads whole degrees, 21.13 °C of a thermometer that reads tenths.
  expect(isFact(over) && over.shown).toBe('45 K');
});

test('a limit that is quoted was set there, and stays exact', () => {
  const set = factsOf('bench///temperature/core/limit: = 90 °C').get('constant:bench///temperature/core/limit');
  const { episode } = withQuotes(quoting({ fact: 'x', as: '///temperature/core/limit' }), () => (isFact(set) ? set : undefined));
  expect(episode.readings.find((r) => r.key === '///temperature/core/limit')).not.toHaveProperty('runs');
});
