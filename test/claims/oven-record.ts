// An invented record of three small ovens, plain, with a baffle and with a blower, baking two things, with limits of their own and the speaker's.
import { factsOf, type Row } from './record-of.js';

//                                       °C crown, °C hearth, W, dB(A)
const plain: Record<string, [number, number, number, number]> = {
  'quillet/rye': [88.4, 101.2, 641, 43.3], 'quillet/pie': [84.1, 95.6, 588, 41.9], 'bramblet/rye': [93.7, 110.4, 702, 46.8], 'bramblet/pie': [90.2, 104.9, 655, 45.2], 'tarnet/rye': [97.5, 116.3, 489, 39.6], 'tarnet/pie': [95.1, 112.2, 447, 38.1],
};
const change: Record<string, [number, number, number, number]> = { plain: [0, 0, 1, 0], baffle: [-7.4, -8.9, 0.84, -3.7], blower: [5.3, 7.1, 1.09, 4.9] };
const rows: Row[] = Object.entries(plain).flatMap(([at, [crown, hearth, watts, hum]]) => Object.entries(change).flatMap(([b, [c, h, w, n]], k): Row[] => {
  const [a, bake] = at.split('/') as [string, string];
  const of = [a, b, bake] as const;
  const own = a.length * 0.3 * k;
  return [[...of, 'temperature', 'crown', 'load', round(crown + c - own), 'degC', 0.2], [...of, 'temperature', 'hearth', 'load', round(hearth + h + own), 'degC', 0.3], [...of, 'power', 'element', 'load', Math.round(watts * w), 'W', 1], [...of, 'noise', 'oven', 'load', round(hum + n + own / 10), 'dB(A)', 0.1]];
}));
for (const [a, limit, grams, rest] of [['quillet', 650, 4210, 31.4], ['bramblet', 740, 5380, 28.2], ['tarnet', 505, 2940, 36.9]] as const) rows.push([a, '', '', 'power', 'element', 'limit', limit, 'W'], [a, '', '', 'mass', 'oven', 'weighed', grams, 'g'], ...Object.keys(change).map((b, k): Row => [a, b, '', 'temperature', 'crown', 'idle', round(rest + k * 1.3), 'degC', 0.1]));
rows.push(['house', '', '', 'noise', 'oven', 'target', 44, 'dB(A)'], ['house', '', '', 'temperature', 'hearth', 'target', 108, 'degC'], ['house', '', '', 'temperature', 'room', 'load', 19.8, 'degC']);

function round(n: number): number {
  return Math.round(n * 10) / 10;
}

export const ovens = factsOf(rows, `kind,id,spoken
setup,quillet,the Quillet
setup,bramblet,the Bramblet
setup,tarnet,the Tarnet
setup,house,my rule;my limit;my mark
setting,plain,plain;as it comes
setting,baffle,the baffle;baffled
setting,blower,the blower;blown
workload,rye,rye;the rye loaf
workload,pie,pie;the pie
part,crown,crown
part,hearth,hearth
part,element,element
part,oven,oven
part,room,the room
measure,temperature,temperature;degrees
measure,power,power;watts;draw
measure,noise,noise;decibels
measure,mass,weight;grams
`);
