// What it has come down by since, what another took, "the other" alone, and changes told again in percent.
import { expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const loom = (id: string, belt: string, heat: number, hum: number, weave: number, watts: number): Row[] => [
  [id, belt, 'weaving', 'temperature', 'bearing', 'load', heat, 'degC', 0.3],
  [id, belt, 'weaving', 'noise', 'ear', 'load', hum, 'dB(A)', 0.2],
  [id, belt, 'weaving', 'duration', 'metre', 'load', weave, 's', 1],
  [id, belt, 'weaving', 'power', 'plug', 'load', watts, 'W', 0.5],
];
const mill = factsOf([
  ['pennock', 'flat', '', 'power', 'plug', 'limit', 160, 'W'], ['pennock', 'ribbed', '', 'power', 'plug', 'limit', 90, 'W'],
  ...loom('pennock', 'flat', 61.4, 52.3, 340, 118), ...loom('pennock', 'ribbed', 55.2, 48.1, 362, 88),
  ...loom('garrod', 'flat', 57.8, 49.6, 412, 96), ...loom('garrod', 'ribbed', 53.1, 46, 431, 79),
], `kind,id,spoken
setup,pennock,the Pennock
setup,garrod,the Garrod
setting,flat,the flat belt
setting,ribbed,the ribbed belt
workload,weaving,weaving
measure,temperature,temperature
measure,noise,noise
measure,duration,how long;seconds
measure,power,power;watts
part,bearing,the bearing
part,ear,at the ear
part,metre,a metre of cloth
part,plug,at the plug
`);
const verdicts = (text: string): string => proof(new Source('script.md', text), mill).mentions.filter((m) => m.verdict !== 'not-a-claim').map((m) => `${m.text}: ${m.verdict}`).join();

test('it was so much and is now so much less', () => {
  expect(verdicts('The bearing of the Pennock was at 61.4 degrees on the flat belt and it\'s now 6.2 degrees cooler.')).toBe('61.4 degrees: agrees,6.2 degrees: agrees');
  expect(verdicts('The bearing of the Pennock was at 61.4 degrees on the flat belt and it\'s now 7.2 degrees cooler.')).toBe('61.4 degrees: agrees,7.2 degrees: disagrees');
});

test('done before another', () => {
  expect(verdicts('On the flat belt the Pennock finishes the metre 72 seconds before the Garrod.')).toBe('72 seconds: agrees');
  expect(verdicts('On the flat belt the Pennock finishes the metre 82 seconds before the Garrod.')).toBe('82 seconds: disagrees');
  expect(verdicts('On the flat belt the Garrod finishes the metre 72 seconds before the Pennock.')).toBe('72 seconds: disagrees');
});

test('the other, with nothing after it', () => {
  expect(verdicts('On the flat belt noise is 52.3 decibels for the Pennock and 2.7 less for the other one.')).toBe('52.3 decibels: agrees,2.7: agrees');
  expect(verdicts('On the flat belt noise is 52.3 decibels for the Pennock and 2.7 more for the other.')).toBe('52.3 decibels: agrees,2.7: disagrees');
});

test('two changes again, in percent', () => {
  expect(verdicts('From the flat belt to the ribbed belt it is 30 watts less for the Pennock and 17 for the Garrod, or, in percent, 25 and 18.')).toBe('30 watts: agrees,17: agrees,25: agrees,18: agrees');
});

test('a limit that was moved', () => {
  expect(verdicts('On the ribbed belt the limit of the Pennock goes from 160 down to 90 watts.')).toBe('160: agrees,90 watts: agrees');
});
