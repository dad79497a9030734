// Ways of saying true things that were once called wrong, in other words and on another record; and that a slip is still found.
import { describe, expect, test } from 'vitest';
import { proof } from '../../pipeline/claims/index.js';
import type { Facts } from '../../pipeline/facts/index.js';
import { Source } from '../../pipeline/places/index.js';
import { factsOf, type Row } from './record-of.js';

// Two invented ovens: heat in four trays while they bake, two drives of air, a time, a rate, power at the plug, and what is set.
const oven = (id: string, gentle: number, trays: number[], rate: number, watts: number, idle: number, cap: number, warm: number, cold: number): Row[] => [
  ...['low-fan', 'high-fan'].flatMap((s, k): Row[] => [
    ...trays.map((v, i): Row => [id, s, 'bake', 'temperature', `tray-${i + 1}`, 'load', v - 6 * k, 'degC', 0.2]),
    [id, s, 'bake', 'flow', 'hose', 'load', rate + 2 * k, 'l/h', 0.2],
    [id, s, 'bake', 'power', 'plug', 'load', watts + 4 * k, 'W', 0.2],
    [id, s, '', 'power', 'plug', 'idle', idle + k, 'W', 0.2],
    [id, s, '', 'power', 'cord', 'limit', cap, 'W'],
    [id, s, '', 'temperature', 'dish', 'limit', 80, 'degC'],
    [id, s, 'bake', 'temperature', 'room', 'load', 22, 'degC', 0.1],
    [id, s, 'clean', 'duration', 'drum', 'load', gentle, 'min'],
  ]),
  [id, 'low-fan', 'bake', 'resistance', 'coil', 'warm', warm, 'Ohm', 0.01],
  [id, 'low-fan', 'bake', 'resistance', 'coil', 'cold', cold, 'Ohm', 0.01],
];
const facts = factsOf([...oven('mossby', 240, [51, 55, 58, 52], 96, 60, 21, 120, 5.52, 6), ...oven('fennick', 310, [60, 63, 67, 61], 54, 45, 15, 90, 4.4, 4.9), ...oven('tarrow', 275, [54, 57, 61, 55], 80, 52, 18, 100, 5.1, 5.4)], `kind,id,spoken
setup,mossby,the Mossby
setup,fennick,the Fennick
setup,tarrow,the Tarrow
setting,low-fan,the low fan
setting,high-fan,the high fan
workload,bake,baking
workload,clean,cleaning
measure,temperature,temperature;degrees
measure,flow,flow;litres per hour
measure,power,power;watts
measure,duration,time;minutes
measure,resistance,resistance;ohms
part,tray-1,tray one;the first tray
part,tray-2,tray two;the second tray
part,tray-3,tray three;the third tray
part,tray-4,tray four;the fourth tray
part,dish,the dishes;dish
part,plug,at the plug
part,cord,the cord
part,coil,the coil
phase,warm,warm
phase,cold,cold
`);
const verdicts = (text: string, on: Facts = facts): string[] => proof(new Source('script.md', text), on).mentions.filter((m) => m.verdict === 'agrees' || m.verdict === 'disagrees').map((m) => `${m.text} ${m.verdict}`);
const wrong = (text: string): string[] => verdicts(text).filter((v) => v.endsWith('disagrees'));

describe('nothing true is called wrong', () => {
  test.each([
    ['a place in no ranking', '## Baking\nBaking on the low fan comes first, and first on the table is the Fennick.'],
    ['a place among quotients', '## Baking\nBaking on the low fan, the Mossby has a flow of 96 litres per hour. Per watt that is 1.6 for the Mossby, 1.54 for the Tarrow and 1.2 for the Fennick, which leaves the Tarrow in second place.'],
    ['what it is a share of is said', '## Baking\nOn the low fan the Fennick gives up just over ten percent of its cold resistance.'],
    ['of a number that was set', '## Baking\nBaking on the low fan, the Mossby takes 60 watts at the plug, or 50 percent of the 120 its cord is made for.'],
    ['a price', '## The end\nBaking on the low fan, the Mossby has a flow of 96 litres per hour and the Fennick 54. The Mossby costs 385 and is worth it.'],
    ['an offer', '## The end\nThere is a fifteen percent code below, and I will be back.'],
    ['a multiple after a difference', '## Baking\nBaking on the low fan, the Mossby has 20 percent more flow than the Tarrow and nearly 1.8 times as much as the Fennick.'],
    ['a step', '## Baking\nFor the Tarrow, the step from idle to baking on the low fan is 34 watts.'],
    ['over the trays', '## Baking\nBaking on the low fan, the dishes in the Mossby ranged from 51 to 58 degrees.'],
    ['the median of the trays', '## Baking\nBaking on the low fan, the median over the trays of the Fennick was 62 degrees.'],
    ['over the room, against another', '## Baking\nBaking on the low fan, the third tray of the Fennick gets to 67 degrees. That is 45 degrees above the room, against 36 for the Mossby.'],
  ])('%s', (_, text) => expect(wrong(text)).toEqual([]));
});

describe('and a slip is found', () => {
  test.each([
    ['of a number that was set', '## Baking\nBaking on the low fan, the Mossby takes 60 watts at the plug, or 60 percent of the 120 its cord is made for.', ['60 percent disagrees']],
    ['the median of the trays', '## Baking\nBaking on the low fan, the median over the trays of the Fennick was 65 degrees.', ['65 degrees disagrees']],
    ['over the room, against another', '## Baking\nBaking on the low fan, the third tray of the Fennick gets to 67 degrees. That is 45 degrees above the room, against 32 for the Mossby.', ['32 disagrees']],
    ['over the trays', '## Baking\nBaking on the low fan, the dishes in the Mossby ranged from 51 to 61 degrees.', ['61 degrees disagrees']],
  ])('%s', (_, text, found) => expect(wrong(text)).toEqual(found));
});
