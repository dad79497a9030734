// Where a figure came from, what took it there, and whose mark it lies by. Each is a true sentence and a false one.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { ovens } from './oven-record.js';

const verdicts = (text: string): string[] => proof(new Source('script.md', text), ovens).mentions.map((m: Verdict) => `${m.text}: ${m.verdict}`);

describe.each([
  ['what it came from, behind it', 'Baffled, with rye the hum of the Bramblet sinks to 43.3 decibels from N.', '46.8', '47.9'],
  ['where it crept up to', 'At rest the blower has the Tarnet creep up to N degrees from 36.9 plain.', '39.5', '38.2'],
  ['a setting takes it from the one to the other', 'The baffle takes the crown of the Quillet, on the pie, from N to 74.6.', '84.1', '81.4'],
  ['… in shares', 'The blower lifts the Tarnet with the rye loaf from N percent of its power limit to 105.5.', '96.8', '98.6'],
  ['the limit of a thing is not the speaker’s', 'Blown, the Tarnet asks for 533 watts with rye, above its limit of N.', '505', '550'],
  ['what was measured stands behind the mark it breaks', 'Plain, the Bramblet busts my noise limit with either: N decibels with rye, 45.2 with the pie.', '46.8', '48.6'],
  ['a pronoun goes back to the mark', 'Blown, the Quillet goes from 43.3 to 48.6 decibels with rye: it sets out under my mark and finishes N above it.', '4.6', '3.6'],
  ['each is held to a limit of its own', 'Blown, with rye, all N ovens go beyond their power limits.', 'three', 'four'],
  ['shares in turn', 'Plain, the Quillet asks for 641 watts with rye and 588 with the pie, N and 90 percent of its limit.', '99', '95'],
  ['with another unit than the figures before', 'With the pie, plain, the Quillet asks for 588 watts and the Bramblet 655, or 90 and N percent of their limits.', '89', '93'],
  ['a setting without a word before it', 'With rye the Quillet asks for 641 watts as it comes and N blown.', '699', '719'],
  ['what it is so under', 'On rye the draw of the Bramblet comes down from 702 watts to N under the baffle.', '590', '612'],
  ['between two parts of a thing', 'Plain, on the pie, the gap between the hearth of the Bramblet and its crown is N degrees.', '14.7', '17.7'],
  ['… one less the other', 'Look at hearth minus crown on the Quillet with rye: 12.8 degrees plain, N blown.', '23.0', '20.1'],
  ['… taken from one to another', 'With rye, the blower widens the distance from crown to hearth on the Quillet, from N degrees to 23.', '12.8', '14.9'],
])('%s', (_, text, right, wrong) => {
  const [before] = text.split('N ').length > 1 ? ['N '] : ['N'];
  const said = (n: string): string => verdicts(text.replace(before, before.replace('N', n))).join('; ');
  test('right', () => { expect(said(right)).not.toMatch(/disagrees/); expect(said(right)).toContain(`${right}`); expect(said(right)).toMatch(new RegExp(`${right}[^;]*: agrees`)); });
  test('wrong', () => { expect(said(wrong)).not.toMatch(new RegExp(`${wrong}[^;]*: agrees`)); });
});

test('none of them is counted', () => {
  expect(verdicts('Not one of the three ovens, baffled, gets past 44 decibels with the pie.')[0]).toBe('one: not-a-claim');
});
