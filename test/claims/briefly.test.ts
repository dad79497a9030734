// Plain values said briefly: without a unit, beside a name alone, as a time. Each text is true; with its number changed it is not.
// Values are those of shelf-record.ts: the copy takes 82 / 51 minutes with the Garrow and 90 / 48 with the Lintel, for two and four drives;
// the warmest drive is at 41.2 / 46.5 and 43.8 / 49.7 °C, the box at 27.1 / 31.6 and 24.4 / 28.9 dB(A).
import { describe, expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import type { Seen } from '../../pipeline/claims/proof.js';
import { Source } from '../../pipeline/places/index.js';
import { roleOf } from '../../pipeline/claims/roles.js';
import { said } from './bench-record.js';
import { factsOf } from './record-of.js';
import { shelf } from './shelf-record.js';

const verdicts = (text: string): string[] => proof(new Source('script.md', text), shelf).mentions.filter((m) => m.verdict !== 'not-a-claim').map((m) => `${m.text}: ${m.verdict}`);

const cases: [what: string, before: string, text: string, wrong: string][] = [
  ['a thing has its time', 'With four drives, then.', 'If you are in a hurry, get the Lintel and its 48 minutes.', 'If you are in a hurry, get the Lintel and its 44 minutes.'],
  ['a time beside its name', '## The big copy, four drives\n', '- Garrow: 51 minutes.', '- Garrow: 57 minutes.'],
  ['a time of what was run', '## The Garrow with two drives\n', 'That is 82 minutes of the copy, and of waiting.', 'That is 86 minutes of the copy, and of waiting.'],
  ['the quantity of the figure just read', '## The Garrow with four drives\n\nThe warmest drive climbs to 46.5 degrees.', 'The Lintel ends at 49.7.', 'The Lintel ends at 47.9.'],
  ['the number of another prefix', '', 'The Garrow gives you the most metal, 3.42 kilograms a box.', 'The Garrow gives you the most metal, 3.42 grams a box.'],
  ['"at the most" ranks nothing', '', 'My limits: 30 decibels of noise at the most, and 55 degrees of temperature at the most.', 'My limits: 30 decibels of noise at the most, and 58 degrees of temperature at the most.'],
  ['a limit goes up to what it is', '', 'For the drives the limit goes up to 55 degrees.', 'For the drives the limit goes up to 58 degrees.'],
  ['what is divided is the number before', '## The copy with four drives\n', 'The Garrow reads 348 megabytes a second, 9.1 per watt, and takes 38.4 watts.', 'The Garrow reads 348 megabytes a second, 9.1 per watt, and takes 34.8 watts.'],
  ['a place with its figure', '## The copy with four drives\n', 'The Garrow is the loudest at 31.6.', 'The Garrow is the loudest at 31.8.'],
  ['a table goes on under other conditions', '## Noise with four drives\n\nThe Lintel is the quietest at 28.9 decibels, and the Garrow follows.\n\n## With two drives\n', 'The Lintel still leads with 24.4.', 'The Lintel still leads with 24.9.'],
  ['what is its own is no other\'s', '', 'The Lintel stays on my shelf, where, with two drives and its 24.4 decibels, it bothers nobody.', 'The Lintel stays on my shelf, where, with two drives and its 27.1 decibels, it bothers nobody.'],
  ['a time that passes is no unit', 'The Garrow with two drives makes 27.1 decibels to begin with.', 'It keeps that up for 20 minutes and then it is at 27.1.', 'It keeps that up for 20 minutes and then it is at 27.9.'],
  ['what it is made for', '', 'The Lintel reads at 391.5 with four drives, or 98 percent of the 400 it is made for.', 'The Lintel reads at 391.5 with four drives, or 98 percent of the 440 it is made for.'],
  ['takes is a verb', '## Four drives\n\nThe copy needs 51 minutes with the Garrow.', 'The Lintel takes 48.', 'The Lintel takes 44.'],
  ['a figure, and then its share', '## The Lintel, four drives\n', 'Reading is at 391.5, just 98 percent of the 400 it is made for.', 'Reading is at 319.5, just 98 percent of the 400 it is made for.'],
  ['a name and its figure', 'Four drives, then.', 'The Garrow makes 31.6 decibels, 1.1 times as much as the Lintel at 28.9.', 'The Garrow makes 31.6 decibels, 1.1 times as much as the Lintel at 31.6.'],
  ['what lies by a limit was measured', '## The copy with four drives\n', 'The drives of the Lintel sit at 49.7 degrees, practically at the limit.', 'The drives of the Lintel sit at 47.9 degrees, practically at the limit.'],
];

describe('said briefly', () => {
  test.each(cases)('%s', (_, before, text, wrong) => {
    expect(verdicts(`${before}\n${text}`).at(-1)).toMatch(/agrees$/);
    expect(verdicts(`${before}\n${wrong}`).join()).toMatch(/: disagrees/);
  });
});

test('a step like the one before goes on in percent', () => {
  const steps = (last: string): string[] => said(`Now the pump on the wall stand.\n\nSlow to brisk adds 50 percent to the power. Brisk to flat adds ${last}.`).map((m) => `${m.text}: ${m.verdict}`);
  expect(steps('67')).toEqual(['50 percent: agrees', '67: agrees']);
  expect(steps('61')).toEqual(['50 percent: agrees', '61: disagrees']);
});

test('the time until something happens is measured', () => {
  expect(['until-throttle', 'first-throttle', 'to-first-limit', 'throttle', 'limit'].map(roleOf)).toEqual(['load', 'load', 'load', 'limit', 'limit']);
});

test('a word that names a part as well is no phase of what has none such', () => {
  const ovens = factsOf([
    ['corla', '', 'loaf', 'duration', 'bake', 'load', 38.5, 'min', 0.5], ['marl', '', 'loaf', 'duration', 'bake', 'load', 44, 'min', 0.5],
    ['corla', '', 'loaf', 'energy', 'meter', 'bake', 0.82, 'Wh', 0.01], ['marl', '', 'loaf', 'energy', 'meter', 'bake', 0.74, 'Wh', 0.01],
  ], 'kind,id,spoken\nsetup,corla,the Corla\nsetup,marl,the Marl\nworkload,loaf,the loaf\npart,bake,bake\npart,meter,at the meter\nmeasure,duration,minutes\nmeasure,energy,watt hours\n');
  const told = (text: string): string[] => proof(new Source('script.md', text), ovens).mentions.map((m) => `${m.text}: ${m.verdict}`);
  expect(told('If you bake a lot, get the Corla, 38.5 minutes.')).toEqual(['38.5 minutes: agrees']);
  expect(told('If you bake a lot, get the Corla, 36.5 minutes.')).toEqual(['36.5 minutes: disagrees']);
});

test('a name and a number alone go on in the unit before', () => {
  const units = (text: string): unknown[] => proof(new Source('script.md', text), shelf).mentions.map((m) => m.mention.unit?.id);
  expect(units("The Garrow weighs 3.42 kilograms and the Lintel's 2.85, so there.")).toEqual(['kg', 'kg']);
  expect(units('We copied for 82 minutes with the Garrow, 90 with the Lintel.')).toEqual(['min', 'min']);
  expect(units('The Garrow weighs 3.42 kilograms and the Lintel needs 48.')).toEqual(['kg', undefined]);
});

test('so much of a unit', () => {
  expect(proof(new Source('script.md', 'The Lintel takes nought point eight of a watt.'), shelf).mentions.map((m) => m.mention.unit?.id)).toEqual(['W']);
});

test('a mark of one\'s own is the limit or the target of what was spoken of', () => {
  expect(verdicts('## The copy with four drives\n\nThe box of the Lintel makes 28.9 decibels, so it sneaks under my 30.').at(-1)).toBe('30: agrees');
});

test('what has gone missing lies between two', () => {
  expect(verdicts('## The Garrow, four drives\n\nThe label promises 360 for reading and we get 348, so 12 megabytes a second have gone missing somewhere.').at(-1)).toBe('12 megabytes a second: agrees');
  expect(verdicts('## The Garrow, four drives\n\nThe label promises 360 for reading and we get 348, so 16 megabytes a second have gone missing somewhere.').at(-1)).toBe('16 megabytes a second: disagrees');
});

test('a number word is no name that was misheard, and a heat sink does not sink', () => {
  const towers = factsOf([['tolvey', '', '', 'mass', 'tower', 'weighed', 812, 'g'], ['marl', '', '', 'mass', 'tower', 'weighed', 640, 'g']], 'kind,id,spoken\nsetup,tolvey,Tolvey\nsetup,marl,Marl\npart,tower,tower\nmeasure,mass,weight\n');
  const seen: Seen[] = [];
  proof(new Source('script.md', 'They were both late, so twelve of you wrote in. If your board has a heat sink get the Marl 640 is fine.'), towers, { seen: (s) => seen.push(s) });
  expect(seen[0]!.parsed.names).toEqual([]);
  expect(seen[1]!.parsed.said.map((s) => s.cue.op)).toEqual(['value']);
});

test('a part that a product of limits is called after was measured, where no limit is spoken of', () => {
  const coolers = factsOf([
    ['wold', '', 'mill', 'temperature', 'chip', 'load', 91.4, 'degC', 0.2], ['fenn', '', 'mill', 'temperature', 'chip', 'load', 84.2, 'degC', 0.2],
    ['q-9', '', '', 'temperature', 'chip', 'limit', 95, 'degC'],
  ], 'kind,id,spoken\nsetup,wold,the Wold\nsetup,fenn,the Fenn\nsetup,q-9,the chip;Q 9\nworkload,mill,the mill\npart,chip,the chip;chip\nmeasure,temperature,degrees\n');
  const told = (text: string): string[] => proof(new Source('script.md', text), coolers).mentions.map((m) => `${m.text}: ${m.verdict}`);
  expect(told('Now the Wold in the mill. The chip sits at 91.4 degrees, practically at its ceiling.')).toEqual(['91.4 degrees: agrees']);
  expect(told('Now the Wold in the mill. The chip sits at 94.1 degrees, practically at its ceiling.')).toEqual(['94.1 degrees: disagrees']);
  expect(told('Now the Wold in the mill. The limit of the chip is 95 degrees.')).toEqual(['95 degrees: agrees']);
});

test('a limit stands in no list of what was measured', () => {
  expect(verdicts('## The copy with four drives\n\nNoise, then.\nThe Garrow jumps to 31.6, 1.6 over my rules, and the Lintel to 28.9.')).toEqual(['31.6: agrees', '1.6: agrees', '28.9: agrees']);
});
