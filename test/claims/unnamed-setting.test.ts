// A setting that no sentence names: the figures tell it, and what follows is of the same. The section's own thing is gone back
// to after an aside about another; a change just said, and said again in percent. Each pair is a true sentence and a false one.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = [];
const things: [string, number, number, number][] = [['osier', 71.3, 36.2, 140.6], ['rowan', 78.8, 44.1, 121.9], ['sallow', 66.4, 29.7, 98.4]];
for (const [id, hot, noise, watts] of things) for (const [how, k] of [['dusty', 0], ['cleaned', 1]] as const) {
  rows.push([id, how, 'mill', 'temperature', 'core', 'load', hot - k * (hot / 9), 'degC', 0.1], [id, how, 'mill', 'noise', 'blower', 'load', noise - k * (noise / 11), 'dB(A)', 0.1], [id, how, 'mill', 'power', 'board', 'load', watts + k * (watts / 8), 'W', 0.1]);
}
const names = `kind,id,spoken
setup,osier,the Osier
setup,rowan,the Rowan
setup,sallow,the Sallow
setting,dusty,full of dust
setting,cleaned,without the dust
workload,mill,the mill
part,core,core
part,blower,blower
part,board,board
measure,temperature,temperature
measure,noise,noise
measure,power,power
`;
const facts = factsOf(rows, names);
const verdicts = (text: string): string[] => proof(new Source('script.md', text), facts).mentions.filter((m: Verdict) => m.verdict !== 'not-a-claim').map((m) => `${m.text}: ${m.verdict}`);

describe.each([
  ['figures tell the setting', 'Full of dust the Osier runs at 71.3 degrees.\nThen out comes the brush.\nIts core settles at 63.4 degrees, and the blower is N decibels quieter.', '3.3', '4.8'],
  ['back to the thing of the section', '## The Rowan\n\nWithout the dust its board draws 137.1 watts, and the Osier took 158.2.\nThe blower hums at N decibels.', '40.1', '41.9'],
  ['two ends, and how much that is', '## The Osier\n\nFull of dust it runs the mill at 71.3 degrees.\nThat is too much.\nThe brush comes out.\nThe hum of the blower plummets from 36.2 decibels to 32.9, or N percent.', '9', '13'],
  ['a change with its end, and how much that is', '## The Osier\n\nFull of dust its board takes 140.6 watts.\nWithout the dust that goes up by 17.6, to 158.2, which is N percent.', '12.5', '15.5'],
  ['a median of one setting, and of the other', 'The median temperature of the core is 71.3 degrees full of dust and N without the dust.', '63.4', '66.8'],
])('%s', (_, text, right, wrong) => {
  const of = (n: string): string[] => verdicts(text.replace('N', n));
  test('what is true raises no alarm', () => expect(of(right).filter((v) => v.endsWith('disagrees'))).toEqual([]));
  test('it is covered', () => expect(of(right).find((v) => v.startsWith(right))).toMatch(/agrees$/));
  test('what is false is caught', () => expect(of(wrong).some((v) => v.startsWith(wrong) && v.endsWith('disagrees'))).toBe(true));
});

test.each([
  ['The Rowan went first, and it is the noisy one.', []],
  ['There are three contestants, and every one of them runs the mill.', ['three: agrees']],
])('%s', (text, expected) => expect(verdicts(text)).toEqual(expected));

test('a bare number behind a percentage may be in the unit of what is named beside it', () => expect(verdicts('Full of dust the Rowan runs at 78.8 degrees.\nWithout the dust it is eleven percent cooler, and the noise only goes down 4.0.').filter((v) => v.endsWith('disagrees'))).toEqual([]));
