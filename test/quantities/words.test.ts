import fc from 'fast-check';
import { toCardinal as british } from 'n2words/en-GB';
import { toCardinal, toOrdinal } from 'n2words/en-US';
import { ToWords } from 'to-words';
import { describe, expect, test } from 'vitest';
import { Exact, inWords, ordinalInWords, speak, unit, wholeInWords } from '../../pipeline/quantities/index.js';
import { oracle } from '../oracles/table.js';

const plain = (t: string): string => t.toLowerCase().replace(/-/g, ' ');
const other = new ToWords({ localeCode: 'en-US' });

// Table number_words_en.csv: US and British forms, agreed by six packages where they agree; decimals are read digit by digit.
test.each(oracle('number_words_en.csv'))('$number in words', ({ number, US, UK_with_and }) => {
  expect(inWords(number!)).toBe(US);
  expect(inWords(number!, true)).toBe(UK_with_and);
});

describe('whole numbers', () => {
  const size = fc.oneof(fc.bigInt(0n, 2000n), fc.bigInt(0n, 10n ** 6n), fc.bigInt(0n, 999_999_999_999n));

  test('as n2words and to-words write them, where the two agree', () => {
    let agreed = 0;
    fc.assert(fc.property(size, (n) => {
      const [a, b] = [plain(toCardinal(n)), plain(other.convert(Number(n)))];
      if (a !== b) return;
      agreed++;
      expect(plain(wholeInWords(n))).toBe(a);
      expect(wholeInWords(n)).toBe(toCardinal(n));
    }), { numRuns: 1000 });
    expect(agreed).toBeGreaterThan(950);
  });

  test('and the British "and" as n2words writes it', () => {
    fc.assert(fc.property(fc.bigInt(0n, 999_999n), (n) => {
      expect(plain(wholeInWords(n, true))).toBe(plain(british(n)));
    }), { numRuns: 500 });
  });

  test('a minus is said', () => {
    expect(inWords('-5')).toBe('minus five');
    expect(inWords('−0.05')).toBe('minus zero point zero five');
    expect(wholeInWords(-12n)).toBe('minus twelve');
  });
});

test('ordinals as n2words writes them', () => {
  for (let n = 1; n <= 130; n++) expect(ordinalInWords(n)).toBe(toOrdinal(n));
});

test.each(['', 'x', '1.', '1,5', '--1', '1e3'])('"%s" is no decimal to be put in words', (text) => {
  expect(() => inWords(text)).toThrow(RangeError);
});

describe('spoken quantities', () => {
  test.each([
    ['2480', 'MHz', 0, 'two thousand four hundred eighty megahertz'], ['1', 'degC', 0, 'one degree'], ['-1', 'K', 0, 'minus one degree'], ['0', 'K', 0, 'zero degrees'],
    ['1.0', 'V', 1, 'one point zero volts'], ['0.905', 'V', 3, 'zero point nine zero five volts'], ['83', '%', 0, 'eighty-three percent'], ['1', 'points', 0, 'one percentage point'],
    ['1', 'fps', 0, 'one frame per second'], ['96.3', 'fps', 1, 'ninety-six point three frames per second'], ['0.39', 'fps/W', 2, 'zero point three nine frames per second per watt'],
    ['499', 'USD', 2, 'four hundred ninety-nine dollars'], ['499', 'USD', 0, 'four hundred ninety-nine dollars'], ['1.01', 'EUR', 2, 'one euro and one cent'], ['0.50', 'GBP', 2, 'zero pounds and fifty pence'], ['-2.5', 'USD', 2, 'minus two dollars and fifty cents'],
    ['29', 'crowns', 0, 'twenty-nine crowns'], ['3', '1', 0, 'three'], ['1180', ':1', 0, 'one thousand one hundred eighty to one'],
  ] as const)('%s %s', (value, id, decimals, words) => {
    expect(speak(Exact.parse(value)!, unit(id), decimals)).toBe(words);
  });

  test('in digits, and in the British form', () => {
    expect(speak(Exact.of(-2480), unit('MHz'), 0, { digits: true })).toBe('minus 2,480 megahertz');
    expect(speak(Exact.of(105), unit('W'), 0, { and: true })).toBe('one hundred and five watts');
    expect(speak(Exact.of(9, 10), unit('V'), 1, { and: true })).toBe('nought point nine volts');
    expect(speak(Exact.of(999, 2), unit('USD'), 2, { digits: true })).toBe('499 dollars and 50 cents');
  });
});
