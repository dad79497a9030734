// What the words leave out and a figure, a pronoun or a count makes up for: whose place it
// is, of how many a median is, what a figure was taken under. Each pair is a true sentence and a false one.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = [];
const things: [string, number, number, number, number][] = [['quill', 61, 33, 88, 18], ['rusk', 68, 37.2, 97, 15.5], ['tansy', 74, 41, 109, 14], ['umber', 79, 44.6, 118, 13.1]];
const speeds: [string, number, number, number, number][] = [['gentle', 0, 0, 0, 0], ['plain', 5, 2.1, 9, -1.2], ['fierce', 12, 5.5, 23, -2.6]];
for (const [id, hot, noise, watts, minutes] of things) for (const [speed, h, n, w, m] of speeds) {
  rows.push([id, speed, 'quarry', 'temperature', 'core', 'load', hot + h, 'degC', 1], [id, speed, 'quarry', 'noise', 'blower', 'load', noise + n, 'dB(A)'], [id, speed, 'quarry', 'power', 'wall', 'load', watts + w, 'W']);
  rows.push([id, speed, 'quarry', 'duration', 'clip', 'finished', minutes + m, 'min']);
}
rows.push(['my-rule', '', '', 'temperature', 'core', 'limit', 95, 'degC'], ['my-rule', '', '', 'power', 'wall', 'limit', 150, 'W']);
const names = `kind,id,spoken
setup,quill,the Quill
setup,rusk,the Rusk
setup,tansy,the Tansy
setup,umber,the Umber
setup,my-rule,my rule
setting,gentle,on gentle;the gentle speed
setting,plain,on plain;the plain speed
setting,fierce,on fierce;the fierce speed
workload,quarry,Quarry
part,core,core
part,blower,blower
part,wall,at the wall
part,clip,the clip
measure,temperature,temperature
measure,noise,noise
measure,power,power
measure,duration,export time
`;
const facts = factsOf(rows, names);
const verdicts = (text: string): string[] => proof(new Source('script.md', text), facts).mentions.filter((m: Verdict) => m.verdict !== 'not-a-claim').map((m) => `${m.text}: ${m.verdict}`);

describe.each([
  ['a figure taken under a thing', 'On gentle in Quarry the core temperature comes to N degrees under the Rusk.', '68', '71'],
  ['a difference under a thing', 'On gentle in Quarry the core of the Quill stays N degrees under the Rusk.', '7', '9'],
  ['a median of everything', 'In Quarry, over all twelve noise results, the median is N decibels.', '41.85', '43.2'],
])('%s', (_, text, right, wrong) => {
  test('right', () => expect(verdicts(text.replace('N', right)).filter((v) => !v.endsWith(': agrees'))).toEqual([]));
  test('wrong', () => expect(verdicts(text.replace('N', wrong)).some((v) => v.endsWith('disagrees'))).toBe(true));
});

describe('no alarm', () => {
  test.each([
    'On gentle the core of the Rusk sits at 68 degrees.\nIt keeps second place, but the Umber lies far behind it.',
    'In Quarry on gentle the Quill, the Rusk and the Tansy pull 88, 97 and 109 watts.\nTake whichever of the Quill, the Rusk and the Tansy is cheapest, because they pull about the same.',
    'Quarry got three runs at every speed, for the temperature at least.',
  ])('%s', (text) => expect(verdicts(text).filter((v) => v.endsWith('disagrees'))).toEqual([]));
});
