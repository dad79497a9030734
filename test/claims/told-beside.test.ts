// What the figures right beside a number say it is.
import { describe, expect, test } from 'vitest';
import { heard } from './heater-record.js';

const before = 'On the cold evening at ninety percent the Sundin pulls 902 watts at the wall and hums at 39.1 decibels.\n\n';
const verdict = (sentence: string, n: string): string | undefined => heard(before + sentence).filter((m) => m.place.line > 1).find((m) => m.text.startsWith(n))?.verdict;

describe.each([
  // Sundin: 902 W at ninety, 598 W at sixty; Makerel: 988 W and 36.3 dB at ninety.
  ['how far two lie apart that are told behind it', 'All that you save at sixty percent is N watts: 598 instead of 902.', '304', '340'],
  ['so many of the degrees', 'From thirty to sixty percent the front of the Sundin gains 14.5 degrees, and going back to thirty you lose all N of those degrees.', '14.5', '11.5'],
  ['the other of two that were spoken of', 'Compare it with the Makerel. The Makerel pulls more at the wall, 988 against N.', '902', '920'],
])('%s', (_, sentence, right, wrong) => {
  test('what is true is covered', () => expect(verdict(sentence.replace('N', right), right)).toBe('agrees'));
  test('what is false is not', () => expect(verdict(sentence.replace('N', wrong), wrong)).not.toBe('agrees'));
});

test.each([
  ['My meter is good to 1.4 decibels.', '1.4'],
  ['The probes are accurate to 0.3 degrees, which is what they cost.', '0.3'],
  ['Everything between 38 and 40 decibels sounds the same to me.', '38'],
  ["Let's talk about the noise first.", 'first'],
  ['I ran them all at ninety percent first.', 'first'],
])('no claim: %s', (sentence, n) => {
  expect(verdict(sentence, n)).toBeUndefined();
});

test('a place is still a place', () => {
  expect(verdict('At ninety percent, on power at the wall, the Sundin is first.', 'first')).toBeDefined();
});
