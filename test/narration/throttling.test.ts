import { expect, test } from 'vitest';
import { mapOf, measure, named, said } from './episodes.js';

const change = { measures: mapOf(measure('throttled_time', 'lower', { spoken: ['throttled time'] }), measure('throttled_share', 'lower', { spoken: ['throttled share'] })), parts: mapOf(named('core', 'the core')) };

test.each([
  ['seconds and their share in one sentence', 'a/s/w/throttled_time/core/load: 119 119 119 s\na/s/w/throttled_share/core/load: 99 99 99 %', ['The core was throttled for one hundred nineteen seconds under load, which is ninety-nine percent of the time.']],
  ['seconds alone', 'a/s/w/throttled_time/core/load: 12 12 12 s', ['The core was throttled for twelve seconds under load.']],
  ['a share alone', 'a/s/w/throttled_share/core/load: 12 12 12 %', ['The core throttled share was twelve percent under load.']],
  ['never', 'a/s/w/throttled_time/core/load: 0 0 0 s\na/s/w/throttled_share/core/load: 0 0 0 %', ['The core was never throttled under load.']],
])('%s', (_, readings, expected) => {
  expect(said(readings, change, {}, 'throttled')).toEqual(expected);
});
