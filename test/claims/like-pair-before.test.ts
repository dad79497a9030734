// Two pairs side by side lead from the same setting to the same setting, also where they are told over the room.
import { factsOf, type Row } from './record-of.js';
import { rightAndWrong } from './right-and-wrong.js';

const rows: Row[] = ([['gentle', 55.4, 33.1, 24.1], ['normal', 58.9, 35, 24.3], ['brisk', 63.2, 37.8, 24.2]] as const).flatMap(([pace, drum, lid, room]): Row[] => [['tumbler', pace, 'towels', 'temperature', 'drum', 'load', drum, 'degC', 0.1], ['tumbler', pace, 'towels', 'temperature', 'lid', 'load', lid, 'degC', 0.1], ['tumbler', pace, 'towels', 'temperature', 'room', 'load', room, 'degC', 0.1]]);
const tumbler = factsOf(rows, `kind,id,spoken
setup,tumbler,the tumbler
setting,gentle,gentle;on gentle
setting,normal,normal;on normal
setting,brisk,brisk;on brisk
workload,towels,the towels
measure,temperature,temperature
part,drum,drum
part,lid,lid
part,room,room
phase,load,under load`);

rightAndWrong(tumbler, [
  ['the end of the second', '## On brisk\n\nWith the towels, over the room, the drum went from 31.3 on gentle up to 39, and the lid from 9 to N.', '13.6', '18.3', 'open'],
  ['the end of the first', '## On brisk\n\nWith the towels, over the room, the drum went from 31.3 on gentle up to N, and the lid from 9 to 13.6.', '39', '42'],
]);
