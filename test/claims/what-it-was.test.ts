// What something was before, as the measure of what it is; a gap that grows or shrinks to a number; a bare number joined to a
// figure is of what that figure is of. Each pair is a true sentence and a false one.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = [];
const mills: [string, number[], number[]][] = [['tansy', [50.2, 46.1, 44.9], [31.2, 36.8, 40.4]], ['yarrow', [56.6, 50.4, 47.6], [29.7, 34.1, 39.6]], ['sorrel', [53.3, 48.7, 45.8], [30.6, 35.5, 41.2]]];
for (const [id, heat, hum] of mills) ['still', 'breeze', 'gale'].forEach((air, k) => {
  rows.push([id, air, 'grind', 'temperature', 'bearing', 'load', heat[k]!, 'degC', 0.1], [id, air, 'grind', 'noise', 'gear', 'load', hum[k]!, 'dB(A)', 0.1], [id, air, 'grind', 'flow', 'hopper', 'load', 3 + k, 'L/min', 0.1]);
});
rows.push(['house', '', '', 'temperature', 'bearing', 'target', 51, 'degC']);
const names = `kind,id,spoken
setup,tansy,the Tansy
setup,yarrow,the Yarrow
setup,sorrel,the Sorrel
setting,still,in still air
setting,breeze,in a breeze
setting,gale,in a gale
workload,grind,the grind
part,bearing,bearing
part,gear,gear
part,hopper,hopper
measure,temperature,temperature;degrees
measure,noise,noise;decibels
measure,flow,flow
setup,house,the house rule
`;
const facts = factsOf(rows, names);
const verdicts = (text: string): string[] => proof(new Source('script.md', text), facts).mentions.map((m: Verdict) => `${m.text}: ${m.verdict}`);

describe.each([
  ['a gap shrinks to', 'Take the bearing. In still air the Yarrow is 6.4 degrees warmer than the Tansy; in a breeze the gap is 4.3, and in a gale it comes down to N.', '2.7', '3.3'],
  ['a gap against what it was', 'Take the bearing. In still air the Yarrow is 6.4 degrees warmer than the Tansy.\nIn a breeze the gap is 4.3 degrees, some N of what it was.', 'two thirds', 'two fifths'],
  ['a bare number joined to a figure', 'Mind the bearing temperature.\nIn still air the Yarrow sits at 56.6 degrees.\nIn a gale it only reaches 47.6, which is N lower than in still air.', '9', '7'],
  ['the spread against what it was', 'In still air the bearing of the Yarrow is at 56.6 degrees, of the Tansy at 50.2.\nThen came a gale.\nThe Yarrow comes to 47.6 degrees, the Tansy to 44.9.\nFrom best to worst that makes 2.7 degrees, around N times what it used to be.', '0.42', '0.66'],
  ['by how much a mark is met', 'In still air the bearing of the Tansy gets to 50.2 degrees, which makes the house rule by a mere N.', '0.8', '1.1'],
  ['which way a mark is missed', 'In still air the bearing of the Yarrow gets to 56.6 degrees, which misses the house rule by fully N.', '5.6', '4.1'],
])('%s', (_, text, right, wrong) => {
  const of = (n: string): string[] => verdicts(text.replace('N', n));
  test('what is true is covered', () => expect(of(right).find((v) => v.startsWith(right))).toMatch(/: agrees$/));
  test('what is false does not agree', () => expect(of(wrong).find((v) => v.startsWith(wrong))).not.toMatch(/: agrees$/));
});
