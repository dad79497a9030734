// Two boxes of drives for a shelf, each with two drives and with four, copying and idle.
import { factsOf, type Row } from './record-of.js';

const boxes: Record<string, number[]> = {
  // read and write MB/s, W copying and idle, dB(A), drive °C copying and idle, minutes
  'garrow/pair': [212.4, 187.6, 24.8, 14.6, 27.1, 41.2, 33.0, 82], 'garrow/full': [348.0, 301.2, 38.4, 22.9, 31.6, 46.5, 36.4, 51],
  'lintel/pair': [224.0, 171.9, 21.3, 12.2, 24.4, 43.8, 34.1, 90], 'lintel/full': [391.5, 322.7, 33.6, 19.5, 28.9, 49.7, 38.0, 48],
};
const rows: Row[] = Object.entries(boxes).flatMap(([at, [r, w, p, pi, n, d, di, min]]): Row[] => {
  const [a, b] = at.split('/') as [string, string];
  return [
    [a, b, 'copy', 'throughput', 'read', 'load', r!, 'MB/s', 0.6], [a, b, 'copy', 'throughput', 'write', 'load', w!, 'MB/s', 0.4], [a, b, 'copy', 'power', 'wall', 'load', p!, 'W', 0.2], [a, b, '', 'power', 'wall', 'idle', pi!, 'W', 0.1],
    [a, b, 'copy', 'noise', 'box', 'load', n!, 'dB(A)', 0.1], [a, b, 'copy', 'temperature', 'drive', 'load', d!, 'degC', 0.3], [a, b, '', 'temperature', 'drive', 'idle', di!, 'degC', 0.1], [a, b, 'copy', 'duration', 'job', 'load', min!, 'min', 1],
  ];
});
rows.push(['rules', '', '', 'temperature', 'drive', 'limit', 55, 'degC'], ['rules', '', '', 'noise', 'box', 'target', 30, 'dB(A)'], ['garrow', '', '', 'throughput', 'read', 'rated', 360, 'MB/s'], ['lintel', '', '', 'throughput', 'read', 'rated', 400, 'MB/s'], ['garrow', '', '', 'mass', 'box', 'weighed', 3.42, 'kg'], ['lintel', '', '', 'mass', 'box', 'weighed', 2.85, 'kg']);

export const shelf = factsOf(rows, `kind,id,spoken
setup,garrow,the Garrow;Garrow
setup,lintel,the Lintel;Lintel
setup,rules,my rules;limit
setting,pair,two drives;with two drives;the pair
setting,full,four drives;full;with four drives;fully loaded
workload,copy,the big copy;the copy
part,read,reading;reads
part,write,writing;writes
part,wall,at the wall
part,box,box
part,drive,the warmest drive;drive;drives
part,job,job
measure,throughput,throughput;megabytes a second
measure,power,power;watts
measure,noise,noise;decibels
measure,temperature,temperature;degrees
measure,duration,takes;minutes
measure,mass,weight
`);
