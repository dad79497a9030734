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
