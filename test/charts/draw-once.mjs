// Draws one chart with the compiled program and prints hashes of its outlines and pixels; run by determinism.test.ts under other conditions.
import { createHash } from 'node:crypto';
import { prepareChart } from '../../dist/charts/index.js';
import { Facts } from '../../dist/facts/index.js';
import { rasterise } from '../../dist/graphics/index.js';
import { Source } from '../../dist/places/index.js';
import { bareEpisode, readNames, readReadings, shippedTheme } from '../../dist/records/index.js';
import { template } from '../../dist/files/index.js';
import { stageOf } from '../../dist/theme/index.js';

const readings = readReadings(new Source('readings.csv', `setup,setting,workload,measure,part,phase,run,value,unit
alder,stock,scene,power,board,load,1,1234.5,W
alder,stock,scene,power,board,load,2,1236.5,W
birch,stock,scene,power,board,load,1,998.0,W
birch,stock,scene,power,board,load,2,997.0,W
`)).value;
const names = readNames(new Source('names.csv', 'kind,id,spoken\nsetup,alder,Alder Ω 1 %\nsetup,birch,Birch\n')).value;
const place = { file: 'x', line: 1, column: 1, endLine: 1, endColumn: 1 };
const facts = new Facts(bareEpisode(readings, names, place));
facts.about.measures.get('power').better = 'lower';
const wide = stageOf(shippedTheme('dark', template), 'wide');
// Another picture first: nothing may be left over from it.
if (process.argv[2] === 'second') await prepareChart({ kind: 'dots', name: 'other', measure: 'power', place }, facts, wide).value.draw();
const drawn = await prepareChart({ kind: 'ranked', name: 'power', measure: 'power', place }, facts, wide).value.draw();
const hash = (x) => createHash('sha256').update(x).digest('hex');
console.log(JSON.stringify({ svg: hash(drawn.svg), outlined: hash(drawn.outlined), png: hash(await rasterise(drawn.outlined, 1920, 1080)) }));
