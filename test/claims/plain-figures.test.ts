// What stands beside a figure and does not make it a change: where it comes from, where it holds, what share it is, what it is
// set against. And changes that are told by what they are added to, traded for, or a share of. Each is a true sentence and a false one.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = [];
const things: [string, number, number, number, number][] = [['corvine', 71.3, 212, 7.4, 93.5], ['dunnock', 64.8, 164, 8.9, 71.6], ['egret', 58.1, 141, 6.2, 64.2]];
for (const [id, hot, watts, held, frames] of things) for (const [how, k] of [['brisk', 0], ['gentle', 1]] as const) {
  rows.push([id, how, 'meadow', 'temperature', 'core', 'load', hot - k * 6.5, 'degC', 0.1], [id, how, 'meadow', 'power', 'board', 'load', watts - k * (watts / 10), 'W', 0.1]);
  rows.push([id, how, 'meadow', 'memory', 'card', 'load', held - k * 1.3, 'GB', 0.1], [id, how, 'meadow', 'frame_rate', 'card', 'load', frames - k * 8.2, 'fps', 0.1]);
}
rows.push(['desk', '', '', 'power', 'board', 'limit', 220, 'W']);
const names = `kind,id,spoken
setup,desk,the desk
setup,corvine,the Corvine
setup,dunnock,the Dunnock
setup,egret,the Egret
setting,brisk,on brisk
setting,gentle,on gentle
workload,meadow,the meadow
part,core,core
part,board,board
part,card,card
measure,temperature,temperature
measure,power,power
measure,memory,memory
measure,frame_rate,frame rate
`;
const facts = factsOf(rows, names);
const verdicts = (text: string): string[] => proof(new Source('script.md', text), facts).mentions.filter((m: Verdict) => m.verdict !== 'not-a-claim').map((m) => `${m.text}: ${m.verdict}`);

describe.each([
  ['one after the other, each with where it comes from', 'I read the meter on brisk: 212 watts from the Corvine, then 164 from the Dunnock, and N from the Egret.', '141', '151'],
  ['a comparative, and then where it is so', 'On brisk the core is at 71.3 degrees in the Corvine and a good N cooler under the Egret.', '13.2', '15.2'],
  ['a figure, and what share that is', 'On brisk the Egret pulls 141 watts, while the Corvine lets its board burn N, or 96 percent of the limit.', '212', '242'],
  ['set against each other, and then by how much', 'On brisk the Corvine and the Dunnock do 93.5 against N, 31 percent.', '71.6', '76.1'],
  ['gigs where data is measured', 'On brisk the meadow fills N gigs of the Dunnock.', '8.9', '9.8'],
  ['by how much, and where that leads', 'On gentle the Corvine is 6.5 degrees cooler at the core, down to N.', '64.8', '68.4'],
  ['added to a gain', 'On brisk, going from the Corvine to the Dunnock buys you 6.5 degrees; the Egret adds N to that.', '6.7', '4.7'],
  ['given up for something', 'On brisk I would choose the Egret over the Corvine for the sake of N degrees.', '13.2', '11.2'],
  ['as a share of what it was', 'As a share of what the card does on gentle, the frame rate of the Egret has gone up by N percent on brisk.', '15', '13'],
])('%s', (_, text, right, wrong) => {
  const of = (n: string): string[] => verdicts(text.replace('N', n));
  test('what is true raises no alarm', () => expect(of(right).filter((v) => v.endsWith('disagrees'))).toEqual([]));
  test('it is covered', () => expect(of(right).find((v) => v.startsWith(right))).toMatch(/: agrees$/));
  test('what is false is caught', () => expect(of(wrong).filter((v) => v.startsWith(wrong))).toEqual([expect.stringMatching(/: disagrees$/)]));
});
