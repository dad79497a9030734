// What goes on from one clause to the next in running prose: each text is true, with its number or its word turned it is not.
// Values are those of bench-record.ts: on the wall stand 41 / 36.5 / 34 °C coolant, 62 / 55 / 52 °C block, 24 / 31.5 / 38 dB(A), 12 / 18 / 30 W
// for slow / brisk / flat; on the floor stand 45 / 39.5 / 36, 68 / 60 / 56, 23 / 30 / 36, 11 / 17 / 27.
import { describe, expect, test } from 'vitest';
import { said } from './bench-record.js';

const wall = 'Now the pump on the wall stand, with the brisk setting.\n';

const cases: [what: string, text: string, turned: string][] = [
  ['a size that no reading of the measure has is a difference of it', 'Compared with the slow setting that is 7 degrees on the block.', 'Compared with the slow setting that is 9 degrees on the block.'],
];

describe('running prose', () => {
  test.each(cases)('%s', (_, text, turned) => {
    expect(said(wall + text).map((m) => `${m.text}: ${m.verdict}`).filter((m) => !m.endsWith('agrees'))).toEqual([]);
    expect(said(wall + text)).not.toEqual([]);
    expect(said(wall + turned).map((m) => m.verdict)).toContain('disagrees');
  });
});
