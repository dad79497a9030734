// What a word goes back to: "it" and who the clause before was about, "here" and where the section is, a bare number and the
// quantity told in the row before, a share of a thing and its rating. Each is a true sentence and a false one.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = [];
const things: [string, number, number, number, number][] = [['hobby', 63.4, 412, 71.5, 90], ['kestrel', 88.1, 368, 58.2, 100], ['merlin', 104.6, 297, 66.9, 120], ['osprey', 79.7, 451, 62.3, 95]];
for (const [id, power, weight, hot, rated] of things) {
  for (const [how, k] of [['meadow', 0], ['quarry', 1]] as const) rows.push([id, how, 'haul', 'power', 'motor', 'load', power - k * 21.3, 'W', 0.1], [id, how, 'haul', 'temperature', 'housing', 'load', hot - k * 5.6, 'degC', 0.1], [id, how, 'haul', 'duration', 'haul', 'done', 6000 / power + k * 14, 'min', 0.2]);
  rows.push([id, '', '', 'mass', 'body', 'weighed', weight, 'g'], [id, '', '', 'power', 'motor', 'rated', rated, 'W']);
}
rows.push(['yard', '', '', 'temperature', 'housing', 'limit', 80, 'degC']);
const names = `kind,id,spoken
setup,yard,the yard
setup,hobby,the Hobby
setup,kestrel,the Kestrel
setup,merlin,the Merlin
setup,osprey,the Osprey
setting,meadow,in the meadow;the soft ground
setting,quarry,in the quarry;the hard ground
workload,haul,the haul
part,motor,motor
part,housing,housing
part,body,body
measure,power,power
measure,temperature,temperature
measure,duration,minutes
measure,mass,weight
`;
const facts = factsOf(rows, names);
const verdicts = (text: string): string[] => proof(new Source('script.md', text), facts).mentions.filter((m: Verdict) => m.verdict !== 'not-a-claim').map((m) => `${m.text}: ${m.verdict}`);

describe.each([
  ['who is only measured by is not "it"', 'In the meadow the Hobby makes do with 63.4 watts to the Osprey’s 79.7, and it’s 16.3 watts N to feed.', 'cheaper', 'dearer', '16.3 watts'],
  ['nor who is given something', 'I took the Kestrel home.\nIt gives away 71 grams to the Merlin, and it’s N grams lighter than the Osprey.', '83', '93', ''],
  ['here is where the section is', '## In the quarry\n\nFrom the soft ground to here the Kestrel saves N watts.', '21.3', '27.3', ''],
  ['the middle of all of them', 'In the meadow the Hobby takes 63.4 watts. Median of the four, N.', '83.9', '85.9', ''],
  ['the quantity told in the row before', 'In the meadow the Hobby takes 63.4 watts and is done in 94.6 minutes.\nThe Kestrel takes N and is done in 68.1.', '88.1', '81.8', ''],
  ['a share of a thing', 'In the meadow the power is 88.1 watts with the Kestrel.\nIt is using N percent of the Hobby and 88 percent of the Kestrel.', '70', '77', ''],
  ['a limit goes with the number before it', 'In the meadow the Hobby takes 63.4 watts of its 90 watt rating and the Kestrel N of 100.', '88.1', '81.8', ''],
  ['the setting of the section, and not one by the way', '## On the soft ground\n\nThe Merlin takes 104.6 watts.\nIn the quarry it was 83.3.\nNobody minds.\nThe Osprey takes N watts.', '79.7', '77.9', ''],
  ['multiplied, setting out from a setting', '## In the quarry\n\nComing from the meadow, the Hobby multiplies its power by 0.66 and the Osprey by N.', '0.73', '0.53', ''],
  ['a clause that says where the mark is', 'In the meadow the housing of the Hobby gets to 71.5 degrees, N below where it cuts out.', '8.5', '7.5', ''],
  ['what all of one kind are called', 'Each of them had N grounds to cross.', 'two', 'three', ''],
])('%s', (_, text, right, wrong, which) => {
  const of = (n: string): string[] => verdicts(text.replace('N', n));
  test('what is true raises no alarm', () => expect(of(right).filter((v) => v.endsWith('disagrees'))).toEqual([]));
  test('it is covered', () => expect(of(right).find((v) => v.startsWith(which || right))).toMatch(/: agrees$/));
  test('what is false is caught', () => expect(of(wrong).filter((v) => v.startsWith(which || wrong))).toEqual([expect.stringMatching(/: disagrees$/)]));
});

test('a multiple of what is not on record says nothing', () => {
  expect(verdicts('In the meadow the Hobby takes 63.4 watts.\nThree times the crowd, mind you, and nobody complained.').filter((v) => v.endsWith('disagrees'))).toEqual([]);
});

test('a row that falls from end to end is told by its figures', () => {
  expect(verdicts('In the meadow the power is 104.6 watts, 88.1, 79.7, 63.4.').filter((v) => !v.endsWith('agrees') || v.endsWith('disagrees'))).toEqual([]);
});

test('how many rounds go to each is no figure', () => {
  expect(verdicts('The power is 63.4 watts with the Hobby in the meadow.\nOf the 8 rounds on power the Hobby takes 5 and the Osprey 3.').filter((v) => v.endsWith('disagrees'))).toEqual([]);
});
