// A percentage alone in its sentence, on what is named, or of two set against each other at the head; a unit that goes on in a
// list. Each pair is a true sentence and a false one.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = [];
const inks: [string, number, number, number][] = [['coal', 41.7, 182, 30.4], ['madder', 48.2, 239, 33.1], ['woad', 57.9, 306, 35.2]];
for (const [id, pace, secs, hum] of inks) rows.push(['press', id, 'poster', 'sheet_rate', 'belt', 'load', pace, 'fps', 0.1], ['press', id, 'poster', 'duration', 'drying', 'whole', secs, 's', 1], ['press', id, 'poster', 'noise', 'roller', 'load', hum, 'dB(A)', 0.1]);
const names = `kind,id,spoken
setup,press,the press
setting,coal,the coal ink;coal
setting,madder,the madder ink;madder
setting,woad,the woad ink;woad
workload,poster,the poster
part,belt,belt
part,roller,roller
part,drying,drying
measure,sheet_rate,frames
measure,duration,drying time;seconds
measure,noise,noise
`;
const facts = factsOf(rows, names);
const verdicts = (text: string): string[] => proof(new Source('script.md', text), facts).mentions.map((m: Verdict) => `${m.text}: ${m.verdict}`);

describe.each([
  ['a percentage by itself', 'Madder runs at 48.2 frames, which is 6.5 frames over coal. About NUM percent.', '16', '21'],
  ['on what is named', 'Drying, in seconds. Coal 182, madder 239.\nAnd then woad: 306.\nThat makes it clear, that is NUM percent on madder.', '28', '34'],
  ['set against each other', 'Drying takes 182 seconds with coal.\nWoad over coal: NUM times.', '1.7', '2.3'],
  ['the unit of the first', 'Noise: coal, madder and woad come to 30.4 decibels, NUM and 35.2.', '33.1', '31.3'],
])('%s', (_, text, right, wrong) => {
  const of = (n: string): string[] => verdicts(text.replace('NUM', n));
  test('what is true is covered', () => expect(of(right).find((v) => v.startsWith(right))).toMatch(/: agrees$/));
  test('what is false is caught', () => expect(of(wrong).find((v) => v.startsWith(wrong))).toMatch(/: disagrees$/));
});
