// What is left out, what is counted as "of them", medians for each, limits that the words only hint at, changes said again in percent. Values are those of heater-record.ts and bench-record.ts.
import { describe, expect, test } from 'vitest';
import { said } from './bench-record.js';
import { heard } from './heater-record.js';

const sundin = '## The Sundin\n\nAt thirty percent it takes 310 watts at the wall.\n';
const caught: [what: string, text: string, wrong: string][] = [
  ['a change, said again beside it', 'At ninety percent the Sundin draws 86 watts less than the Makerel, 8.7 percent, and I like that.', 'At ninety percent the Sundin draws 86 watts less than the Makerel, 7.8 percent, and I like that.'],
  ['a change, and what it arrives at', 'With the Makerel at thirty percent, the noise drops by 2.2 decibels to 25, which is 8.1 percent.', 'With the Makerel at thirty percent, the noise drops by 2.2 decibels to 25, which is 9.1 percent.'],
  ['a median for each, beside a count of them all', 'Of the six results, two stay under 30 decibels, and the median noise is 33.0 for the Sundin and 30.4 for the Makerel.', 'Of the six results, two stay under 30 decibels, and the median noise is 35.0 for the Sundin and 30.4 for the Makerel.'],
  ['a median for each', 'The median noise is 33 decibels for the Sundin and 30.4 for the Makerel.', 'The median noise is 33 decibels for the Sundin and 34.0 for the Makerel.'],
];

describe('what else is said', () => {
  test.each(caught)('%s', (_, text, wrong) => {
    expect(heard(sundin + text).map((m) => `${m.text}: ${m.verdict}`).filter((v) => !v.endsWith(': agrees'))).toEqual([]);
    expect(heard(sundin + wrong).map((m) => m.verdict)).toContain('disagrees');
  });

  test.each([
    'Everything that is not the fan draws 298 watts at thirty percent.', 'Apart from the fan it draws 298 watts.', 'It has heating wires, fifty-two of them.', 'It glows with little lamps, thirty of these.',
  ])('calls nothing wrong that it cannot know: %s', (text) => expect(heard(sundin + text).filter((m) => m.verdict === 'disagrees')).toEqual([]));

  test('an end is of the same quantity as the other', () => {
    const text = 'Now the pump on the wall stand.\nFrom slow to flat out the coolant goes from 41 to 34, and you pay for that with 14 decibels.';
    expect(said(text).filter((m) => m.verdict === 'disagrees')).toEqual([]);
  });
});
