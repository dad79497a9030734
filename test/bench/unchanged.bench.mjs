import { join } from 'node:path';
import { cli, pairs, project, scratch, timed } from './measure.mjs';

export const says = 'a build with nothing changed, whole process, against node -e 0';

export function run() {
  const folder = scratch();
  const args = [cli, 'build', '--data', join(project, 'data'), '--out', join(folder, 'out'), '--cache', join(folder, 'cache')];
  timed(args);
  return [{ what: 'build again', most: 2, ...pairs(15, () => timed(args), () => timed(['-e', '0'])) }];
}
