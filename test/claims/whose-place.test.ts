// Whose place it is, from which end it is counted, and what a thing rose from. Each pair is a true sentence and a false one;
// a place of someone that no name says is no alarm.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = [];
const vats: [string, number, number][] = [['alder', 61.4, 19.2], ['hazel', 74.8, 21.7], ['willow', 68.9, 20.4]];
for (const [id, hot, cold] of vats) for (const [lid, k] of [['open', 0], ['shut', 9.3]] as const) {
  rows.push([id, lid, 'boil', 'temperature', 'wall', 'start', cold, 'degC', 0.1], [id, lid, 'boil', 'temperature', 'wall', 'end', hot + k, 'degC', 0.1], [id, lid, 'boil', 'duration', 'boil', 'whole', 900 - hot - 10 * k, 's', 1]);
}
const names = `kind,id,spoken
setup,alder,the Alder
setup,hazel,the Hazel
setup,willow,the Willow
setting,open,with the lid off
setting,shut,with the lid on
workload,boil,the boil
part,wall,wall
measure,temperature,temperature
measure,duration,time
`;
const facts = factsOf(rows, names);
const verdicts = (text: string): string[] => proof(new Source('script.md', text), facts).mentions.map((m: Verdict) => `${m.text}: ${m.verdict}`);

describe.each([
  ['second from the end just named', 'With the lid on the wall of the Hazel was the hottest of the three, and the Willow came N with 78.2 degrees.', 'second', 'third'],
  ['what was said last is placed', 'With the lid off the wall of the Willow ends up at 68.9 degrees.\nThat is the N of the three.', 'second hottest', 'hottest'],
  ['it rose from where it started', '## The Hazel\n\nWith the lid off it stops at 74.8 degrees, 5.9 more than the Willow.\nIts wall rose by N degrees.', '53.1', '57.1'],
])('%s', (_, text, right, wrong) => {
  const of = (n: string): string[] => verdicts(text.replace('N', n));
  test('what is true is covered', () => expect(of(right).find((v) => v.startsWith(right))).toMatch(/: agrees$/));
  test('what is false is caught', () => expect(of(wrong).find((v) => v.startsWith(wrong))).toMatch(/: disagrees$/));
});

test.each([
  'With the lid on, his had been the coolest of all six combinations, and the wall of the Willow came third with 78.2 degrees.',
  'By my thumb the cheap one was the hottest, and the wall of the Alder with the lid off stops at 61.4 degrees.',
])('%s', (text) => expect(verdicts(text).filter((v) => v.endsWith('disagrees'))).toEqual([]));
