// Asides, names that a little word makes, what it was before, and which figure a run goes with.
import { expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const tug = (id: string, hose: string, flow: number, time: number, heat: number): Row[] => [
  [id, hose, 'draining', 'flow', 'spout', 'load', flow, 'L/min', 0.4],
  [id, hose, 'draining', 'duration', 'tank', 'load', time, 's', 1],
  [id, hose, 'draining', 'temperature', 'motor', 'load', heat, 'degC', 0.5],
];
const cellar = factsOf([
  ['bilge', '', '', 'temperature', 'motor', 'limit', 90, 'degC'],
  ['orrin', '', '', 'flow', 'spout', 'rated', 40, 'L/min'],
  ['welby', '', '', 'flow', 'spout', 'rated', 30, 'L/min'],
  ['dunnage', '', '', 'flow', 'spout', 'rated', 35, 'L/min'],
  ...tug('orrin', 'own-hose', 38.8, 116, 71), ...tug('orrin', 'garden-hose', 24.4, 184, 84),
  ...tug('welby', 'own-hose', 24, 187, 66), ...tug('welby', 'garden-hose', 20.4, 220, 69),
  ...tug('dunnage', 'own-hose', 30.1, 149, 78), ...tug('dunnage', 'garden-hose', 22.1, 203, 81),
], `kind,id,spoken
setup,bilge,the bilge
setup,orrin,the Orrin
setup,welby,the Welby
setup,dunnage,the Dunnage
setting,own-hose,its own hose
setting,garden-hose,the garden hose
workload,draining,draining
measure,flow,flow;litres a minute
measure,duration,how long;seconds
measure,temperature,temperature;degrees
part,spout,spout
part,tank,the tank
part,motor,the motor
`);
const verdicts = (text: string): string => proof(new Source('script.md', text), cellar).mentions.filter((m) => m.verdict !== 'not-a-claim').map((m) => `${m.text}: ${m.verdict}`).join();

test('a figure told again in passing', () => {
  expect(verdicts('With its own hose the Orrin needs 116 seconds, just under two minutes, and the Welby 187.')).toBe('116 seconds: agrees,two minutes: agrees,187: agrees');
  expect(verdicts('With its own hose the Orrin needs 116 seconds, just under two minutes, and the Welby 178.')).toMatch(/178: disagrees/);
});

test('not every hose is its own', () => {
  expect(verdicts('Now the garden hose. With it the Welby still moves 20.4 litres a minute, 3.6 less than with its own hose.')).toBe('20.4 litres a minute: agrees,3.6: agrees');
  expect(verdicts('Now the garden hose. The Welby gives 20.4 litres a minute, and with its own it gives 24.')).toBe('20.4 litres a minute: agrees,24: agrees');
  expect(verdicts('Now the garden hose. The Welby gives 20.4 litres a minute, and with its own it gives 26.')).toBe('20.4 litres a minute: agrees,26: disagrees');
});

test('what it was before', () => {
  expect(verdicts('With its own hose the Orrin moves 38.8 litres a minute. On the garden hose that is 61 percent of its rating where it was 97.')).toBe('38.8 litres a minute: agrees,61 percent: agrees,97: agrees');
  expect(verdicts('With its own hose the Orrin moves 38.8 litres a minute. On the garden hose it is 24.4, and it was 38.8.')).toBe('38.8 litres a minute: agrees,24.4: agrees,38.8: agrees');
});

test('a run belongs to the figure behind it', () => {
  expect(verdicts('On the garden hose the motor of the Orrin averaged 84 degrees with the cut-out set to trip at 90, and in the third run it read 84.5.')).toMatch(/90: agrees,84.5: agrees/);
});

test('points behind something that is not named', () => {
  expect(verdicts('With its own hose the Orrin gives 97 percent of its rating, the Dunnage 86 and the Welby 80, which puts it 17 points behind the dearest of them.')).toMatch(/80: agrees,17 points: agrees/);
});
