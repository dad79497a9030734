// What a sentence names comes before what was carried over, where the record has nothing of the two together. Ovens that bake on two trays and dry on none.
import { expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf } from './record-of.js';

const ovens = factsOf([
  ['corla', '', 'dry', 'energy', 'meter', 'load', 812, 'Wh', 2], ['marl', '', 'dry', 'energy', 'meter', 'load', 1040, 'Wh', 2], ['tesk', '', 'dry', 'energy', 'meter', 'load', 655, 'Wh', 2],
  ['corla', 'narrow', 'bake', 'energy', 'meter', 'load', 640, 'Wh', 2], ['marl', 'narrow', 'bake', 'energy', 'meter', 'load', 790, 'Wh', 2], ['tesk', 'narrow', 'bake', 'energy', 'meter', 'load', 574, 'Wh', 2],
  ['corla', 'broad', 'bake', 'energy', 'meter', 'load', 702, 'Wh', 2], ['marl', 'broad', 'bake', 'energy', 'meter', 'load', 911, 'Wh', 2], ['tesk', 'broad', 'bake', 'energy', 'meter', 'load', 608, 'Wh', 2],
  ['corla', '', 'dry', 'duration', 'door', 'load', 95, 'min', 1], ['marl', '', 'dry', 'duration', 'door', 'load', 121, 'min', 1], ['tesk', '', 'dry', 'duration', 'door', 'load', 77, 'min', 1],
  ['corla', 'broad', 'bake', 'duration', 'door', 'load', 48, 'min', 1], ['marl', 'broad', 'bake', 'duration', 'door', 'load', 56, 'min', 1], ['tesk', 'broad', 'bake', 'duration', 'door', 'load', 41, 'min', 1],
], 'kind,id,spoken\nsetup,corla,the Corla;Corla\nsetup,marl,the Marl;Marl\nsetup,tesk,the Tesk;Tesk\nsetting,narrow,the narrow tray\nsetting,broad,the broad tray\nworkload,dry,drying\nworkload,bake,baking\npart,meter,the meter\npart,door,the door\nmeasure,energy,energy;watt-hours\nmeasure,duration,time;minutes\n');
const verdicts = (text: string): string[] => proof(new Source('script.md', text), ovens).mentions.filter((m) => m.verdict !== 'not-a-claim').map((m) => `${m.text}: ${m.verdict}`);

test.each([
  ['a setting that the work before does not have', 'Drying takes 812 watt-hours in the Corla.\n\nSlide in the broad tray and the Marl gets through 911 watt-hours.', '911', '940'],
  ['both ends of a step', 'Drying takes 812 watt-hours in the Corla.\n\nSwitch to the broad tray and the Tesk climbs from 574 to 608 watt-hours.', '608', '644'],
  ['what is handed over is as much as is said', 'Now the broad tray, baking.\n\nThe Tesk turns over 608 watt-hours.', '608', '599'],
  ['what is received from a thing', 'Baking on the broad tray, then.\n\nI got 48 minutes from the Corla, 56 from the Marl and 41 from the Tesk.', '56 ', '59 '],
])('%s', (_, text, number, wrong) => {
  expect(verdicts(text).join()).not.toMatch(/disagrees|untied/);
  expect(verdicts(text.replace(number, wrong)).join()).toMatch(/disagrees/);
});

test('what was bought is counted', () => {
  expect(verdicts('I bought three ovens, the Corla, the Marl and the Tesk, for this.')).toEqual(['three: agrees']);
});

// A cabinet in which two lids were tried, with a limit of its own; the room is in degrees, the inside in kelvin over it.
const cabinet = factsOf([
  ['cabinet', '', '', 'temperature', 'inside', 'limit', 40, 'K'], ['brell', 'open', 'brew', 'temperature', 'inside', 'load', 21.3, 'K', 0.1], ['quine', 'open', 'brew', 'temperature', 'inside', 'load', 24.8, 'K', 0.1], ['brell', 'open', 'brew', 'temperature', 'room', 'load', 22.6, 'degC', 0.1], ['quine', 'open', 'brew', 'temperature', 'room', 'load', 22.9, 'degC', 0.1],
  ['brell', 'shut', 'brew', 'temperature', 'inside', 'load', 30.9, 'K', 0.1], ['quine', 'shut', 'brew', 'temperature', 'inside', 'load', 36.2, 'K', 0.1], ['brell', 'open', 'brew', 'energy', 'meter', 'load', 47.6, 'Wh', 0.1], ['quine', 'open', 'brew', 'energy', 'meter', 'load', 37.2, 'Wh', 0.1], ['brell', '', '', 'energy', 'meter', 'rated', 52, 'Wh'], ['quine', '', '', 'energy', 'meter', 'rated', 44, 'Wh'],
], 'kind,id,spoken\nsetup,cabinet,the cabinet\nsetup,brell,the Brell;Brell\nsetup,quine,the Quine;Quine\nsetting,open,open\nsetting,shut,shut\nworkload,brew,the brew\npart,inside,inside\npart,room,the room\npart,meter,the meter\nmeasure,temperature,temperature;kelvin\nmeasure,energy,energy;watt-hours\n');
const inside = (text: string): string[] => proof(new Source('script.md', text), cabinet).mentions.filter((m) => m.verdict !== 'not-a-claim').map((m) => `${m.text}: ${m.verdict}`);

test('what everything is tested in stands for the thing under test', () => {
  expect(inside('## Shut\n\nWith the Quine the cabinet climbs to 36.2 kelvin.')).toEqual(['36.2 kelvin: agrees']);
  expect(inside('## Shut\n\nWith the Quine the cabinet climbs to 32.6 kelvin.')).toEqual(['32.6 kelvin: disagrees']);
});

test('a figure and its share, and again', () => {
  const pair = (own: string, share: string): string[] => inside(`## Open\n\nThe Brell hands over 47.6 watt-hours, or 92 percent of its rating, and the Quine ${own}, which is ${share}.`);
  expect(pair('37.2', '85').slice(2)).toEqual(['37.2: agrees', '85: agrees']);
  expect(pair('32.7', '85').join()).toMatch(/32.7: disagrees/);
});

test('the size of a thing is not measured', () => {
  expect(inside('## Open\n\nThe Brell had a plug of 15 watts and a lamp of 9 watt-hours beside it.')).toEqual([]);
});

test('a place got beside a figure need not be by it', () => {
  expect(verdicts('## Baking on the broad tray\n\nThe Marl hands you 911 watt-hours and first place.').join()).not.toMatch(/disagrees/);
});
