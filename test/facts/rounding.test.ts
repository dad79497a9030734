import { describe, expect, test } from 'vitest';
import { type FactKind, factKinds, Facts, isFact, roundingRules } from '../../pipeline/facts/index.js';
import { episodeOf, factsOf } from './episode.js';

const facts = factsOf(`
a///temperature/core/load: 53 54 54 °C
a///temperature/core/idle: 33 33 34 °C
b///temperature/core/load: 72 72 72 °C
b///temperature/core/warm: 61.4 61.4 61.4 °C
a///temperature/room/load: 21.4 21.5 21.6 °C
///temperature/core/limit: = 90.5 °C
a///power/board/load: 100.4 100.4 100.3 W
a///power/board/idle: 99.6 99.5 99.7 W
a///power/board/limit: = 100 W
a///rate//x: 9996 10000 fps
a///rate//y: 1 1 fps
a///rate//z: 2000 2000 fps
a///power/fan/x: 3 W
`.trim());
const shown = (kind: FactKind, ...operands: string[]): string | undefined => {
  const f = facts.derive(kind, operands);
  return isFact(f) ? f.shown : f.why;
};

test('every kind has one rule, in words', () => {
  expect(Object.keys(roundingRules).sort()).toEqual([...factKinds].sort());
  for (const rule of Object.values(roundingRules)) expect(rule.says).not.toBe('');
});

test.each<[string, FactKind, string[], string]>([
  ['a mean of whole degrees is whole', 'mean', ['a///temperature/core/load'], '54 °C'],
  ['a difference of whole degrees is whole', 'rise', ['a///temperature/core/load', 'a///temperature/core/idle'], '20 K'],
  ['one instrument: a spreadsheet dropped the zeros', 'difference', ['b///temperature/core/load', 'b///temperature/core/warm'], '10.6 K'],
  ['two instruments: the coarser decides', 'over_room', ['a///temperature/core/load', 'a///temperature/room/load'], '32 K'],
  ['a constant never makes it coarser or finer', 'difference', ['a///temperature/core/load', '///temperature/core/limit'], '−37 K'],
  ['a constant never makes it coarser', 'difference', ['a///power/board/load', 'a///power/board/limit'], '0.4 W'],
  ['whole percent', 'percent_of', ['a///power/board/idle', 'a///power/board/load'], '99 %'],
  ['a share that is not quite the whole is not shown as 100', 'percent_of', ['a///power/board/load', 'a///power/board/limit'], '100.4 %'],
  ['below one percent one decimal', 'percent_change', ['a///power/board/load', 'a///power/board/idle'], '0.8 %'],
  ['and two where one says nothing', 'percent_of', ['a///rate//y', 'a///rate//z'], '0.05 %'],
  ['three digits for each watt', 'per_watt', ['a///rate//y', 'a///power/board/limit'], '0.0100 fps/W'],
  ['three digits, carried', 'per_watt', ['a///rate//x', 'a///power/fan/x'], '3,333 fps/W'],
  ['two decimals for a ratio', 'ratio', ['a///power/board/load', 'a///power/board/idle'], '1.01×'],
  ['three digits from ten on', 'ratio', ['a///rate//z', 'a///rate//y'], '2,000×'],
])('%s', (_, kind, operands, text) => {
  expect(shown(kind, ...operands)).toBe(text);
});

describe('on the sofa', () => {
  // 53.67 − 33.33 is 20.33: the screen shows 54 and 33, which make 21.
  test('a rise says when the figures shown would give another one', () => {
    const f = facts.derive('rise', ['a///temperature/core/load', 'a///temperature/core/idle']);
    expect(isFact(f) && f.sofa).toBe('54 − 33 would give 21 K; taken before rounding it is 20 K');
  });

  test('and so does a percentage', () => {
    const of = factsOf('a///power/x/: 15 15 16 W\nb///power/x/: 13 14 14 W');
    const f = of.derive('percent_change', ['a///power/x/', 'b///power/x/']);
    // 15.33 to 13.67 is 12.2 %; 15 to 14 would be 7.1 %.
    expect(isFact(f) && f.sofa).toBe('(15 − 14) ÷ 14 would give 7 %; taken before rounding it is 12 %');
  });

  test('nothing is said where it agrees, or where nothing was rounded', () => {
    for (const [a, b] of [['b///temperature/core/load', 'a///temperature/core/idle'], ['a///rate//z', 'a///rate//y']] as const) {
      const f = facts.derive('difference', [a, b]);
      expect(isFact(f) && f.sofa).toBeUndefined();
    }
  });

  test('figures of two instruments are compared as each is shown', () => {
    const of = factsOf('a///t/core/: 61 61 61 °C\na///t/room/: 21.4 21.4 21.4 °C');
    const f = of.derive('over_room', ['a///t/core/', 'a///t/room/']);
    expect(isFact(f) && [f.shown, f.sofa]).toEqual(['40 K', undefined]);
  });
});

describe('a second unit', () => {
  const of = factsOf('a///temperature/core/load: 61 61 61 °C\na///temperature/core/idle: 40 41 40 °C\na///flow/loop/: 3.79 3.79 3.78 L/min', {
    secondUnits: new Map([['degC', 'degF'], ['L/min', 'gal/min']]),
  });
  test.each<[FactKind, string[], string | undefined]>([
    ['mean', ['a///temperature/core/load'], '142 °F'],
    ['rise', ['a///temperature/core/load', 'a///temperature/core/idle'], '37 °F'], // 20.67 K × 1.8 = 37.2, and not 69
    ['mean', ['a///flow/loop/'], '1.000 gal/min'], // 3.78667 ÷ 3.785411784 = 1.00033
    ['ratio', ['a///flow/loop/', '=1 L/min'], undefined],
    ['count', ['a///flow/loop/'], undefined],
  ])('%s of %j: %s', (kind, operands, second) => {
    const f = of.derive(kind, operands);
    expect(isFact(f) && f.second?.shown).toBe(second);
  });
});

test('values averaged from logs have decimals by their size, so the coarser decides', () => {
  const episode = episodeOf('a///power/board/load: 298.3 W\na///power/board/idle: 14.08 W');
  const difference = (): string | undefined => {
    const f = new Facts(episode).derive('rise', ['a///power/board/load', 'a///power/board/idle']);
    return isFact(f) ? f.shown : undefined;
  };
  expect(difference()).toBe('284.22 W');
  for (const r of episode.readings) r.log = { trace: '', firstLine: 2, lastLine: 61, samples: 60 };
  expect(difference()).toBe('284.2 W');
});
