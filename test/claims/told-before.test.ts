// What was told before and is taken up in few words: a mark held as "it", a gap that is as big elsewhere, what opens the sentence.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { readerFacts } from './reader-record.js';

const said = (text: string): Verdict[] => proof(new Source('script.md', text), readerFacts).mentions.filter((m) => m.verdict !== 'not-a-claim');

const cases: [what: string, text: string, from: string, to: string][] = [
  ['a mark held as "it"', 'My limit for the socket is 9 watts, and the tuned Amsel stays under it. The tuned Dorn uses 91 percent of it.', '91', '81'],
  ['what opens the sentence is compared with', 'Tuned, the Amsel\'s shell is at 49 degrees. Next to the Dorn, remember, that is four degrees less.', 'less', 'more'],
  ['as big as that gap is there', 'As delivered, the Corvin lies 13 megabytes a second behind the Amsel; tuned it\'s 12.9.', '13 mega', '15 mega'],
  ['from one end of the field to the other', 'Of the four tuned, the slowest at the import takes 1.2 times as long as the fastest.', '1.2', '1.6'],
  ['taken off one after the other', 'The import next. Tuning took 6.2 seconds off the Amsel, and 2.1 off the Dorn.', '6.2', '2.6'],
];

describe('what was told before', () => {
  test.each(cases)('%s', (_, text, from, to) => {
    expect(said(text).filter((m) => m.verdict !== 'agrees').map((m) => `${m.text}: ${m.why}`)).toEqual([]);
    expect(said(text.replace(from, to)).map((m) => m.verdict)).toContain('disagrees');
  });

  test.each(['Tuned at the copy, the Dorn makes about 4 times as much smoke as the Birke.', 'Tuned at the copy, the Corvin needs 1.7 times as many spare parts as the Birke.'])('a multiple of what is not on record is no alarm: %s', (text) => {
    expect(said(text).filter((m) => m.verdict === 'disagrees')).toEqual([]);
  });
});
