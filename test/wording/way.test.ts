import { describe, expect, test } from 'vitest';
import { tokens } from '../../pipeline/script/index.js';
import { opposite, turned, turnedBefore } from '../../pipeline/wording/index.js';

/** The sentence with the word turned by which its number `n` was read as a change. */
function other(text: string, n: string, phrase: string, of = 'temperature'): string | undefined {
  const t = tokens(text);
  const from = t.findIndex((w) => w.text === n);
  const at = turned(t, { from, to: from + 1 }, phrase, of);
  return at && text.slice(0, at.start) + at.put + text.slice(at.end);
}

describe.each([
  ['the tank warms up by 7', '7', 'up', 'the tank cools down by 7'],
  ['the tank goes up by 7', '7', 'goes up', 'the tank goes down by 7'],
  ['it sits 3 short of the mark', '3', 'short of', 'it sits 3 past the mark'],
  ['it sits 3 behind the Orlop', '3', 'behind', 'it sits 3 ahead of the Orlop'],
  ['3 ahead of the Orlop', '3', 'ahead of', '3 behind the Orlop'],
  ['3 ahead of the Orlop', '3', 'ahead', '3 behind the Orlop'],
  ['more than once it was 4 more', '4', 'more', 'more than once it was 4 less'],
])('%s', (text, n, phrase, put) => {
  test('the word nearest the number is turned', () => expect(other(text, n, phrase)).toBe(put));
});

test('what is counted is fewer, not less', () => expect(other('12 more frames', '12', 'more', 'frame-rate')).toBe('12 fewer frames'));

test('a word that has no other way is left', () => expect(other('it differs by 4', '4', 'differs')).toBeUndefined());

test('what leads to a figure is turned where no comparison was read', () => {
  const text = 'the score climbs to 880';
  const t = tokens(text);
  const at = turnedBefore(t, t.length - 1)!;
  expect(text.slice(at.start, at.end)).toBe('climbs');
  expect(at.put).toBe('drops');
});

test('the other way of the other way goes the same way', () => {
  for (const word of ['warmer', 'cooler', 'louder', 'rises', 'loses', 'above', 'faster', 'longer', 'up', 'better']) expect(opposite(opposite(word)!), word).toBe(word);
});
