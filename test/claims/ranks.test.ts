// Places in a ranking, in the shapes that prose gives them. Values as in prose.test.ts.
import { describe, expect, test } from 'vitest';
import { said } from './bench-record.js';

const wall = 'Now the pump on the wall stand, with the brisk setting.\n';

const cases: [what: string, text: string, wrong: string][] = [
  ['what was said last is ranked', 'The pump makes 38 decibels flat out. Loudest of the three settings.', 'The pump makes 38 decibels flat out. Quietest of the three settings.'],
  ['the figure right before it', 'Flat out the pump makes 38 decibels, the most of the three settings.', 'Flat out the pump makes 38 decibels, the least of the three settings.'],
  ['the second after the first', 'The quietest of the three settings is the slow setting, and second is the brisk setting.', 'The quietest of the three settings is the slow setting, and third is the brisk setting.'],
];

describe('a place', () => {
  test.each(cases)('%s', (_, text, wrong) => {
    const verdicts = said(wall + text).map((m) => `${m.text}: ${m.verdict}`);
    expect(verdicts.filter((v) => !v.endsWith(': agrees'))).toEqual([]);
    expect(said(wall + text).some((m) => m.kind === 'rank')).toBe(true);
    expect(said(wall + wrong).map((m) => m.verdict)).toContain('disagrees');
  });

  test.each(['The brisk setting has the biggest label.', 'That took the longest walk of the day.'])('of what was not measured is no claim: %s', (text) => {
    expect(said(wall + text).filter((m) => m.verdict === 'disagrees')).toEqual([]);
  });
});
