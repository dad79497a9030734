import Big from 'big.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Exact, mean, sum } from '../../pipeline/quantities/index.js';
import { oracle } from '../oracles/table.js';

const decimal = fc.tuple(fc.bigInt(-(10n ** 14n), 10n ** 14n), fc.integer({ min: 0, max: 9 })).map(([n, places]) => Exact.of(n, 10n ** BigInt(places)).toString(40));
const exact = (t: string): Exact => Exact.parse(t)!;
const big = (t: string): Big => new Big(t);

describe('rounding', () => {
  // Table rounding_ties.csv: values of ASTM E29, ASME A112.18.1 and measured cases; the column for half away from zero.
  test.each(oracle('rounding_ties.csv'))('$value to $unit is $half_away_from_zero', ({ value, unit, half_away_from_zero }) => {
    const decimals = unit === '1' ? 0 : unit!.length - 2;
    expect(exact(value!).toFixed(decimals)).toBe(half_away_from_zero);
  });

  test('agrees with big.js, rounding half up in size, on decimals', () => {
    fc.assert(fc.property(decimal, fc.integer({ min: 0, max: 8 }), (t, places) => {
      const theirs = big(t).round(places, Big.roundHalfUp).toFixed(places);
      expect(exact(t).toFixed(places)).toBe(/[1-9]/.test(theirs) ? theirs : theirs.replace('-', ''));
    }), { numRuns: 2000 });
  });

  test('agrees with big.js on quotients', () => {
    const Divider = Big();
    Divider.DP = 30;
    fc.assert(fc.property(decimal, decimal, fc.integer({ min: 0, max: 6 }), (a, b, places) => {
      fc.pre(exact(b).sign() !== 0);
      const q = exact(a).over(exact(b));
      const theirs = new Divider(a).div(new Divider(b));
      const cut = theirs.round(places, Big.roundHalfUp).toFixed(places);
      expect(q.toFixed(places)).toBe(/[1-9]/.test(cut) ? cut : cut.replace('-', ''));
    }), { numRuns: 1000 });
  });

  test('once rounded, rounding again changes nothing, and no step is more than half a unit', () => {
    fc.assert(fc.property(decimal, fc.integer({ min: -4, max: 6 }), (t, places) => {
      const once = exact(t).round(places);
      expect(once.round(places).equals(once)).toBe(true);
      const half = Exact.of(1, 2).times(places < 0 ? Exact.of(10n ** BigInt(-places)) : Exact.of(1, 10n ** BigInt(places)));
      expect(once.minus(exact(t)).abs().compare(half)).toBeLessThanOrEqual(0);
    }));
  });

  test.each([['1449', -2, '1400'], ['1450', -2, '1500'], ['-1450', -2, '-1500'], ['49', -2, '0'], ['-0.04', 1, '0.0'], ['0.05', 1, '0.1'], ['99.95', 1, '100.0']] as const)('%s to %s places is %s', (value, places, written) => {
    expect(exact(value).toFixed(places)).toBe(written);
  });
});

describe('arithmetic', () => {
  test('agrees with big.js on sums, differences and products', () => {
    fc.assert(fc.property(decimal, decimal, (a, b) => {
      expect(exact(a).plus(exact(b)).equals(exact(big(a).plus(b).toFixed()))).toBe(true);
      expect(exact(a).minus(exact(b)).equals(exact(big(a).minus(b).toFixed()))).toBe(true);
      expect(exact(a).times(exact(b)).equals(exact(big(a).times(b).toFixed()))).toBe(true);
      expect(Math.sign(exact(a).compare(exact(b)))).toBe(big(a).cmp(b));
    }), { numRuns: 1000 });
  });

  test('dividing undoes multiplying', () => {
    fc.assert(fc.property(decimal, decimal, (a, b) => {
      fc.pre(exact(b).sign() !== 0);
      expect(exact(a).times(exact(b)).over(exact(b)).equals(exact(a))).toBe(true);
    }));
  });

  test('a sum does not depend on order or on how the decimals were written', () => {
    fc.assert(fc.property(fc.array(decimal, { maxLength: 30 }), (list) => {
      const values = list.map(exact);
      const oneByOne = values.reduce((a, b) => a.plus(b), Exact.zero);
      expect(sum(values).equals(oneByOne)).toBe(true);
      expect(sum([...values].reverse()).equals(oneByOne)).toBe(true);
    }));
  });

  test('a tenth is a tenth, and three of them make no more than 0.3', () => {
    expect(sum([exact('0.1'), exact('0.1'), exact('0.1')]).toString()).toBe('0.3');
    expect(mean([exact('38'), exact('38'), exact('39')]).toString()).toBe('38.3333333333333');
    expect(mean([exact('38'), exact('38'), exact('39')]).equals(Exact.of(115, 3))).toBe(true);
  });

  test('nothing is divided by zero', () => {
    expect(() => exact('1').over(Exact.zero)).toThrow(RangeError);
    expect(() => mean([])).toThrow(RangeError);
  });
});

describe('writing and reading', () => {
  test('a decimal is written back as it was', () => {
    fc.assert(fc.property(decimal, (t) => {
      expect(exact(exact(t).toString(40)).equals(exact(t))).toBe(true);
    }));
  });

  test.each(['', '.', '-', '1e', '1e1000', 'NaN', 'Infinity', '0x10', '1,5', ' 1', '1_000', '١'])('"%s" is no plain decimal', (text) => {
    expect(Exact.parse(text)).toBeUndefined();
  });

  test.each([['1e3', '1000'], ['-12.50', '-12.5'], ['.5', '0.5'], ['5.', '5'], ['+7', '7'], ['1E-3', '0.001']])('%s is %s', (text, plain) => {
    expect(Exact.parse(text)!.toString()).toBe(plain);
  });

  test('a binary number stands for its shortest decimal', () => {
    expect(Exact.fromNumber(0.1).equals(Exact.of(1, 10))).toBe(true);
    expect(Exact.fromNumber(1e21).equals(Exact.of(10n ** 21n))).toBe(true);
    expect(() => Exact.fromNumber(Number.NaN)).toThrow(RangeError);
    expect(() => Exact.fromNumber(Number.POSITIVE_INFINITY)).toThrow(RangeError);
  });

  test('becomes the nearest binary number', () => {
    fc.assert(fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e15, max: 1e15 }).filter((x) => x === 0 || Math.abs(x) > 1e-290), (x) => {
      expect(Math.abs(Exact.fromNumber(x).toNumber() - x)).toBeLessThanOrEqual(Math.abs(x) * 2 ** -51);
    }));
    expect(Exact.of(10n ** 400n, 10n ** 399n + 1n).toNumber()).toBeCloseTo(10, 9);
  });
});
