import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Exact, readNumber, readQuantity, show, showNumber, unit } from '../../pipeline/quantities/index.js';

describe('numbers as people write them', () => {
  test.each([
    ['61', '61', 0], ['61.40', '61.4', 2], ['1,234.5', '1234.5', 1], ['1\u202f234', '1234', 0], ['−12.4', '-12.4', 1], ['–3', '-3', 0], ['+5', '5', 0], ['.5', '0.5', 1], ['1e3', '1000', 0], ['1.25e1', '12.5', 1], ['5e-2', '0.05', 2], ['0.10', '0.1', 2],
  ] as const)('%s', (text, value, decimals) => {
    const n = readNumber(text)!;
    expect(n.value.toString()).toBe(value);
    expect(n.decimals).toBe(decimals);
  });

  test.each([['1.234,5', '1234.5', 1], ['1 234,56', '1234.56', 2], ['12,5', '12.5', 1], ['−0,4', '-0.4', 1]] as const)('%s with a decimal comma', (text, value, decimals) => {
    const n = readNumber(text, { decimalComma: true })!;
    expect(n.value.toString()).toBe(value);
    expect(n.decimals).toBe(decimals);
  });

  test.each(['', ' ', '-', '.', ',', 'NaN', 'Infinity', '-Infinity', '1.2.3', '12,34', '1,23,456', '0x1F', '610 615 612', '1e', '0,985', '-0,985', '00,985', '012,345', '１２', '9'.repeat(61)])('"%s" is no number', (text) => {
    expect(readNumber(text)).toBeUndefined();
  });

  test.each(['0.985', '-0.100'])('"%s" is no grouping where the comma is the decimal sign', (text) => {
    expect(readNumber(text, { decimalComma: true })).toBeUndefined();
  });

  test('what is shown is read back', () => {
    fc.assert(fc.property(fc.bigInt(-(10n ** 12n), 10n ** 12n), fc.integer({ min: 0, max: 4 }), (n, places) => {
      const value = Exact.of(n, 10n ** BigInt(places));
      const back = readNumber(showNumber(value, places))!;
      expect(back.value.equals(value)).toBe(true);
      expect(back.decimals).toBe(places);
    }));
  });
});

describe('quantities as people write them', () => {
  test.each([
    ['61 °C', '61', 'degC', 0], ['61°C', '61', 'degC', 0], ['1.05 V', '1.05', 'V', 2], ['2400 MHz', '2400', 'MHz', 0], ['83%', '83', '%', 0], ['83 %', '83', '%', 0], ['$499', '499', 'USD', 0], ['€ 64.50', '64.5', 'EUR', 2], ['499 USD', '499', 'USD', 0],
    ['1:30', '90', 's', 0], ['1:02:03', '3723', 's', 0], ['0:07.5', '7.5', 's', 1], ['1:30 h', '5400', 's', 0], ['1:30 min', '90', 's', 0], ['−12.4 K', '-12.4', 'K', 1], ['2,480 MHz', '2480', 'MHz', 0], ['12 3/min', undefined, '', 0],
  ] as const)('%s', (text, value, id, decimals) => {
    const q = readQuantity(text);
    if (value === undefined) return expect('why' in q).toBe(true);
    if ('why' in q) throw new Error(q.why);
    expect(q.quantity.value.toString()).toBe(value);
    expect(q.quantity.unit.id).toBe(id);
    expect(q.quantity.decimals).toBe(decimals);
  });

  test.each([
    ['61', '"61" has no unit'], ['12,5 V', '"12,5" has a decimal comma; write a point'], ['0,985 V', '"0,985" has a decimal comma; write a point'], ['61 °X', 'unknown unit "°X"'], ['hot', 'no number in "hot"'], ['610 615 W', '"610 615" is more than one number'], ['1.2.3 V', '"1.2.3" is not a number'], ['', 'no number in ""'], ['NaN W', 'no number in "NaN W"'],
  ])('"%s" is told: %s', (text, why) => {
    expect(readQuantity(text)).toEqual({ why });
  });

  test('a unit can be given beforehand', () => {
    expect(readQuantity('61', unit('degC'))).toMatchObject({ quantity: { decimals: 0, unit: { id: 'degC' } } });
  });

  test('nothing that is typed makes it throw', () => {
    fc.assert(fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.stringMatching(/^[-+0-9.,:eE $%°CVWK]{0,20}$/)), (text) => {
      const q = readQuantity(text);
      expect('why' in q || 'quantity' in q).toBe(true);
    }), { numRuns: 2000 });
  });
});

// SI Brochure, 9th edition, 5.4; NIST SP 811, 7.2: a space before the symbol, also before % and °C (from memory).
test.each([
  ['61', 'degC', 0, '61 °C'], ['83', '%', 0, '83 %'], ['-12.4', 'K', 1, '−12.4 K'], ['2480', 'MHz', 0, '2,480 MHz'], ['1234567.5', 'W', 1, '1,234,567.5 W'], ['499', 'USD', 2, '$499.00'], ['-5', 'EUR', 0, '−€5'], ['1.254', 'x', 2, '1.25×'], ['3', '1', 0, '3'], ['1180', ':1', 0, '1,180:1'], ['-0.04', 'V', 1, '0.0 V'], ['29', 'crowns', 0, '29 crowns'],
] as const)('%s %s is shown as %s', (value, id, decimals, shown) => {
  expect(show(Exact.parse(value)!, unit(id), decimals)).toBe(shown);
});
