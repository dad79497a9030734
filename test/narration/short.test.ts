// The short telling takes the first of each section, and no more than three minutes.
import { expect, test } from 'vitest';
import { shortTelling } from '../../pipeline/narration/short.js';

const sentence = (section: string, text: string, seconds: number) => ({ section, text, facts: [], seconds });

test('the first sentence of each section, in order', () => {
  const all = [sentence('a', 'one', 5), sentence('a', 'two', 5), sentence('b', 'three', 5)];
  expect(shortTelling(all).map((s) => s.text)).toEqual(['one', 'three']);
});

test('what no longer fits into three minutes is left out', () => {
  const all = [sentence('a', 'long', 170), sentence('b', 'too long', 20), sentence('c', 'short', 10)];
  expect(shortTelling(all).map((s) => s.text)).toEqual(['long', 'short']);
});
