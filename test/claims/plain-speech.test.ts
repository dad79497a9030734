// What people say any day about measurements: each sentence true and covered, and caught when its number is another.
import { describe, expect, test } from 'vitest';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

// Four stoves in a yard and in a shed, damper shut or open.
const rows: Row[] = [];
const stoves: [string, number, number, number][] = [['larch', 74, 36.8, 640], ['rowan', 69, 39.5, 980], ['sorrel', 79, 33.2, 415], ['tansy', 65, 42.9, 1240]];
for (const [id, t, n, kg] of stoves) {
  rows.push([id, '', '', 'mass', 'stove', 'weighed', kg, 'g']);
  for (const [place, dp] of [['yard', 0], ['shed', 5.2]] as const) for (const [damper, dt, dn] of [['shut', 4.6, -4.9], ['open', 0, 0]] as const) {
    const s = `${place}-${damper}`;
    rows.push([id, s, 'loaf', 'temperature', 'plate', 'load', t + dp + dt + (id === 'sorrel' ? dp / 4 : 0), 'degC', 0.4], [id, s, 'loaf', 'noise', 'flue', 'load', Number((n + dn - dp / 10).toFixed(1)), 'dB(A)', 0.2], [id, s, 'loaf', 'duration', 'loaf', 'load', 400 + t + dp + dt, 's', 0.6], [id, s, 'loaf', 'voltage', 'sensor', 'load', Number((1 + t / 1000 + dt / 100).toFixed(3)), 'V', 0.002]);
  }
}
rows.push(['oven', '', '', 'temperature', 'plate', 'limit', 95, 'degC'], ['my-rules', '', '', 'noise', 'flue', 'target', 36, 'dB(A)'], ['oven', 'yard-open', '', 'temperature', 'room', 'load', 20.6, 'degC'], ['oven', 'shed-open', '', 'temperature', 'room', 'load', 21.8, 'degC']);
const names = `kind,id,spoken
setup,larch,the Larch
setup,rowan,the Rowan
setup,sorrel,the Sorrel
setup,tansy,the Tansy
setup,oven,the oven
setup,my-rules,my line;my rule
setting,yard-shut,shut in the yard
setting,yard-open,wide open in the yard
setting,shed-shut,shut in the shed
setting,shed-open,wide open in the shed
setting,yard,the yard;in the yard
setting,shed,the shed;in the shed
setting,shut,shut;the shut damper
setting,open,wide open;the open damper
workload,loaf,the loaf;baking
part,plate,plate
part,flue,flue
part,stove,stove
part,sensor,sensor
part,room,the room
measure,temperature,temperature;degrees
measure,noise,noise;decibels
measure,duration,time;seconds
measure,voltage,voltage;volts
measure,mass,weight;grams
`;
const facts = factsOf(rows, names);
const verdicts = (text: string): string[] => proof(new Source('script.md', text), facts).mentions.map((m: Verdict) => `${m.text}: ${m.verdict}`);

/** Text with N for the number, what is right, what is wrong. */
describe.each([
  ['a part more', 'The Rowan weighs N more than the Larch.', 'half', 'a quarter'],
  ['a part less, by', 'The Sorrel is lighter than the Larch by N.', 'a third', 'two thirds'],
  ['what a setting does, all else being kept', 'The open damper is worth N degrees to the Rowan in the shed.', '4.6', '6.9'],
  ['what is got out of it', 'The Rowan gets N degrees out of the open damper in the yard.', '4.6', '6.9'],
  ['behind a semicolon', 'Shut in the shed, the Tansy stays 20.2 degrees below the limit; the Rowan, only N.', '16.2', '11.2'],
  ['over the room, again', 'Wide open in the yard the Tansy is 44.4 degrees over the room; the Larch, by contrast, N.', '53.4', '61.4'],
  ['over the room, in the next sentence', 'Wide open in the yard the Tansy is 44.4 degrees over the room. The Larch is N.', '53.4', '61.4'],
  ['the unit of the sentence before', 'Wide open in the yard the Larch\'s sensor gives 1,074 millivolts. The Rowan\'s gives N.', '1,069', '1,690'],
  ['a median that opens', 'The median weight, of the four stoves on the scales, is N grams.', '810', '910'],
  ['marks by whoever holds them', 'Of the four heaters shut in the yard, N stay under my line.', 'three', 'two'],
  ['a setting behind both', 'The Larch has N degrees more than the Rowan wide open in the shed.', '5', '8'],
  ['off a thing, on either side', 'Shut in the yard, the Larch bakes the loaf N seconds off the Rowan.', '5', '9'],
  ['the place of a thing among its own', 'The Sorrel is loudest wide open in the yard, with N decibels.', '33.2', '36.2'],
  ['what opens with its setting', 'The Tansy shut in the shed is next. Against the Sorrel shut in the shed it is N degrees cooler.', '15.3', '12.3'],
])('%s', (_, text, right, wrong) => {
  const of = (n: string): string | undefined => { const said = verdicts(text.replace('N', n)); return said.find((v) => v.startsWith(n) || v.includes(` ${n}`)) ?? said.at(-1); };
  test('what is true is covered', () => expect(of(right)).toMatch(/: agrees$/));
  test('what is false is no part of it', () => expect(of(wrong)).not.toMatch(/: agrees$/));
  test('nothing true is wrong', () => expect(verdicts(text.replace('N', right)).filter((v) => v.endsWith(': disagrees'))).toEqual([]));
});

describe('what is no reading', () => {
  test.each([
    ['a bound of all', 'Nobody shut in the yard stays under 69 degrees.'],
    ['a bound that is denied', 'Wide open in the yard the Tansy isn\'t under thirty-six decibels.'],
    ['how near no one comes', 'No stove comes within five degrees of the limit, wide open.'],
    ['a slope', 'For each degree that it gains, the Rowan shut in the yard carries 14 grams more iron.'],
    ['what one more costs', 'Wide open in the shed one extra degree is 9 seconds on the Larch.'],
    ['a warm-up', 'Baking starts after a warm-up of twenty seconds, wide open in the yard.'],
    ['a size', 'The Larch is 510 wide and 300 deep, and stands wide open in the yard.'],
    ['a guess and its answer', 'How heavy is the Rowan? A hundred and fifty grams? No, 980.'],
    ['a mark of one\'s own', 'Seventy degrees is where I get nervous. Shut in the yard the Rowan is past that by 3.6.'],
    ['two of the loudest', 'The two loudest stoves stand in the yard, wide open.'],
  ])('%s', (_, text) => expect(verdicts(text).filter((v) => v.endsWith(': disagrees'))).toEqual([]));
});
