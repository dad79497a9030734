// Passages by several hands who had not seen the program, about two invented records. The floors are what was measured when they
// came in or were last mended against: they hold what was gained, and are raised with it.
import { describe, expect, test } from 'vitest';
import { scorePassages } from './phrasings.js';

describe.each([
  ['cards', 'first.txt', { alarms: 4, covered: 87, caught: 70 }],
  ['cards', 'second.txt', { alarms: 7, covered: 82, caught: 62 }],
  ['coolers', 'first.txt', { alarms: 2, covered: 84, caught: 74 }],
  ['coolers', 'second.txt', { alarms: 5, covered: 78, caught: 69 }],
])('%s, %s', (record, file, floor) => {
  const t = scorePassages(record, file);
  test('true passages flagged', () => expect(t.alarms.length, t.alarms.join('\n')).toBeLessThanOrEqual(floor.alarms));
  test('claims covered', () => expect((100 * t.covered) / t.claims).toBeGreaterThanOrEqual(floor.covered));
  test('alterations caught', () => expect((100 * t.caught) / t.altered).toBeGreaterThanOrEqual(floor.caught));
});
