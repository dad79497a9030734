import { cpSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { cli, pairs, project, scratch, timed } from './measure.mjs';

export const says = 'a build of the demo from nothing, whole process, against a bare loop that draws the same pictures one at a time';

export function run() {
  const folder = scratch();
  // Moving pictures have a bench of their own.
  const data = join(folder, 'data');
  cpSync(join(project, 'data'), data, { recursive: true });
  for (const name of readdirSync(data, { recursive: true }).filter((n) => n.endsWith('episode.yaml'))) writeFileSync(join(data, name), readFileSync(join(data, name), 'utf8').replace(/^motion:.*\n/m, ''));
  const [built, looped, cache] = ['built', 'looped', 'cache'].map((n) => join(folder, n));
  const build = () => {
    for (const f of [built, cache]) rmSync(f, { recursive: true, force: true });
    return timed([cli, 'build', '--data', data, '--out', built, '--cache', cache]);
  };
  const loop = () => {
    rmSync(looped, { recursive: true, force: true });
    return timed([join(import.meta.dirname, 'bare-loop.mjs'), data, looped]);
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
  return [{ what: `${pictures.length} PNG files, byte-equal`, most: 0.85, ...result }];
}
