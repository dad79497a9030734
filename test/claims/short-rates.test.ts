// A rate said without its time: of the rate, where the words say that something flows or moves, and of nothing else.
import { expect, test } from 'vitest';
import { factsOf, type Row } from './record-of.js';
import { rightAndWrong, verdictOn } from './right-and-wrong.js';

const rows: Row[] = ([['gannet', 'low', 31.4, 24], ['gannet', 'high', 52.7, 37], ['plover', 'low', 27.2, 21], ['plover', 'high', 44.9, 33]] as const).flatMap(([hood, pace, air, hum]): Row[] => [[hood, pace, '', 'draught', 'vent', 'load', air, 'm3/h', 0.1], [hood, pace, '', 'noise', 'vent', 'load', hum, 'dB(A)', 0.1]]);
const hoods = factsOf(rows, `kind,id,spoken
setup,gannet,the Gannet
setup,plover,the Plover
setting,low,low;on low
setting,high,high;on high
measure,draught,draught
measure,noise,noise
part,vent,vent
phase,load,under load`);

rightAndWrong(hoods, [
  ['with a verb of moving', 'On low, the Gannet moves N cubic metres.', '31.4', '34.1'],
  ['with no verb for it', 'The Plover on high gets N cubic metres out.', '44.9', '49.4'],
  ['a change of it', 'On high, the Gannet hums at 37 decibels and the Plover at 33, and it is N cubic metres ahead of the Plover.', '7.8', '8.7'],
  ['a bare change behind a verb of moving', '## On high\n\nThe Plover hums at 33 decibels, so it\'s 4 quieter than the Gannet, and it moves N less.', '7.8', '9.9', 'open'],
]);

test.each(['Our kitchen is a room of 40 cubic metres, and the Gannet is on low.', 'The Plover sits in a 25 cubic metre cupboard.'])('a space is no rate: %s', (text) => {
  expect(['40', '25'].map((n) => verdictOn(hoods, text, n)).filter((v) => v === 'disagrees' || v === 'untied')).toEqual([]);
});
