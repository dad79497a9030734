// So much of one for each of another: tied where the record has both, checked, and otherwise let be.
import { describe, expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

const names = `kind,id,spoken
setup,larch,the Larch
setup,maple,the Maple
workload,meadow,the meadow walk
part,core,core
part,board,board
part,wall,wall
part,room,the room
part,average,average
measure,temperature,temperature
measure,power,power
measure,frame_rate,frame rate
measure,energy,energy
measure,data_rate,copy speed
phase,load,under load
`;
const at = (setup: string, of: [measure: string, part: string, value: number, unit: string][]): Row[] => of.map(([m, p, v, u]) => [setup, '', 'meadow', m, p, 'load', v, u, 0.001]);
// Larch: 90 fps ÷ 150 W = 0.6; (66 − 21) K ÷ 150 W = 0.3 K/W. Maple: 84 ÷ 200 = 0.42; (58 − 22) ÷ 200 = 0.18.
const two = factsOf([
  ...at('larch', [['frame_rate', 'average', 90, 'fps'], ['power', 'board', 150, 'W'], ['temperature', 'core', 66, 'degC'], ['temperature', 'room', 21, 'degC']]),
  ...at('maple', [['frame_rate', 'average', 84, 'fps'], ['power', 'board', 200, 'W'], ['temperature', 'core', 58, 'degC'], ['temperature', 'room', 22, 'degC']]),
], names);
// Two powers: 100 W on the board, 160 W at the wall; 80 fps.
const twice = factsOf(at('larch', [['frame_rate', 'average', 80, 'fps'], ['power', 'board', 100, 'W'], ['power', 'wall', 160, 'W']]), names);

const read = (script: string, facts = two) => proof(new Source('script.md', script), facts).mentions.filter((m) => /\d/.test(m.text)).map((m) => `${m.verdict} ${m.facts[0] ?? ''}`.trim());
const larch = 'per_watt:larch//meadow/frame_rate/average/load~measure=power,part=board';
const maple = 'per_watt:maple//meadow/frame_rate/average/load~measure=power,part=board';

describe('frames', () => {
  test.each([
    ['Under load, the Larch makes 0.60 frames per second per watt.', `agrees ${larch}`],
    ['The Maple comes to 0.42 frames for each watt.', `agrees ${maple}`],
    ['On the Maple we get 0.42 frames to the watt.', `agrees ${maple}`],
    ['That is 0.6 frames per joule on the Larch.', `agrees ${larch}`],
    ['The Larch manages 600 frames per kilojoule.', `agrees ${larch}`],
    ['The Larch makes 0.52 frames per second per watt.', `disagrees ${larch}`],
    ['The Maple comes to 0.48 frames for every watt.', `disagrees ${maple}`],
  ])('%s', (script, verdict) => expect(read(script)).toEqual([verdict]));
});

describe('heat', () => {
  test.each([
    ['The core of the Larch sits 0.30 degrees per watt over the room.', 'agrees per_watt:(over_room:larch//meadow/temperature/core/load~part=room)~measure=power,part=board'],
    ['The Maple needs 0.18 kelvins per watt over the room.', 'agrees per_watt:(over_room:maple//meadow/temperature/core/load~part=room)~measure=power,part=board'],
    ['The core of the Maple sits 0.26 degrees per watt over the room.', 'disagrees per_watt:(over_room:maple//meadow/temperature/core/load~part=room)~measure=power,part=board'],
  ])('%s', (script, verdict) => expect(read(script)).toEqual([verdict]));
});

describe('where the words leave open what is divided by what, nothing is flagged', () => {
  test.each([
    // Of which temperature over what: nothing says so.
    ['The Larch is at 0.9 degrees per watt.', two],
    ['The core drops half a degree for every watt you take away.', two],
    ['Expect 3 degrees per watt from a block like this.', two],
    // On the board 0.8, at the wall 0.5.
    ['The Larch makes 0.7 frames per watt.', twice],
    ['The Larch lands somewhere between 0.5 and 0.8 frames per watt.', two],
    ['The maker promises 0.9 frames per watt.', two],
    ['A good one does 2 frames per joule these days.', two],
    ['The Larch makes 0.18 frames per watt more than the Maple.', two],
    ['The Larch is better by 0.2 frames per watt.', two],
    ['The Larch went from 0.3 to 0.5 frames per watt with the new driver.', two],
    ['On the Larch a watt buys more than on the Maple: 5 more frames for every 10 watts.', two],
    ['The Larch runs at 90 frames and 150 watts, the Maple at 84 frames and 200 watts.', two],
    ['At 25 megabytes per watt nobody would mind.', two],
    ['Nobody asks for 12 frames per kilogram.', two],
  ] as const)('%s', (script, facts) => expect(read(script, facts).filter((v) => v.startsWith('disagrees'))).toEqual([]));
  test.each([
    ['The Larch makes 0.8 frames per watt of board power.', 'board'],
    ['The Larch makes 0.5 frames per watt at the wall.', 'wall'],
    ['The Larch makes 0.50 frames per watt.', 'wall'],
  ])('%s', (script, part) => expect(read(script, twice)).toEqual([`agrees per_watt:larch//meadow/frame_rate/average/load~measure=power,part=${part}`]));
});

test('a record that has another efficiency among its readings is no reason to take a quotient for that one', () => {
  const noted = factsOf([...at('larch', [['frame_rate', 'average', 90, 'fps'], ['power', 'board', 150, 'W'], ['temperature', 'core', 66, 'degC'], ['temperature', 'room', 21, 'degC'], ['frames_per_watt', 'board', 0.6, 'fps/W']])], names);
  expect(read('The core of the Larch sits 0.30 degrees per watt over the room.', noted)).toEqual(['agrees per_watt:(over_room:larch//meadow/temperature/core/load~part=room)~measure=power,part=board']);
  expect(read('The Larch makes 0.60 frames per watt.', noted)).toEqual(['agrees mean:larch//meadow/frames_per_watt/board/load']);
});
