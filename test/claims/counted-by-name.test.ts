// What is counted is told by the noun that its names share; "of the eight, it is the third" ranks among as many.
import { factsOf, type Row } from './record-of.js';
import { rightAndWrong } from './right-and-wrong.js';

const rows: Row[] = [];
const grates: [string, number][] = [['narrow', 0], ['wide', 11], ['twin', 23], ['basket', 37]];
for (const [id, hot] of [['ember', 310.4], ['cinder', 352.7]] as const) for (const [grate, k] of grates) for (const [log, j] of [['oak', 0], ['birch', 4.6]] as const) {
  rows.push([id, grate, log, 'temperature', 'flue', 'load', hot + k + j, 'degC', 0.2], [id, grate, log, 'noise', 'fan', 'load', 40 + k / 5 + j, 'dB(A)', 0.1]);
}
const names = `kind,id,spoken
setup,ember,the Ember
setup,cinder,the Cinder
setting,narrow,the narrow grate
setting,wide,the wide grate
setting,twin,the twin grate
setting,basket,the basket grate
workload,oak,oak logs
workload,birch,birch logs
part,flue,flue
part,fan,fan
measure,temperature,temperature
measure,noise,noise
`;
const facts = factsOf(rows, names);

rightAndWrong(facts, [
  ['the noun of the settings', 'Into either of them went N grates, one after the other.', 'four', 'five'],
  ['all that was varied', 'Burnt on every grate, that makes N combinations in all.', '16', '15'],
  ['how many are ranked stands first', 'On the basket grate with birch logs the flue of the Cinder is at 394.3 degrees.\nOf all 16 combinations it is the N.', 'hottest', 'third hottest'],
]);
