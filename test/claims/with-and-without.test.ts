// A drive with a heatsink and without, told as one talks: each sentence is true with N as first given, and false with the other.
import { expect, test } from 'vitest';
import { rightAndWrong, verdicts } from './right-and-wrong.js';
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = [];
//                                              MB/s first, MB/s last, °C, s, W, limit W
const values: Record<string, [number, number, number, number, number, number]> = {
  'arven/bare': [6120, 1480, 84.6, 412, 7.9, 9], 'arven/sink': [6140, 4890, 66.3, 236, 8.3, 9],
  'bolm/bare': [5240, 3310, 77.9, 301, 6.1, 7.5], 'bolm/sink': [5250, 5010, 61.2, 228, 6.2, 7.5],
};
for (const [at, [first, last, hot, time, watts, limit]] of Object.entries(values)) {
  const [a, b] = at.split('/') as [string, string];
  rows.push([a, b, 'copy', 'throughput', 'write', 'first-minute', first, 'MB/s', 4], [a, b, 'copy', 'throughput', 'write', 'last-minute', last, 'MB/s', 4], [a, b, 'copy', 'temperature', 'chip', 'load', hot, 'degC', 0.2], [a, b, 'copy', 'duration', 'copy', 'whole', time, 's', 1], [a, b, 'copy', 'power', 'drive', 'load', watts, 'W', 0.1]);
  if (b === 'bare') rows.push([a, '', '', 'power', 'drive', 'limit', limit, 'W'], [a, '', '', 'throughput', 'write', 'rated', first + 300, 'MB/s']);
}
rows.push(['rules', '', '', 'temperature', 'chip', 'limit', 85, 'degC']);

const drives = factsOf(rows, `kind,id,spoken
setup,arven,the Arven
setup,bolm,the Bolm
setup,rules,the limit
setting,bare,without the heatsink;bare
setting,sink,with the heatsink
workload,copy,the big copy
measure,throughput,speed
measure,temperature,temperature
measure,duration,time
measure,power,power
part,write,write speed
part,chip,chip
part,drive,drive
phase,first-minute,in the first minute
phase,last-minute,in the last minute
phase,whole,whole copy
phase,rated,on the box
phase,limit,limit
`);

rightAndWrong(drives, [
  ['"without" alone', 'The Arven draws 8.3 watts with the heatsink and N without, simply because it works harder.', '7.9', '9.7'],
  ['left to the limit', "Without the heatsink the Bolm's chip gets to 77.9 degrees, so there are N degrees left to the limit.", '7.1', '7.9'],
  ['kept, of the two figures before', 'In the big copy without the heatsink the Bolm starts at 5,240 and ends at 3,310, so it keeps N percent.', '63', '58'],
  ['done so much before another', 'With the heatsink the Bolm finishes N seconds before the Arven.', '8', '9'],
  ['what is drawn is not what is allowed', 'The limit is 9 watts on the Arven and 7.5 on the Bolm, and with the heatsink the Bolm draws N.', '6.2', '6.9'],
]);

test('so much of so much is no alarm, where it may be what it had before', () => {
  expect(verdicts(drives, 'With the heatsink the Bolm keeps 95 percent of its speed, 5,010 of 5,250.').filter((v) => v.endsWith('disagrees'))).toEqual([]);
});

test('what a figure is set against is in its unit, and not in that of the next', () => {
  expect(verdicts(drives, 'With the heatsink the Arven takes 236 seconds, 8 more than the Bolm. It pays for that: 8.3 watts against 6.2, and 66.3 degrees on the chip against 61.2.').filter((v) => v.endsWith('disagrees'))).toEqual([]);
});
