// Facts of the trade: common practice, no published source.
import { expect, test } from 'vitest';
import { type FactKind, isFact } from '../../pipeline/facts/index.js';
import { factsOf } from './episode.js';

const facts = factsOf(`
a////core/idle: 28 °C
a////core/load: 49 °C
b////core/idle: 33 °C
b////core/load: 53 °C
a///power/board/full: 415 W
a///power/board/saving: 355 W
b///power/board/full: 420 W
a///power/board/limit: = 450 W
a///rate//first: 99 fps
a///rate//second: 97 fps
a///rate//third: 96 fps
a///voltage/core/undervolt: 0.90 V
`.trim());

test.each<[FactKind, string, string, string]>([
  ['rise', 'a////core/load', 'a////core/idle', '21 K'],
  ['rise', 'b////core/load', 'b////core/idle', '20 K'],
  ['percent_of', 'a///power/board/full', 'a///power/board/limit', '92 %'],
  ['percent_of', 'a///power/board/saving', 'a///power/board/limit', '79 %'],
  ['difference', 'a///power/board/saving', 'a///power/board/full', '−60 W'],
  ['percent_change', 'a///power/board/saving', 'a///power/board/full', '−14 %'],
  ['percent_change', 'a///power/board/full', 'a///power/board/saving', '17 %'],
  ['percent_of', 'b///power/board/full', 'a///power/board/limit', '93 %'],
  ['difference', 'a///power/board/saving', 'b///power/board/full', '−65 W'],
  ['percent_change', 'a///power/board/saving', 'b///power/board/full', '−15 %'],
  ['percent_change', 'a///rate//second', 'a///rate//first', '−2 %'],
  ['percent_change', 'a///rate//third', 'a///rate//first', '−3 %'],
  ['difference', 'a///voltage/core/undervolt', '=0.95 V', '−0.05 V'],
])('%s of %s to %s is %s', (kind, subject, base, shown) => {
  const f = facts.derive(kind, [subject, base]);
  expect(isFact(f) && f.shown).toBe(shown);
});
