import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import { stretch, WordClass } from '../../pipeline/script/index.js';

describe('a stretch of a sentence', () => {
  const low = ['the', 'kettle', 'draws', '2', 'kilowatts'];
  test('is what its words joined would be, whichever ends are asked for', () => {
    fc.assert(fc.property(fc.array(fc.string({ maxLength: 4 }), { maxLength: 8 }), fc.integer({ min: -12, max: 12 }), fc.integer({ min: -12, max: 12 }), (words, from, to) => {
      expect(stretch(words, from, to)).toBe(words.slice(from, to).join(' '));
      expect(stretch(words, from)).toBe(words.slice(from).join(' '));
    }));
  });
  test('begins and ends at words', () => {
    expect(stretch(low, 1, 3)).toBe('kettle draws');
    expect(stretch(low, -2)).toBe('2 kilowatts');
    expect(stretch(low, 3, 3)).toBe('');
  });
});

describe('a class of words', () => {
  const units = new WordClass(/^(?:watts?|volts?)$/);
  test('answers the same the second time', () => {
    expect([units.has('watt'), units.has('water'), units.has('watt'), units.has('water')]).toEqual([true, false, true, false]);
  });
  test('is looked for among words', () => {
    const low = ['two', 'volts', 'and', 'nine', 'watts'];
    expect(units.first(low)).toBe(1);
    expect(units.first(low, 2)).toBe(4);
    expect(units.in(low, 2, 4)).toBe(false);
    expect(units.in(low, -3, 2)).toBe(true);
  });
});
