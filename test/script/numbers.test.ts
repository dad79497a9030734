// Reading numbers as they are said, held to words that others write.
import fc from 'fast-check';
import { toCardinal as british } from 'n2words/en-GB';
import { toCardinal } from 'n2words/en-US';
import { ToWords } from 'to-words';
import { describe, expect, test } from 'vitest';
import { Exact, inWords, ordinalInWords } from '../../pipeline/quantities/index.js';
import { findNumbers } from '../../pipeline/script/numbers.js';
import { tokens } from '../../pipeline/script/tokens.js';
import { oracle } from '../oracles/table.js';

const other = new ToWords({ localeCode: 'en-US' });
const plain = (t: string): string => t.toLowerCase().replace(/-/g, ' ');
/** All numbers of a text; a fraction that is no decimal as "2/3". */
const read = (text: string): string[] => findNumbers(tokens(text)).map((n) => String(n.value));

// Table number_reading_en.csv: forms that a reader has to understand, each with what three modes of words-to-numbers 1.5.1
// make of it. A year or a number "said in pairs" is one number; "five to seven" are the two ends of a range.
const several: Record<string, string[]> = { 'two numbers 11, 3': ['11', '3'], 'range 5-7': ['5', '7'], 'ordinal 3 or fraction 1/3': ['3'], '2/3': [String(Exact.of(2, 3))] };
test.each(oracle('number_reading_en.csv'))('"$words" is read as $should_read', ({ words, should_read }) => {
  expect(read(words!)).toEqual(several[should_read!] ?? [String(Exact.parse(should_read!))]);
});

const size = fc.oneof(fc.integer({ min: 0, max: 2000 }), fc.integer({ min: 0, max: 1_000_000 }), fc.integer({ min: 0, max: 1_000_000_000 }));

describe('whole numbers up to a thousand million', () => {
  test('as n2words and to-words write them, where the two agree', () => {
    let agreed = 0;
    fc.assert(fc.property(size, (n) => {
      const [a, b] = [toCardinal(n), other.convert(n)];
      if (plain(a) !== plain(b)) return;
      agreed++;
      for (const words of [a, b, plain(a)]) expect(read(words), words).toEqual([String(n)]);
    }), { numRuns: 1000, seed: 11 });
    expect(agreed).toBeGreaterThan(950);
  });

  test('with the British "and", as n2words writes it', () => {
    fc.assert(fc.property(size, (n) => {
      for (const words of [british(n), plain(british(n))]) expect(read(words), words).toEqual([String(n)]);
    }), { numRuns: 1000, seed: 12 });
  });

  test('in digits, with separators and without', () => {
    fc.assert(fc.property(size, (n) => {
      expect(read(`${n} W`)).toEqual([String(n)]);
      expect(read(`${new Intl.NumberFormat('en-US').format(n)} W`)).toEqual([String(n)]);
    }), { numRuns: 300, seed: 13 });
  });
});

describe('what we write is what we read', () => {
  const decimal = fc.tuple(fc.boolean(), size, fc.integer({ min: 0, max: 3 }), fc.nat(999))
    .map(([minus, whole, places, rest]) => `${minus ? '-' : ''}${whole}${places ? `.${String(rest).padStart(3, '0').slice(3 - places)}` : ''}`);

  test.each([['US', false], ['British', true]] as const)('%s', (_, and) => {
    fc.assert(fc.property(decimal, (text) => {
      const words = inWords(text, and);
      for (const said of [words, words.replace(/-/g, ' '), `It reads ${words} watts there.`]) {
        const [n, ...more] = findNumbers(tokens(said));
        expect(more, said).toEqual([]);
        expect(String(n?.value), said).toBe(String(Exact.parse(text)));
        expect(n?.decimals, said).toBe(/\.(\d+)/.exec(text)?.[1]?.length ?? 0);
      }
    }), { numRuns: 500, seed: 14 });
  });

  test('ordinals up to ninety-nine', () => {
    for (let n = 1; n < 100; n++) {
      const [span, ...more] = findNumbers(tokens(`the ${ordinalInWords(n)} coolest`));
      expect([String(span?.value), span?.type, more.length], ordinalInWords(n)).toEqual([String(n), 'ordinal', 0]);
    }
  });
});

// Forms of speech; common practice, no published source.
test.each([
  ['twenty-four eighty', '2480'], ['one ninety-eight', '198'], ['one oh five', '105'], ['a hundred and five', '105'], ['a thousand and one', '1001'], ['eighteen hundred', '1800'],
  ['two and a half', '5/2'], ['2 and a half', '5/2'], ['three quarters', '3/4'], ['a quarter of the limit', '1/4'], ['half a degree', '1/2'], ['two-thirds', '2/3'], ['seven tenths', '7/10'],
  ['nought point nine', '9/10'], ['point nine oh', '9/10'], ['zero point eight five', '17/20'], ['one point two million', '1200000'], ['1.5k', '1500'], ['2.4 thousand', '2400'], ['a dozen', '12'], ['twice', '2'], ['.9', '9/10'], ['1/3', '1/3'], ['−5', '-5'],
])('"%s" is %s', (words, value) => {
  const [n, d] = value.split('/').map(Number);
  expect(findNumbers(tokens(words)).map((x) => x.value.equals(Exact.of(n!, d ?? 1)))).toEqual([true]);
});

test.each(['a couple of watts', 'someone and no one else', 'the often tense tent', 'a handful'])('no number in "%s"', (text) => {
  expect(findNumbers(tokens(text)).filter((n) => n.to - n.from > 1)).toEqual([]);
});
