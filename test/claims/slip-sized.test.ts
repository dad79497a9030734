// A number too far from what the words were taken for, and right for something else, is not called wrong; a slip of its size is.
import { expect, test } from 'vitest';
import { said } from './bench-record.js';

const last = (text: string) => said(`# The wall stand\n\n${text}`).at(-1)!;

test.each([
  ['right for what lies between two parts', 'too far', 'Flat out is 14 decibels louder than the slow setting. The brisk one, for its part, wins 18.5 degrees of the block over the water.'],
  ['a step that was never named', 'too far', 'The slow setting gives up 21 degrees against flat out, from the water to the block.'],
  ['nothing is named beside it', 'nothing', 'The slow setting makes 24 decibels. After that it settles at 27.'],
  ['after a number that is wrong', 'a number before', 'Flat out the pump makes 30 decibels, the block is at 34 degrees there.'],
  ['places that no list would give', 'hardly', 'Noise first: the slow setting has moved to third.'],
])('%s', (_, why, text) => {
  const m = last(text);
  expect(m.verdict).toBe('untied');
  expect(m.why.startsWith(why)).toBe(true);
});

test.each([
  ['both sides stand beside it', 'The block sits at 62 degrees on the slow setting, and 55 on the brisk setting, so 20 degrees lower.'],
  ['a slip of the size that slips have', 'Flat out the block is 5 degrees cooler than on the brisk setting.'],
  ['wrong in its last place', 'The slow setting makes 24 decibels. After that it settles at 24.5.'],
  ['right for nothing', 'Flat out the block is 39 degrees cooler than on the brisk setting.'],
])('%s', (_, text) => {
  expect(last(text).verdict).toBe('disagrees');
});
