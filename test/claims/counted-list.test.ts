// What a list behind it names is counted, whatever the noun; how often something was done is how many runs there are.
import { expect, test } from 'vitest';
import { factsOf, type Row } from './record-of.js';
import { rightAndWrong, verdicts } from './right-and-wrong.js';

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

rightAndWrong(facts, [
  ['a noun of nothing on record, a colon', 'N arrivals stand in the yard: the Amber, the Basalt and the Chalk.', 'Three', 'Four'],
  ['settings, between commas', 'Each was lit in N moods, straw and peat.', 'two', 'three'],
  ['some of them', 'N of them, the Chalk and the Amber, were lit at dawn.', 'Two', 'Three'],
]);

test('a list that is not of names, or whose number stands before another, counts nothing', () => {
  for (const text of ['The Amber takes four logs of 30 inches: the Basalt and the Chalk take less.', 'I brought five friends, among them the Amber and the Basalt.']) expect(verdicts(facts, text).filter((v) => v.endsWith(': disagrees'))).toEqual([]);
});

test.each([['I lit every kiln three times.', 'three times'], ['Three goes for each of them.', 'Three'], ['Each of them had three sittings.', 'three']])('how often: %s', (text, n) => expect(verdicts(facts, text)).toContain(`${n}: agrees`));
