// A word of the record that is two things, or a thing and a common word: which of them is meant, the words around it say.
import { expect, test } from 'vitest';
import { verdictOn, rightAndWrong } from './right-and-wrong.js';
import { factsOf, type Row } from './record-of.js';

//                                       °C drum, °C lid, K of the water over the room, rpm belt, rpm fan, W, dB(A), % of the door open
const plain: Record<string, [number, number, number, number, number, number, number, number]> = {
  'wendle/gentle': [51.4, 33.7, 9.2, 410, 1240, 212, 38.4, 41], 'wendle/capped': [46.8, 31.9, 7.6, 350, 1010, 171, 34.9, 47], 'wendle/brisk': [57.9, 36.2, 12.3, 520, 1580, 266, 43.7, 58],
  'tarrock/gentle': [48.2, 32.3, 8.1, 380, 1160, 204, 36.1, 62], 'tarrock/capped': [44.1, 30.8, 6.4, 330, 940, 168, 32.7, 68], 'tarrock/brisk': [54.6, 34.9, 10.8, 470, 1490, 251, 41.2, 71],
  'pollan/gentle': [59.3, 37.1, 13.5, 450, 1390, 243, 40.8, 29], 'pollan/capped': [53.7, 34.4, 11.1, 390, 1170, 195, 37.4, 36], 'pollan/brisk': [66.5, 40.6, 16.7, 580, 1730, 308, 46.3, 44],
};
const rows: Row[] = Object.entries(plain).flatMap(([at, [drum, lid, water, belt, fan, watts, hum, open]]): Row[] => {
  const [a, b] = at.split('/') as [string, string];
  const of = [a, b, 'towels'] as const;
  return [
    [...of, 'temperature', 'drum', 'load', drum, 'degC', 0.2], [...of, 'temperature', 'lid', 'load', lid, 'degC', 0.2], [...of, 'temperature', 'over-room', 'load', water, 'K', 0.2], [...of, 'temperature', 'room', 'load', 20.4, 'degC', 0.1],
    [...of, 'turn_speed', 'belt', 'load', belt, 'rpm', 2], [...of, 'turn_speed', 'turn', 'load', fan, 'rpm', 3], [...of, 'power', 'motor', 'load', watts, 'W', 1], [...of, 'noise', 'lid', 'load', hum, 'dB(A)', 0.1], [...of, 'ratio', 'door', 'load', open, '%', 0.3],
    [a, b, 'wool', 'temperature', 'drum', 'load', Number((drum - 11.2).toFixed(1)), 'degC', 0.2], [a, b, 'wool', 'temperature', 'room', 'load', 20.2, 'degC', 0.1],
  ];
});
for (const [b, watts] of [['gentle', 280], ['capped', 200], ['brisk', 280]] as const) rows.push(['house', b, '', 'power', 'motor', 'limit', watts, 'W']);
rows.push(['house', '', '', 'temperature', 'drum', 'limit', 70, 'degC']);
const tumblers = factsOf(rows, `kind,id,spoken
setup,wendle,the Wendle
setup,tarrock,the Tarrock
setup,pollan,the Pollan
setup,house,the drum;the house rule
setting,gentle,gentle;on gentle
setting,capped,the lower limit;the limit
setting,brisk,brisk;the top
workload,towels,towels;the load
workload,wool,the woollens
part,drum,the drum
part,lid,the lid
part,over-room,the water;water over room
part,room,the room
part,belt,the belt
part,turn,turn;the blades
part,motor,the motor
part,door,the door
measure,temperature,temperature;degrees
measure,turn_speed,turn speed;rpm
measure,power,power;watts
measure,noise,noise;louder;quieter
measure,ratio,opening;percent
`);

rightAndWrong(tumblers, [
  ['whose limit it is', 'On gentle the Wendle takes 212 watts, which is 76 percent of its limit of N watts.', '280', '260'],
  ['a limit told with its number', 'On brisk with towels, the Tarrock is 29 watts under the limit of N watts.', '280', '260'],
  ['a limit with its number before it', 'On gentle, the Wendle draws 212 watts, some 76 percent of its N watt limit.', '280', '260'],
  ['whose limit it is, where one thing holds those of all', "On gentle, the Wendle's limit is N watts.", '280', '260'],
  ['how far away that is', "On brisk with towels, the Tarrock's limit of 280 watts is N watts away.", '29', '37'],
  ['the setting that is called so', 'With the lower limit and the towels, the motor of the Wendle takes N watts under load.', '171', '178'],
  ['louder, where noise is called so', 'On brisk with towels, the Pollan is N decibels louder than the Wendle.', '2.6', '3.6'],
  ['quieter, with a verb of its own', 'On gentle the Tarrock runs N decibels quieter than the Pollan.', '4.7', '3.7'],
  ['under load, beside another work', 'With the woollens, the drum of the Wendle on gentle under load was N degrees.', '40.2', '42.0'],
  ['the median of what holds a limit too', 'On brisk with towels, the median drum temperature was N degrees.', '57.9', '59.7'],
  ['the spread of it', 'With the towels on gentle, the spread in drum temperature is N degrees.', '11.1', '12.4'],
  ['the part that a quantity is called by', 'On gentle the belt of the Wendle does 410 rpm and the turn speed is N.', '1240', '1420'],
  ['from top to bottom', 'On gentle with towels, the spread in motor power from top to bottom was N watts.', '39', '57'],
  ['from first to last, of another', 'On gentle with towels, the lids of the field are N degrees apart from top to bottom.', '4.8', '5.7'],
  ['over the room, of a part that is not told so', 'On brisk with towels, the drum of the Tarrock was N degrees over the room.', '34.2', '35.9'],
  ['the part that is', 'On brisk with towels, the water of the Tarrock was N degrees over the room.', '10.8', '12.4'],
  ['what a percentage is taken off is no rival', 'With towels, the Wendle goes from gentle to the lower limit: 19 percent off the power, and it is N decibels quieter.', '3.5', '4.6'],
  ['the one that is and the one that is not, in one sentence', 'With towels on brisk, the water of the Wendle is 12.3 degrees over the room and its lid N above ambient.', '15.8', '14.1'],
  ['points from the median, after another thing', 'The Pollan opens its door by 29 percent on gentle. The door opening of the Tarrock was N points above the median.', '21', '27'],
]);

test('a name at each end is a step between them', () => expect(verdictOn(tumblers, 'From gentle to the top, the Wendle goes from 212 watts to 266 watts.', '266')).toBe('agrees'));
