import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { cli, scratch, timed } from './measure.mjs';

export const says = 'check of many small episodes: time an episode as their number grows, and with nothing changed';

function episodes(folder, count) {
  const data = join(folder, `data-${count}`);
  for (let n = 0; n < count; n++) {
    const at = join(data, `episode-${String(n).padStart(4, '0')}`);
    mkdirSync(at, { recursive: true });
    const rows = [];
    for (const setting of ['stock', 'limit']) for (const phase of ['idle', 'load']) for (const run of [1, 2, 3]) {
      rows.push(`bench,${setting},${phase === 'idle' ? '' : 'loop'},temperature,core,${phase},${run},${(phase === 'idle' ? 35 : 65) + (n % 9) + run % 2},degC`);
    }
    writeFileSync(join(at, 'readings.csv'), `setup,setting,workload,measure,part,phase,run,value,unit\n${rows.join('\n')}\n`);
    writeFileSync(join(at, 'episode.yaml'), `title: Episode ${n}
date: 2026-01-01
room: 21 °C
setups: {bench: {name: Bench, spoken: [the bench]}}
settings: {stock: {name: Stock, kind: stock}, limit: {name: Limit, kind: power-limit}}
workloads: {loop: {name: Loop}}
measures: {temperature: {better: lower, unit: °C}}
parts: {core: Core}
phases: {idle: Idle, load: Load}
tables: [readings.csv]
`);
  }
  return data;
}

export function run() {
  const folder = scratch();
  const codes = [0, 1];
  const times = new Map();
  for (const count of [250, 500, 1000]) {
    const args = [cli, 'check', '--json', '--data', episodes(folder, count), '--cache', join(folder, `cache-${count}`)];
    const cold = timed(args, { codes });
    const warm = timed(args, { codes });
    writeFileSync(join(folder, `data-${count}/episode-0007/readings.csv`), 'setup,setting,workload,measure,part,phase,run,value,unit\nbench,stock,loop,temperature,core,load,1,66,degC\n');
    times.set(count, { cold, warm, edit: timed(args, { codes }) });
  }
  const rows = [...times].map(([count, t]) => ({ what: `${count} episodes`, detail: `${(t.cold / count).toFixed(1)} ms an episode; unchanged ${t.warm.toFixed(0)} ms in all; one edited ${t.edit.toFixed(0)} ms in all` }));
  const [half, whole] = [times.get(500), times.get(1000)];
  return [...rows, { what: 'time for 1,000 against twice the time for 500', ratio: whole.cold / (2 * half.cold), most: 1.15 }, { what: 'unchanged against all new, 1,000 episodes', ratio: whole.warm / whole.cold }];
}
