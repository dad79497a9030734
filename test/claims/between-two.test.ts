// What lies between two that are both named, and other comparisons of which the size stands apart.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { readerFacts } from './reader-record.js';

const said = (text: string): Verdict[] => proof(new Source('script.md', text), readerFacts).mentions.filter((m) => m.verdict !== 'not-a-claim');

const cases: [what: string, text: string, from: string, to: string][] = [
  ['named, then how far', 'Tuned, between the Dorn and the Birke lie 7.4 megabytes a second.', '7.4', '8.4'],
  ['the gap between them is', 'Tuned, the gap between the Dorn and the Amsel is 12.3 megabytes a second.', '12.3', '13.2'],
  ['how far, then named', 'Tuned, there is a gap of 12.3 megabytes a second between the Dorn and the Amsel.', '12.3', '11.3'],
  ['the setting stands in between', 'Between the Birke and the Corvin, tuned, there are 17.8 megabytes a second.', '17.8', '18.7'],
  ['the size after a colon', 'Tuned, the Birke takes less at the socket than the Amsel: 1.2 watts.', 'less', 'more'],
  ['the median against itself', 'Tuned, the median for the import is 56.75 seconds, which is 4.5 below where it was.', 'below', 'above'],
  ['from one end to the other of those just told', 'Tuned, the shells of the Amsel, the Birke and the Corvin are at 49, 46 and 45 degrees. That\'s four degrees from one end to the other.', 'four', 'nine'],
  ['from the one end to the other, after the number', 'The import, tuned: the whole lot is 10.4 seconds from fastest to slowest.', '10.4', '13.4'],
  ['between the one end and the other, after the number', 'The import, tuned: there are just 10.4 seconds between the fastest and the slowest.', '10.4', '13.4'],
  ['… without a verb', 'Now the import, tuned. A mere 10.4 seconds between first and last.', '10.4', '13.4'],
  ['a hedged fraction', 'Tuned the Dorn takes 8.2 watts and the Corvin 5.3, about two thirds as much.', 'two thirds', 'a half'],
];

describe('between two', () => {
  test.each(cases)('%s', (_, text, from, to) => {
    expect(said(text).filter((m) => m.verdict !== 'agrees').map((m) => `${m.text}: ${m.why}`)).toEqual([]);
    expect(said(text.replace(from, to)).map((m) => m.verdict)).toContain('disagrees');
  });
});
