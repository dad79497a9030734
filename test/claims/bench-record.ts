// A small invented record: one pump on two stands, three settings, idle and load.
import { Facts } from '../../pipeline/facts/index.js';
import { Source } from '../../pipeline/places/index.js';
import { bareEpisode, readNames, readReadings } from '../../pipeline/records/index.js';
import { proof, type Verdict } from '../../pipeline/claims/index.js';

const head = 'setup,setting,workload,measure,part,phase,run,value,unit';
const rows: string[] = [];
const put = (setup: string, setting: string, workload: string, what: string, phase: string, values: number[], unit: string): void => {
  values.forEach((v, i) => rows.push([setup, setting, workload, what.split('/')[0], what.split('/')[1] ?? '', phase, values.length > 1 ? i + 1 : '', v, unit].join(',')));
};
const load: Record<string, [number, number, number, number]> = {
  // coolant °C, block °C, noise dB(A), power W
  'wall-stand/slow': [41.0, 62.0, 24.0, 12.0], 'wall-stand/brisk': [36.5, 55.0, 31.5, 18.0], 'wall-stand/flat': [34.0, 52.0, 38.0, 30.0],
  'floor-stand/slow': [45.0, 68.0, 23.0, 11.0], 'floor-stand/brisk': [39.5, 60.0, 30.0, 17.0], 'floor-stand/flat': [36.0, 56.0, 36.0, 27.0],
};
for (const [at, [coolant, block, noise, power]] of Object.entries(load)) {
  const [setup, setting] = at.split('/') as [string, string];
  put(setup, setting, 'mill', 'temperature/coolant', 'load', [coolant - 0.1, coolant, coolant + 0.1], 'degC');
  put(setup, setting, 'mill', 'temperature/block', 'load', [block - 1, block, block + 1], 'degC');
  put(setup, setting, 'mill', 'noise/pump', 'load', [noise, noise, noise], 'dB(A)');
  put(setup, setting, 'mill', 'power/pump', 'load', [power, power, power], 'W');
}
for (const setup of ['wall-stand', 'floor-stand']) {
  put(setup, 'slow', '', 'temperature/coolant', 'idle', [25, 25, 25], 'degC');
  put(setup, 'slow', '', 'temperature/coolant', 'limit', [50], 'degC');
}

export const names = `kind,id,spoken
setup,wall-stand,the wall stand
setup,floor-stand,the floor stand
setting,slow,the slow setting
setting,brisk,the brisk setting
setting,flat,flat out
workload,mill,the mill
part,coolant,coolant
part,block,block
part,pump,pump
measure,temperature,temperature;degrees
measure,noise,noise;decibels
measure,power,power;watts
`;

export const facts = new Facts(bareEpisode(readReadings(new Source('readings.csv', [head, ...rows].join('\n'))).value!, readNames(new Source('names.csv', names)).value!, new Source('readings.csv', '').place(0)));

/** Mentions of a script, those without a claim left out. */
export function said(text: string): Verdict[] {
  return proof(new Source('script.md', text), facts).mentions.filter((m) => m.verdict !== 'not-a-claim');
}
