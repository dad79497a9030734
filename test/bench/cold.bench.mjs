import { cpSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { cli, costed, median, pairs, project, scratch } from './measure.mjs';

export const says = 'a build of the demo from nothing, whole process, against a bare loop that draws the same pictures one at a time';

export function run() {
  const folder = scratch();
  // Moving pictures have a bench of their own.
  const data = join(folder, 'data');
  cpSync(join(project, 'data'), data, { recursive: true });
  for (const name of readdirSync(data, { recursive: true }).filter((n) => n.endsWith('episode.yaml'))) writeFileSync(join(data, name), readFileSync(join(data, name), 'utf8').replace(/^motion:.*\n/m, ''));
  const [built, looped, cache] = ['built', 'looped', 'cache'].map((n) => join(folder, n));
  const work = { build: [], loop: [] };
  const wall = (by, { ms, cpu }) => {
    work[by].push(cpu);
    return ms;
  };
  const build = () => {
    for (const f of [built, cache]) rmSync(f, { recursive: true, force: true });
    return wall('build', costed([cli, 'build', '--data', data, '--out', built, '--cache', cache]));
  };
  const loop = () => {
    rmSync(looped, { recursive: true, force: true });
    return wall('loop', costed([join(import.meta.dirname, 'bare-loop.mjs'), data, looped]));
  };
  const result = pairs(5, build, loop);
  const pictures = readdirSync(looped, { recursive: true }).filter((n) => n.endsWith('.png'));
  const same = readdirSync(built, { recursive: true }).filter((n) => n.endsWith('.png'));
  if (pictures.length === 0 || pictures.length !== same.length) throw new Error(`the loop drew ${pictures.length} pictures and the build ${same.length}`);
  // The build numbers pictures as they are told; the loop knows no script.
  const unnumbered = (name) => name.replace(/(^|[\\/])\d+-/, '$1');
  const builtNames = new Map(same.map((name) => [unnumbered(name), name]));
  for (const name of pictures) {
    const twin = builtNames.get(unnumbered(name));
    if (twin === undefined || !readFileSync(join(looped, name)).equals(readFileSync(join(built, twin)))) throw new Error(`${name} differs`);
  }
  const seconds = (by) => (median(work[by]) / 1000).toFixed(1);
  return [
    { what: `${pictures.length} PNG files, byte-equal`, most: 0.8, ...result },
    // The build does more than the loop (it checks, proofs, writes pages); it is quicker for keeping all cores busy.
    { what: 'the same in processor time, all threads', ratio: median(work.build.map((b, i) => b / work.loop[i])), detail: `${seconds('build')} s against ${seconds('loop')} s` },
  ];
}
