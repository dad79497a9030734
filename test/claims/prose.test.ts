// What goes on from one clause to the next in running prose: each text is true, with its number or its word turned it is not.
// Values are those of bench-record.ts: on the wall stand 41 / 36.5 / 34 °C coolant, 62 / 55 / 52 °C block, 24 / 31.5 / 38 dB(A), 12 / 18 / 30 W
// for slow / brisk / flat; on the floor stand 45 / 39.5 / 36, 68 / 60 / 56, 23 / 30 / 36, 11 / 17 / 27.
import { describe, expect, test } from 'vitest';
import { said } from './bench-record.js';

const wall = 'Now the pump on the wall stand, with the brisk setting.\n';

const cases: [what: string, text: string, turned: string][] = [
  ['a size that no reading of the measure has is a difference of it', 'Compared with the slow setting that is 7 degrees on the block.', 'Compared with the slow setting that is 9 degrees on the block.'],
  ['a comparison that follows a figure is of that figure', 'At 36.5 degrees the coolant is 4.5 cooler than with the slow setting.', 'At 36.5 degrees the coolant is 4.5 warmer than with the slow setting.'],
  ['a verb that arrives', 'With the slow setting the block was at 62 degrees. With the brisk setting it falls to 55.', 'With the slow setting the block was at 62 degrees. With the brisk setting it climbs to 55.'],
  ['a verb with its size', 'With the slow setting the block was at 62 degrees. With the brisk setting it falls by 7.', 'With the slow setting the block was at 62 degrees. With the brisk setting it climbs by 7.'],
  ['the one and the other', 'The coolant is at 36.5 degrees and the block at 55, so the slow setting costs 4.5 degrees on the one and 7 on the other.', 'The coolant is at 36.5 degrees and the block at 55, so the slow setting costs 4.5 degrees on the one and 9 on the other.'],
  ['"one" for the noun', 'The brisk setting makes 31.5 decibels, the slow one 24.', 'The brisk setting makes 31.5 decibels, the slow one 27.'],
  ['the unit of the other end', 'Going from slow to brisk takes the noise from 24 decibels to 31.5 and the power from 12 watts to 18.', 'Going from slow to brisk takes the noise from 24 decibels to 34.5 and the power from 12 watts to 18.'],
  ['a step from one to the other', 'Slow to brisk adds 7.5 decibels.', 'Slow to brisk adds 9.5 decibels.'],
  ['of what it set out from', 'The pump draws 6 watts more than with the slow setting, and that is 50 percent of the slow setting.', 'The pump draws 6 watts more than with the slow setting, and that is 55 percent of the slow setting.'],
  ['what a dependent clause names does not take over', 'The coolant is at 36.5 degrees, where the slow setting gave 41. It makes 31.5 decibels.', 'The coolant is at 36.5 degrees, where the slow setting gave 41. It makes 33.5 decibels.'],
];

describe('running prose', () => {
  test.each(cases)('%s', (_, text, turned) => {
    expect(said(wall + text).map((m) => `${m.text}: ${m.verdict}`).filter((m) => !m.endsWith(': agrees'))).toEqual([]);
    expect(said(wall + text)).not.toEqual([]);
    expect(said(wall + turned).map((m) => m.verdict)).toContain('disagrees');
  });
});
