// Units for each watt, and percentages over the whole.
import { expect, test } from 'vitest';
import { findMentions } from '../../pipeline/script/mentions.js';
import { tokens } from '../../pipeline/script/tokens.js';
import { rightAndWrong, type Told } from './right-and-wrong.js';
import { factsOf, type Row } from './record-of.js';

const rows: Row[] = [['shed', '', '', 'noise', 'drum', 'limit', 50, 'dB(A)']];
for (const [mill, cells] of [['arden', 90], ['bryn', 74]] as const) rows.push([mill, '', '', 'energy', 'cells', 'rated', cells, 'Wh']);
const ground: [string, string, number, number, number, number][] = [['arden', 'load-50', 44.2, 812, 41.3, 19.7], ['arden', 'load-90', 47.1, 1304, 78.2, 16.7], ['bryn', 'load-50', 41.8, 655, 39.9, 16.4], ['bryn', 'load-90', 45.5, 1043, 75.4, 13.8]];
for (const [mill, load, noise, score, power, each] of ground) rows.push([mill, '', load, 'noise', 'drum', 'load', noise, 'dB(A)', 0.1], [mill, '', load, 'score', 'stone', 'load', score, 'score', 3], [mill, '', load, 'power', 'motor', 'load', power, 'W'], [mill, '', load, 'thrift', 'stone', 'load', each, 'score/W', 0.1]);
const record = factsOf(rows, `kind,id,spoken
setup,shed,my limit
setup,arden,the Arden
setup,bryn,the Bryn
workload,load-50,50 watts;50
workload,load-90,90 watts;90
part,cells,the cells
part,drum,the drum
part,stone,the stone
part,motor,the motor
measure,energy,capacity
measure,noise,noise;decibels
measure,score,score;points
measure,power,power
measure,thrift,thrift;points per watt
`);

const told: Told[] = [
  ['points for each watt', 'At 50 watts, the stone of the Bryn has a thrift of N points per watt.', '16.4', '14.6'],
];

rightAndWrong(record, told);

test('a share over the whole is a figure', () => expect(findMentions(tokens('It made 110 percent more.')).map((m) => m.idle)).toEqual([undefined]));
