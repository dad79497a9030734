// Counts of those that meet something, in the shapes that prose gives them. Values as in prose.test.ts: noise on the wall stand is
// 24 / 31.5 / 38 dB(A), the block 62 / 55 / 52 °C for slow / brisk / flat; the coolant's limit is 50 °C.
import { describe, expect, test } from 'vitest';
import { said } from './bench-record.js';

const wall = 'Now the pump on the wall stand, with the brisk setting.\n';

const cases: [what: string, text: string, wrong: string][] = [
  ['with the set after it', 'Two of the three settings keep the noise below 35 decibels.', 'All three of the three settings keep the noise below 35 decibels.'],
  ['at or below', 'Two of the three settings keep the block at or below 55 degrees.', 'Three of the three settings keep the block at or below 55 degrees.'],
  ['the set first', 'Of the three settings, two stay below 35 decibels.', 'Of the three settings, all three stay below 35 decibels.'],
  ['all of them', 'All three settings keep the noise under 40 decibels.', 'All three settings keep the noise under 35 decibels.'],
  ['the mark before it', 'The noise should stay under 35 decibels, and two of the three settings do.', 'The noise should stay under 35 decibels, and three of the three settings do.'],
  ['beyond a mark', 'Only one of the three settings is louder than 35 decibels.', 'Only two of the three settings are louder than 35 decibels.'],
  ['failing', 'One of the three settings does not keep the noise below 35 decibels.', 'Two of the three settings do not keep the noise below 35 decibels.'],
];

describe('a count under a condition', () => {
  test.each(cases)('%s', (_, text, wrong) => {
    expect(said(wall + text).filter((m) => m.verdict !== 'agrees').map((m) => `${m.text}: ${m.verdict}, ${m.why}`)).toEqual([]);
    expect(said(wall + text).some((m) => m.kind === 'count' && m.from.length === 3)).toBe(true);
    expect(said(wall + wrong).map((m) => m.verdict)).toContain('disagrees');
  });

  test('the mark itself is no claim', () => {
    expect(said(`${wall}Two of the three settings keep the block below 56 degrees.`).map((m) => m.text)).toEqual(['Two', 'three']);
  });
});
