// Plain tokens are read without the pattern that says what a token is; here every text is read by a pattern of the test's own.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { tokens } from '../../pipeline/script/index.js';

const signs = /\[\d{1,3}:\d\d(?::\d\d)?\]|dB ?\(A\)|\d{1,3}(?:,\d{3})+(?:\.\d+)?(?!\d)|\d+(?:\.\d+)?|\.\d+|[\p{L}µμΩ][\p{L}\p{N}³²]*(?:['’]\p{L}+)*(?:\/\p{L}[\p{L}³²]*)?|\S/gu;

const pieces = ['it', "it's", 'K9', 'card’s', "bench's", 'm³/h', 'm/s', 'dB(A)', 'dB (A)', 'dBm', 'd', 'B', '12', '1,390', '1,39', '12,3456', '0.95', '.5', '5.', '[01:20]', '[x]', 'é', 'Grün', 'µF', '5Ω', '²', "'", '’', '/', ',', '.', '-', '−', '(', ')', '%', '°C', '😀', '\u00a0', '\t', ' ', ' ', '  ', '\u2009', "n't", "O'Neil's", 'a/b/c', '3rd', '4K', "'s", 'S', "RIG'S"];

it('cuts every text as the pattern says', () => {
  fc.assert(fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.array(fc.constantFrom(...pieces), { maxLength: 14 }).map((p) => p.join(''))), (text) => {
    expect(tokens(text).map((t) => [t.text, t.start, t.end, t.tight])).toEqual([...text.matchAll(signs)].map((m) => [m[0], m.index, m.index + m[0].length, m.index > 0 && !/\s/.test(text[m.index - 1]!)]));
  }), { numRuns: 3000 });
});

it.each([
  ["The bench's", 'word', 'bench', true], ['The card’s', 'word', 'card', true], ["That's", 'word', "that's", false], ["RIG'S", 'word', "rig's", false], ['It’s', 'word', "it's", false], ['1,390', 'number', '1,390', false], ['.5', 'number', '.5', false], ['dB(A)', 'word', 'db(a)', false], ['[01:20]', 'time', '[01:20]', false], ['Ω', 'word', 'ω', false], [';', 'mark', ';', false],
])('%s', (text, kind, low, possessive) => {
  expect(tokens(text).at(-1)).toMatchObject({ kind, low, possessive });
});
