// An invented record of two room heaters at three steps, with times to warm up and a light on the front, measured in the middle and at the edge.
import { Source } from '../../pipeline/places/index.js';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { factsOf, type Row } from './record-of.js';

//                                    W wall, W fan, °C front, dB(A), s to warm up, nits middle, nits edge
const values: Record<string, [number, number, number, number, number, number, number]> = {
  'sundin/step-30': [310, 12, 44.0, 27.2, 240, 60, 48], 'sundin/step-60': [598, 19, 58.5, 33.0, 155, 96, 72], 'sundin/step-90': [902, 31, 71.0, 39.1, 96, 150, 105],
  'makerel/step-30': [342, 15, 41.5, 25.0, 262, 50, 45], 'makerel/step-60': [655, 26, 52.0, 30.4, 171, 80, 68], 'makerel/step-90': [988, 44, 63.5, 36.3, 110, 125, 110],
};
const rows: Row[] = Object.entries(values).flatMap(([at, [wall, fan, front, noise, time, middle, edge]]): Row[] => {
  const [a, b] = at.split('/') as [string, string];
  return [
    [a, b, 'evening', 'power', 'wall', 'load', wall, 'W', 1], [a, b, 'evening', 'power', 'fan', 'load', fan, 'W', 0.2], [a, b, 'evening', 'temperature', 'front', 'load', front, 'degC', 0.2],
    [a, b, 'evening', 'noise', 'heater', 'load', noise, 'dB(A)', 0.1], [a, b, 'evening', 'duration', 'warm-up', 'load', time, 's', 1],
    [a, b, 'evening', 'luminance', 'middle', 'load', middle, 'cd/m2', 0.2], [a, b, 'evening', 'luminance', 'edge', 'load', edge, 'cd/m2', 0.2],
  ];
});
rows.push(['rules', '', '', 'noise', 'heater', 'limit', 38, 'dB(A)'], ['rules', '', '', 'temperature', 'front', 'limit', 75, 'degC']);

const heaters = factsOf(rows, `kind,id,spoken
setup,sundin,the Sundin
setup,makerel,the Makerel
setup,rules,my limit
setting,step-30,thirty percent;the lowest step
setting,step-60,sixty percent
setting,step-90,ninety percent;wide open
workload,evening,the cold evening
part,wall,at the wall;wall power
part,fan,the fan
part,front,the front
part,heater,heater
part,warm-up,warm-up
part,middle,the middle
part,edge,the edge
measure,power,power;watts
measure,temperature,temperature;degrees
measure,noise,noise;decibels
measure,duration,time;seconds
measure,luminance,brightness;nits
`);

/** Mentions of a script that are read as claims. */
export function heard(text: string): Verdict[] {
  return proof(new Source('script.md', text), heaters).mentions.filter((m) => m.verdict !== 'not-a-claim');
}
