// An invented record of three routers, one of which was run in one setting only. Values are means, worked with by hand in the tests.
import { factsOf, type Row } from './record-of.js';

//                                        average, worst (MB/s), power (W), noise (dB(A)), fan duty (%)
const load: Record<string, [number, number, number, number, number]> = {
  'pollard/gentle/garden': [80, 60, 8, 24, 22], 'pollard/brisk/garden': [92, 66, 10, 27, 30],
  'pollard/gentle/cellar': [48, 30, 7.2, 23, 20], 'pollard/brisk/cellar': [54, 36, 9, 26, 28],
  'hask/gentle/garden': [100, 69, 12.5, 28, 34], 'hask/brisk/garden': [112, 78, 15, 31, 44],
  'hask/gentle/cellar': [60, 33, 11, 27, 31], 'hask/brisk/cellar': [72, 42, 14, 30, 40],
  'vimmer/gentle/garden': [64, 40, 12, 30, 50], 'vimmer/gentle/cellar': [36, 21, 11.4, 29, 45],
};
const rows: Row[] = Object.entries(load).flatMap(([at, [average, worst, power, noise, duty]]): Row[] => {
  const [a, b, w] = at.split('/') as [string, string, string];
  return [
    [a, b, w, 'throughput', 'average', 'load', average, 'MB/s', 0.1], [a, b, w, 'throughput', 'worst', 'load', worst, 'MB/s', 0.1],
    [a, b, w, 'power', 'wall', 'load', power, 'W', 0.02], [a, b, w, 'noise', 'case', 'load', noise, 'dB(A)', 0.1], [a, b, w, 'ratio', 'fan-duty', 'load', duty, '%', 0.2],
  ];
});
rows.push(['pollard', '', '', 'mass', 'whole', 'weighed', 420, 'g'], ['hask', '', '', 'mass', 'whole', 'weighed', 700, 'g'], ['vimmer', '', '', 'mass', 'whole', 'weighed', 560, 'g']);
rows.push(['pollard', 'gentle', '', 'duration', 'start', 'cold', 33, 's', 0.1], ['pollard', 'brisk', '', 'duration', 'start', 'cold', 25, 's', 0.1], ['hask', 'gentle', '', 'duration', 'start', 'cold', 44, 's', 0.1], ['hask', 'brisk', '', 'duration', 'start', 'cold', 36, 's', 0.1]);

export const routers = factsOf(rows, `kind,id,spoken
setup,pollard,the Pollard
setup,hask,the Hask
setup,vimmer,the Vimmer
setting,gentle,gentle;the gentle profile
setting,brisk,brisk;the brisk profile
workload,garden,the garden;from the garden
workload,cellar,the cellar;from the cellar
measure,throughput,throughput;megabytes a second
measure,power,power;draws;watts
measure,noise,noise;decibels
measure,ratio,percent
measure,mass,weight;grams
measure,duration,time;seconds
part,average,average
part,worst,worst second
part,wall,wall
part,fan-duty,fan duty
part,start,start-up
`);
