// What people say any day about measurements, and what they say that is no reading.
import { expect, test } from 'vitest';
import { factsOf, type Row } from './record-of.js';
import { rightAndWrong, verdictOn } from './right-and-wrong.js';

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

rightAndWrong(facts, [
  ['a part more', 'The Rowan weighs N more than the Larch.', 'half', 'a quarter'],
  ['a part less, by', 'The Sorrel is lighter than the Larch by N.', 'a third', 'two thirds'],
  ['what is got out of a setting, all else being kept', 'The Rowan gets N degrees out of the open damper in the yard.', '4.6', '6.9'],
  ['behind a semicolon', 'Shut in the shed, the Tansy stays 20.2 degrees below the limit; the Rowan, only N.', '16.2', '11.2', 'open'],
  ['over the room, again', 'Wide open in the yard the Tansy is 44.4 degrees over the room; the Larch, by contrast, N.', '53.4', '61.4', 'open'],
  ['over the room, in the next sentence', 'Wide open in the yard the Tansy is 44.4 degrees over the room. The Larch is N.', '53.4', '61.4', 'open'],
  ['the unit of the sentence before', 'Wide open in the yard the Larch\'s sensor gives 1,074 millivolts. The Rowan\'s gives N.', '1,069', '1,690', 'open'],
  ['a median that opens', 'The median weight, of the four stoves on the scales, is N grams.', '810', '910'],
  ['marks by whoever holds them', 'Of the four heaters shut in the yard, N stay under my line.', 'three', 'two'],
  ['a setting behind both', 'Shut in the yard the Tansy is at 69.6 degrees. \n\nThe Sorrel has N degrees more than the Larch wide open in the shed.', '6.3', '9.3'],
  ['off a thing, on either side', 'Shut in the yard, the Larch bakes the loaf N seconds off the Rowan.', '5', '9'],
]);

test.each([
  ['how near no one comes', 'No stove got within four degrees of the limit, not even the Sorrel shut in the shed.', 'four'],
  ['a bound that is denied', 'Wide open in the yard the Tansy isn\'t under thirty-six decibels.', 'thirty-six'],
  ['a slope', 'For each degree that it gains, the Rowan shut in the yard carries 14 grams more iron.', '14'],
  ['a warm-up', 'Wide open in the yard the Larch needs 474 seconds, after a warm-up of 240 seconds.', '240'],
  ['a size', 'The Larch hums at 36.8 decibels wide open in the yard. It has one pipe, 37 long and 31 thick.', '37'],
  ['a guess and its answer', 'How heavy is the Rowan? A hundred and fifty grams? No, 980.', 'A hundred and fifty'],
])('%s is no reading', (_, text, n) => expect(verdictOn(facts, text, n)).toMatch(/^(?:untied|not-a-claim)$/));

test('what is told from a mark of one\'s own is measured from it', () => {
  const text = (n: string): string => `Seventy degrees is where I get nervous. Shut in the yard the Rowan is past that by ${n}.`;
  expect(verdictOn(facts, text('3.6'), '3.6')).toBe('agrees');
  expect(verdictOn(facts, text('5.6'), '5.6')).not.toBe('agrees');
});
