// Comparisons whose other side was said before, marks said by a clause, what people do to a thing as the name of its setting, and
// quotients that are named apart from their numbers. Each is a true sentence and a false one.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { ovens } from './oven-record.js';

const verdicts = (text: string): string => proof(new Source('script.md', text), ovens).mentions.map((m: Verdict) => `${m.text}: ${m.verdict}`).join('; ');

describe.each([
  ['the comparison comes first', 'Plain, each oven is louder with rye than with the pie, the Quillet by 1.4, the Bramblet by N.', '1.6', '2.9'],
  ['a gerund names the setting', 'Baffling the Quillet with rye takes the draw from 641 watts to N.', '538', '558'],
  ['a mark said by a clause', 'Blown, with rye, the Quillet makes 48.6 decibels, N beyond what I am willing to accept.', '4.6', '3.3'],
  ['from the one to the other, in note form', 'The Quillet, plain, rye to pie: crown down N, hearth down 5.6.', '4.3', '5.9'],
  ['on which side of a mark', 'Plain, with rye, the Bramblet hums at 46.8 decibels, N the wrong side of my mark.', '2.8', '1.8'],
  ['what parts two things', 'N grams separate the Bramblet from the Tarnet.', '2,440', '2,240'],
  ['what a figure tops', 'Blown, with rye, the Bramblet tops N watts.', '750', '810'],
  ['taken back in the same breath', 'I had claimed that the Quillet asks for 700 watts plain with rye; it does not, it asks for N.', '641', '614'],
  ['the same ends again', 'The blower lifts the hearth of the Quillet with rye from 101.2 to 112.5 degrees; with the pie it goes from 95.6 to N.', '106.9', '109.6'],
  ['how far off the mark, behind a comma', 'Plain, with the pie, the hum of the Quillet keeps under my limit, N to be precise.', '2.1', '3.1'],
  ['where it is, behind a comma', 'Plain, with the pie, the Quillet keeps under my noise limit, N decibels.', '41.9', '42.9'],
  ['between two changes told', 'The baffle saves the Quillet 103 watts with rye and the Bramblet 112; so that is N more for the Bramblet.', '9', '14'],
])('%s', (_, text, right, wrong) => {
  test('right', () => { expect(verdicts(text.replace('N', right))).not.toMatch(/disagrees/); expect(verdicts(text.replace('N', right))).toMatch(new RegExp(`${right}[^;]*: agrees`)); });
  test('wrong', () => { expect(verdicts(text.replace('N', wrong))).not.toMatch(new RegExp(`${wrong}[^;]*: agrees`)); });
});

test('a slope has no reading', () => {
  expect(verdicts('Blown, the Quillet with rye spends 58 more watts for 5.3 more decibels, so each one costs it 10.9 watts.')).toMatch(/10.9 watts: not-a-claim/);
  expect(verdicts('What does each extra decibel cost on the blown Quillet?\n10.9 watts.')).toBe('10.9 watts: not-a-claim');
});
