// What a list behind it names is counted, whatever the noun; how often something was done is how many runs there are.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = [];
for (const [kiln, k] of [['amber', 0], ['basalt', 13], ['chalk', 31]] as const) for (const [fuel, f] of [['peat', 0], ['straw', 44]] as const) rows.push([kiln, fuel, 'firing', 'temperature', 'wall', 'load', 412.6 + k + f, 'degC', 0.4]);
const names = `kind,id,spoken
setup,amber,the Amber
setup,basalt,the Basalt
setup,chalk,the Chalk
setting,peat,peat
setting,straw,straw
workload,firing,firing
part,wall,wall
measure,temperature,temperature
`;
const facts = factsOf(rows, names);
const verdicts = (text: string): string[] => proof(new Source('script.md', text), facts).mentions.map((m: Verdict) => `${m.text}: ${m.verdict}`);

describe.each([
  ['a noun of nothing on record, a colon', 'N arrivals stand in the yard: the Amber, the Basalt and the Chalk.', 'Three', 'Four'],
  ['settings, between commas', 'Each was lit in N moods, straw and peat.', 'two', 'three'],
  ['some of them', 'N of them, the Chalk and the Amber, were lit at dawn.', 'Two', 'Three'],
])('%s', (_, text, right, wrong) => {
  test('what is true is covered', () => expect(verdicts(text.replace('N', right))[0]).toMatch(/: agrees$/));
  test('what is false is caught', () => expect(verdicts(text.replace('N', wrong))[0]).toMatch(/: disagrees$/));
});

test('a list that is not of names, or whose number stands before another, counts nothing', () => {
  for (const text of ['The Amber takes four logs of 30 inches: the Basalt and the Chalk take less.', 'I brought five friends, among them the Amber and the Basalt.']) expect(verdicts(text).filter((v) => v.endsWith(': disagrees'))).toEqual([]);
});

describe('how often', () => {
  test.each(['I lit every kiln three times.', 'Three goes for each of them.', 'Each of them had three sittings.'])('%s', (text) => expect(proof(new Source('script.md', text), facts).mentions[0]!.verdict).toBe('agrees'));
});
