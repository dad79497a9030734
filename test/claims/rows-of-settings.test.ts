// Settings that lie in a row, said without their noun; places in an order that the words give, or leave open. Values are those of heater-record.ts.
import { describe, expect, test } from 'vitest';
import { heard } from './heater-record.js';

const sundin = '## The Sundin\n\nAt thirty percent it takes 310 watts at the wall.\n';
const cases: [what: string, text: string, wrong: string][] = [
  ['the other end, at which something is so', 'The front is at 44 degrees on the lowest step and at 71 degrees on the highest.', 'The front is at 44 degrees on the lowest step and at 73 degrees on the highest.'],
  ['from one end to the other', 'From the lowest step to the highest, the front gains 27 degrees.', 'From the lowest step to the highest, the front gains 25 degrees.'],
  ['a setting said short beside its like', 'At sixty percent the noise is 33 decibels, and at ninety it is 39.1 decibels.', 'At sixty percent the noise is 33 decibels, and at ninety it is 41.9 decibels.'],
  ['a figure, and by how much it is below another', 'At sixty percent I measured 96 nits and 598 watts, or 57 watts less than with the Makerel.', 'At sixty percent I measured 96 nits and 598 watts, or 75 watts less than with the Makerel.'],
  ['less time is quicker', 'At sixty percent the Sundin is 16 seconds quicker than the Makerel.', 'At sixty percent the Sundin is 16 seconds slower than the Makerel.'],
];

describe('in a row', () => {

  test.each(cases)('%s', (_, text, wrong) => {
    expect(heard(sundin + text).map((m) => `${m.text}: ${m.verdict}`).filter((v) => !v.endsWith(': agrees'))).toEqual([]);
    expect(heard(sundin + wrong).map((m) => m.verdict)).toContain('disagrees');
  });
});
