// One small record for the tests of the proof: a bench with three settings, as the two tables.
import { proof } from '../../pipeline/claims/index.js';
import { Facts } from '../../pipeline/facts/index.js';
import { Source } from '../../pipeline/places/index.js';
import { bareEpisode, readNames, readReadings } from '../../pipeline/records/index.js';

export const readings = `setup,setting,workload,measure,part,phase,run,value,unit
bench,stock,scene,temperature,core,load,1,67,degC
bench,stock,scene,temperature,core,load,2,67,degC
bench,stock,scene,temperature,core,load,3,68,degC
bench,stock,,temperature,core,idle,1,38,degC
bench,stock,,temperature,core,idle,2,38,degC
bench,stock,,temperature,core,idle,3,39,degC
bench,stock,scene,temperature,hotspot,load,1,80,degC
bench,stock,scene,power,board,load,1,248,W
bench,undervolt,scene,temperature,core,load,1,61,degC
bench,undervolt,scene,power,board,load,1,205,W
bench,undervolt,scene,frequency,core,load,1,2480,MHz
`;
export const names = `kind,id,spoken
setup,bench,the bench;on the bench
setting,stock,stock;at stock
setting,undervolt,the undervolt;undervolted
workload,scene,the scene
measure,temperature,temperature
measure,power,power;board power
measure,frequency,clock
part,core,the core;core
part,hotspot,the hotspot;hotspot
part,board,the board;board
phase,idle,idle;at idle
phase,load,load;under load
`;

export const table = new Source('readings.csv', readings);
export const facts = new Facts(bareEpisode(readReadings(table).value!, readNames(new Source('names.csv', names)).value!, table.place(0)));
export const read = (text: string, file = 'script.md') => proof(new Source(file, text), facts);
export const verdicts = (text: string): string[] => read(text).mentions.map((m) => `${m.text}: ${m.verdict}`);
export const faults = (text: string): string[] => read(text).findings.filter((f) => f.severity === 'error').map((f) => `${f.place.line}:${f.place.column} ${f.code}`);
