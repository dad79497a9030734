// Names without the word that leads to them, shelves said by place, and one noun for two adjectives.
import { expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const of = (setting: string, low: number, middle: number, high: number, hum: number): Row[] => [
  ['crock', setting, 'ripening', 'temperature', 'shelf-1', 'load', low, 'degC', 0.3],
  ['crock', setting, 'ripening', 'temperature', 'shelf-2', 'load', middle, 'degC', 0.3],
  ['crock', setting, 'ripening', 'temperature', 'shelf-3', 'load', high, 'degC', 0.3],
  ['crock', setting, 'ripening', 'noise', 'hatch', 'load', hum, 'dB(A)', 0.2],
];
const larder = factsOf([...of('cold', 11.4, 13.1, 15.2, 22.6), ...of('warm', 14.9, 17.7, 20.8, 26.9), ...of('louvre', 12.8, 14.2, 17.1, 24.3)], `kind,id,spoken
setup,crock,the crock
setting,cold,in March
setting,warm,in August
setting,louvre,with the louvre
workload,ripening,ripening
measure,temperature,temperature
measure,noise,noise
part,shelf-1,shelf one;the lower shelf
part,shelf-2,shelf two
part,shelf-3,the upper shelf
part,hatch,at the hatch
`);
const verdicts = (text: string): string => proof(new Source('script.md', text), larder).mentions.filter((m) => m.verdict !== 'not-a-claim').map((m) => `${m.text}: ${m.verdict}`).join();

test('a heading names a month', () => {
  expect(verdicts('# August\n\nNoise is at 26.9 decibels.')).toBe('26.9 decibels: agrees');
  expect(verdicts('# August\n\nNoise is at 25.9 decibels.')).toBe('25.9 decibels: disagrees');
});

test('other words lead to a month', () => {
  expect(verdicts('By August the upper shelf was at 20.8 degrees.')).toBe('20.8 degrees: agrees');
  expect(verdicts('# August\n\nSince March the hatch has got 4.3 decibels louder.')).toBe('4.3 decibels: agrees');
  expect(verdicts('# August\n\nSince March the hatch has got 4.3 decibels quieter.')).toBe('4.3 decibels: disagrees');
  expect(verdicts('By March the upper shelf was at 20.8 degrees.')).not.toMatch(/: agrees/);
});

test('what a setting is done with stands first', () => {
  expect(verdicts('August it is: 26.9 decibels at the hatch. The louvre brings that down to 24.3.')).toMatch(/24.3: agrees/);
  expect(verdicts('# Louvre\n\nThe lower shelf is at 12.8 degrees.')).toBe('12.8 degrees: agrees');
});

test('one noun for two', () => {
  expect(verdicts('In March the lower shelf is at 11.4 degrees and the upper one at 15.2.')).toBe('11.4 degrees: agrees,15.2: agrees');
  expect(verdicts('In March the lower shelf is at 11.4 degrees and the upper one at 16.2.')).toBe('11.4 degrees: agrees,16.2: disagrees');
  expect(verdicts('In March the lower and the upper shelf are at 11.4 and 15.2 degrees.')).toBe('11.4: agrees,15.2 degrees: agrees');
});

test('a shelf with a number, by its place', () => {
  expect(verdicts('In March the second shelf is at 13.1 degrees.')).toBe('13.1 degrees: agrees');
  expect(verdicts('In March the second shelf is at 11.1 degrees.')).toBe('11.1 degrees: disagrees');
});

test('each end of two rises has its own name', () => {
  expect(verdicts('From March to August the lower shelf went from 11.4 to 14.9 degrees, the upper one from 15.2 to 20.8.')).toBe('11.4: agrees,14.9 degrees: agrees,15.2: agrees,20.8: agrees');
});

const kiln = factsOf([
  ['bench', '', '', 'power', 'socket', 'limit', 60, 'W'],
  ['bench', '', '', 'temperature', 'wicks', 'limit', 180, 'degC'],
  ['dauber', '', '', 'power', 'pot', 'idle', 3.1, 'W', 0.1],
  ['dauber', '', 'melt', 'power', 'pot', 'load', 63, 'W', 0.5],
  ['dauber', '', 'melt', 'temperature', 'wick-1', 'load', 171, 'degC', 1],
  ['tallow', '', '', 'power', 'pot', 'idle', 2.2, 'W', 0.1],
  ['tallow', '', 'melt', 'power', 'pot', 'load', 52, 'W', 0.5],
  ['tallow', '', 'melt', 'temperature', 'wick-1', 'load', 164, 'degC', 1],
], `kind,id,spoken
setup,bench,the socket
setup,dauber,the Dauber
setup,tallow,the Tallow
workload,melt,the melt
measure,power,power;watts
measure,temperature,temperature;degrees
part,pot,pot
part,wicks,wicks
part,wick-1,the wick
part,socket,socket
`);
const molten = (text: string): string => proof(new Source('script.md', text), kiln).mentions.filter((m) => m.verdict !== 'not-a-claim').map((m) => `${m.text}: ${m.verdict}`).join();

test('a mark of something that was not measured holds for what was', () => {
  expect(molten('In the melt the Dauber takes 105 percent of what it is allowed, 3 watts too much.')).toBe('105 percent: agrees,3 watts: agrees');
  expect(molten('In the melt the Dauber takes 105 percent of what it is allowed, 4 watts too much.')).toBe('105 percent: agrees,4 watts: disagrees');
  expect(molten('In the melt the wick of the Tallow is at 164 degrees, 16 below what is allowed.')).toBe('164 degrees: agrees,16: agrees');
});

test('what was only compared with is not what the rest is about', () => {
  expect(molten('The Dauber draws 59.9 watts more than when it does nothing. The Tallow draws 52 watts.')).toBe('59.9 watts: agrees,52 watts: agrees');
});
