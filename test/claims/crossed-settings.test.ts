// Settings that are a cross of two, with limits that hold for one of the two alone, and levels said without their noun.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = [['ermine', 'gentle', '', 'power', 'motor', 'limit', 40, 'W'], ['ermine', 'fierce', '', 'power', 'motor', 'limit', 90, 'W']];
const dryer: [string, number, number, number][] = [['gentle-attic', 39.2, 51.3, 33.1], ['gentle-cellar', 38.5, 44.9, 34.6], ['fierce-attic', 88.4, 72.6, 46.8], ['fierce-cellar', 80.1, 63.8, 48.2]];
for (const [how, watts, hot, noise] of dryer) rows.push(['ermine', how, 'towels', 'power', 'motor', 'load', watts, 'W', 0.1], ['ermine', how, 'towels', 'temperature', 'drum', 'load', hot, 'degC', 0.1], ['ermine', how, 'towels', 'noise', 'dryer', 'load', noise, 'dB(A)', 0.1]);
const dryers = factsOf(rows, `kind,id,spoken
setup,ermine,the Ermine
setting,gentle,gentle
setting,fierce,fierce
setting,gentle-attic,gentle in the attic
setting,gentle-cellar,gentle in the cellar
setting,fierce-attic,fierce in the attic
setting,fierce-cellar,fierce in the cellar
workload,towels,a load of towels
part,motor,the motor
part,drum,the drum
measure,power,power;watts
measure,temperature,temperature;degrees
measure,noise,noise;decibels
`);

const hut: Row[] = [['hut', 'stove-low', '', 'fuel', 'stove', 'target', 12, 'g'], ['hut', 'stove-high', '', 'fuel', 'stove', 'target', 20, 'g']];
const kept: [string, number, number][] = [['stove-low-flue-low', 17.4, 29.8], ['stove-low-flue-mid', 16.3, 33.1], ['stove-low-flue-high', 14.2, 38.7], ['stove-high-flue-low', 24.9, 31.2], ['stove-high-flue-mid', 22.6, 35.0], ['stove-high-flue-high', 19.1, 41.4]];
for (const [how, warm, noise] of kept) hut.push(['hut', how, 'night', 'temperature', 'bunk', 'load', warm, 'degC', 0.1], ['hut', how, 'night', 'noise', 'flue', 'load', noise, 'dB(A)', 0.1]);
const huts = factsOf(hut, `kind,id,spoken
setup,hut,the hut
setting,stove-low,stove on low
setting,stove-high,stove on high
setting,flue-low,flue on low
setting,flue-mid,flue on medium
setting,flue-high,flue on high
setting,stove-low-flue-low,low stove low flue
setting,stove-low-flue-mid,low stove medium flue
setting,stove-low-flue-high,low stove high flue
setting,stove-high-flue-low,high stove low flue
setting,stove-high-flue-mid,high stove medium flue
setting,stove-high-flue-high,high stove high flue
workload,night,the night
part,bunk,the bunk
measure,temperature,temperature;degrees
measure,noise,noise;decibels
measure,fuel,fuel
`);

const lit: Row[] = [['lantern', 'dim-hook', '', 'power', 'lamp', 'limit', 3, 'W'], ['lantern', 'bright-hook', '', 'power', 'lamp', 'limit', 8, 'W']];
const lanterns: [string, number, number][] = [['dim-hook', 2.9, 31.4], ['bright-hook', 7.7, 44.8], ['dim-hand', 2.1, 27.2], ['bright-hand', 5.6, 38.1]];
for (const [how, watts, warm] of lanterns) lit.push(['lantern', how, 'evening', 'power', 'lamp', 'load', watts, 'W', 0.1], ['lantern', how, 'evening', 'temperature', 'handle', 'load', warm, 'degC', 0.1]);
const lantern = factsOf(lit, `kind,id,spoken
setup,lantern,the lantern
setting,dim-hook,dim hung up;dim
setting,bright-hook,bright hung up;bright
setting,dim-hand,dim in the hand
setting,bright-hand,bright in the hand
workload,evening,the evening
part,lamp,the lamp
part,handle,the handle
measure,power,power;watts
measure,temperature,temperature;degrees
`);

const heard = (facts: typeof huts) => (text: string): Verdict[] => proof(new Source('script.md', text), facts).mentions.filter((m) => m.verdict !== 'not-a-claim');
const cases: [record: typeof huts, what: string, text: string, wrong: string][] = [
  [dryers, 'what was measured, and what holds for one of the two', '## The Ermine in the attic\n\nOn gentle the motor takes 39.2 watts of the 40 it may have.', '## The Ermine in the attic\n\nOn gentle the motor takes 36.2 watts of the 40 it may have.'],
  [dryers, 'the place is that of the section', '## The Ermine in the cellar\n\nFierce, the drum is at 63.8 degrees. On gentle it gets to 44.9.', '## The Ermine in the cellar\n\nFierce, the drum is at 63.8 degrees. On gentle it gets to 49.4.'],
  [dryers, 'a step of one of the two', '## The Ermine in the attic\n\nFierce is 13.7 decibels louder than gentle.', '## The Ermine in the attic\n\nFierce is 11.7 decibels louder than gentle.'],
  [huts, 'a level of what was named before it', 'With the stove on high and the flue on medium the bunk is at 22.6 degrees, and on high it is 19.1.', 'With the stove on high and the flue on medium the bunk is at 22.6 degrees, and on high it is 15.1.'],
  [huts, 'from level to level', 'With the stove on low, taking the flue from low to high costs 8.9 decibels.', 'With the stove on low, taking the flue from low to high costs 6.9 decibels.'],
  [huts, 'an article between two names', 'With the stove on low the flue makes 29.8 decibels on low.', 'With the stove on low the flue makes 27.8 decibels on low.'],
  [huts, 'what is put against another', 'High stove high flue is at 41.4 decibels. Compare that with low stove low flue, which is where I sleep, and it is 11.6 decibels louder.', 'High stove high flue is at 41.4 decibels. Compare that with low stove low flue, which is where I sleep, and it is 13.6 decibels louder.'],
  [lantern, 'both halves of a name, one of which has other words', 'Bright in the hand, the lamp takes 5.6 watts, 2.7 more than dim hung up.', 'Bright in the hand, the lamp takes 5.6 watts, 3.7 more than dim hung up.'],
  [lantern, 'after the other half was told', 'Dim in the hand, the handle is at 27.2 degrees. Bright hung up it is 17.6 degrees warmer than that, and dim hung up just 4.2.', 'Dim in the hand, the handle is at 27.2 degrees. Bright hung up it is 13.6 degrees warmer than that, and dim hung up just 4.2.'],
  [lantern, 'one limit against another', 'With bright hung up the limit is 8 watts, 167 percent more than the 3 watts allowed with dim hung up.', 'With bright hung up the limit is 8 watts, 187 percent more than the 3 watts allowed with dim hung up.'],
  [lantern, 'a name that says no more than the other does, beside it', 'Dim and dim in the hand take 2.9 and 2.1 watts.', 'Dim and dim in the hand take 2.1 and 2.9 watts.'],
];

describe('crossed settings', () => {
  test.each(cases)('%#: %s', (record, _, text, wrong) => {
    expect(heard(record)(text).map((m) => `${m.text}: ${m.verdict}`).filter((v) => !v.endsWith(': agrees'))).toEqual([]);
    expect(heard(record)(wrong).map((m) => m.verdict)).toContain('disagrees');
  });
});
