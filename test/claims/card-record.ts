// One card with four settings, at rest and under load.
import { factsOf, type Row } from './record-of.js';

const settings: Record<string, number[]> = {
  // average and low fps, W, core and memory °C, dB(A), rpm, MHz
  stock: [96.4, 71.2, 248.6, 71.8, 82.0, 38.4, 1620, 2610], 'limit-80': [92.1, 68.9, 199.2, 65.3, 78.0, 34.9, 1380, 2475], 'limit-60': [81.7, 60.4, 149.5, 58.1, 72.0, 31.2, 1110, 2190], overclock: [101.2, 73.8, 271.9, 74.6, 86.0, 41.7, 1850, 2745],
};
const rows: Row[] = Object.entries(settings).flatMap(([b, [a, l, p, c, m, n, f, k]]): Row[] => {
  const at = ['corvid', b, 'dunes'] as const;
  return [
    [...at, 'frame_rate', 'average', 'load', a!, 'fps', 0.4], [...at, 'frame_rate', 'low', 'load', l!, 'fps', 0.5], [...at, 'power', 'board', 'load', p!, 'W', 0.6], [...at, 'temperature', 'core', 'load', c!, 'degC', 0.3],
    [...at, 'temperature', 'memory', 'load', m!, 'degC', 1], [...at, 'noise', 'card', 'load', n!, 'dB(A)', 0.1], [...at, 'fan_speed', 'fan', 'load', f!, 'rpm', 10], [...at, 'frequency', 'core', 'load', k!, 'MHz', 5],
  ];
});
rows.push(['corvid', 'stock', '', 'temperature', 'core', 'idle', 34.6, 'degC', 0.2], ['corvid', 'stock', '', 'power', 'board', 'idle', 11.3, 'W', 0.1], ['corvid', 'stock', '', 'noise', 'card', 'idle', 21.0, 'dB(A)', 0.1]);
rows.push(['corvid', '', '', 'temperature', 'core', 'limit', 88, 'degC'], ['corvid', '', '', 'temperature', 'memory', 'limit', 95, 'degC'], ['corvid', 'stock', '', 'power', 'board', 'limit', 250, 'W'], ['corvid', '', '', 'frequency', 'core', 'rated', 2600, 'MHz'], ['corvid', 'stock', 'dunes', 'temperature', 'room', 'load', 22.4, 'degC', 0.1]);

export const card = factsOf(rows, `kind,id,spoken
setup,corvid,the Corvid;the card
setting,stock,stock;as it comes;out of the box
setting,limit-80,80 percent;the 80 percent limit;eighty percent
setting,limit-60,60 percent;the 60 percent limit;sixty percent
setting,overclock,the overclock;overclocked
workload,dunes,the dunes;the dune scene
part,average,average
part,low,one percent low;lows;the low
part,board,board;the board
part,core,core;gpu
part,memory,memory
part,card,card
part,fan,fan;fans
measure,frame_rate,frame rate;frames per second
measure,power,power;watts
measure,temperature,temperature;degrees
measure,noise,noise;decibels
measure,fan_speed,fan speed;rpm
measure,frequency,clock;megahertz
`);
