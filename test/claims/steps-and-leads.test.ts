// How far the first is ahead; a further step; a mark said by its number; a cooling from another time; the same quantity of the
// next thing. Each pair is a true sentence and a false one.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = [['plan', '', '', 'temperature', 'plate', 'limit', 90, 'degC']];
const irons: [string, number[], number[]][] = [['finch', [71.4, 78.9, 86.2], [22.4, 27.1, 35.8]], ['heron', [68.2, 77.7, 88.3], [24.9, 30.6, 33.2]], ['plover', [74.5, 80.1, 89.5], [21.7, 26.3, 37.9]]];
for (const [id, heat, hiss] of irons) ['mild', 'keen', 'fierce'].forEach((dial, k) => {
  rows.push([id, dial, 'linen', 'temperature', 'plate', 'start', 20.5, 'degC', 0.1], [id, dial, 'linen', 'temperature', 'plate', 'end', heat[k]!, 'degC', 0.1], [id, dial, 'linen', 'temperature', 'plate', 'after-rest', heat[k]! - 21.3, 'degC', 0.1], [id, dial, 'linen', 'noise', 'valve', 'load', hiss[k]!, 'dB(A)', 0.1]);
});
const names = `kind,id,spoken
setup,finch,the Finch
setup,heron,the Heron
setup,plover,the Plover
setup,plan,the plan
setting,mild,on mild
setting,keen,on keen
setting,fierce,on fierce
workload,linen,the linen
part,plate,plate
part,valve,valve
measure,temperature,temperature
measure,noise,noise
`;
const facts = factsOf(rows, names);
const verdicts = (text: string): string[] => proof(new Source('script.md', text), facts).mentions.map((m: Verdict) => `${m.text}: ${m.verdict}`);

describe.each([
  ['ahead of the next', 'On mild the plate of the Plover is third with 74.5 degrees, the Finch second with 71.4, which puts the Heron in first place by NUM of a degree.', '3.2', '5.2'],
  ['a further step', 'On keen the valve of the Finch is 4.7 decibels louder than on mild, and on fierce it adds another NUM decibels.', '8.7', '9.9'],
  ['a mark by its number', 'On fierce the plate of the Plover gets to 89.5 degrees, NUM under the 90 at which the thing shuts off.', '0.5', '0.9'],
  ['the same of the next thing', 'From mild to keen you gain 7.5 degrees on the plate with the Finch and NUM with the Heron.', '9.5', '11.5'],
])('%s', (_, text, right, wrong) => {
  const of = (n: string): string[] => verdicts(text.replace('NUM', n));
  test('what is true is covered', () => expect(of(right).find((v) => v.startsWith(right))).toMatch(/: agrees$/));
  test('what is false is caught', () => expect(of(wrong).find((v) => v.startsWith(wrong))).toMatch(/: disagrees$/));
});

test('cooled from what it was at the end', () => {
  expect(verdicts('## The Heron\n\nOn fierce its plate ends up at 88.3 degrees.\nAfter the rest it had cooled by 21.3 degrees, to 67.').find((v) => v.startsWith('21.3'))).toMatch(/: agrees$/);
});
