// Changes of which the verb or the noun stands far from its number, what is taken off a thing, and tables read out from one end to the other.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { readerFacts } from './reader-record.js';

const said = (text: string): Verdict[] => proof(new Source('script.md', text), readerFacts).mentions.filter((m) => m.verdict !== 'not-a-claim');

const cases: [what: string, text: string, from: string, to: string][] = [
  ['whose change it is stands between', 'Tuned, the import takes 56.2 seconds on the Amsel. The most is saved by the Amsel, 6.2 seconds or 10 percent; the least by the Dorn, 2.1.', '2.1', '3.4'],
  ['the noun stands before whose it is', 'Copying, tuned. The smallest gain is the Dorn\'s, 2.6 megabytes a second; the biggest belongs to the Corvin, 6.4.', '6.4', '7.4'],
  ['it is taken off by what was not measured', 'The import next. Tuning took 6.2 seconds off the Amsel, and 2.1 off the Dorn.', '6.2', '7.2'],
  ['a step, its size and its end', 'The Corvin wanted a larger rise, 0.12 volts, to reach 1.22.', '1.22', '1.32'],
  ['as many as were named before', 'The Amsel and the Birke both went from 1.2 to 1.25 volts, the Dorn to 1.3, and the Corvin needed the biggest step, 120 millivolts, to end up at 1.22.\nTheir shells were at 49, 46, 53 and 45 degrees respectively.', '53', '43'],
  ['the quickest first', 'The import takes seconds. As delivered, from fastest to slowest: the Dorn 55.2, the Birke 60.1, the Amsel 62.4, the Corvin 66.8.', '62.4', '64.2'],
  ['second in so many seconds', 'The import, from quickest to slowest. Tuned, the Amsel is second in 56.2 seconds and the Birke third in 57.3.', 'second in', 'third in'],
  ['quickest by the time that it takes', 'As delivered, the Dorn is the quickest at the import, with 55.2 seconds, and the Corvin the slowest with 66.8.', 'quickest', 'slowest'],
];

describe('whose change it is', () => {
  test.each(cases)('%s', (_, text, from, to) => {
    expect(said(text).filter((m) => m.verdict !== 'agrees').map((m) => `${m.text}: ${m.why}`)).toEqual([]);
    expect(said(text.replace(from, to)).map((m) => m.verdict)).toContain('disagrees');
  });
});
