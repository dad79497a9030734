import { cpSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { cli, project, scratch, timed } from './measure.mjs';

export const says = 'one reading of one table edited: what is written anew, and the time against the build from nothing';

export function run() {
  const folder = scratch();
  const data = join(folder, 'data');
  cpSync(join(project, 'data'), data, { recursive: true });
  const out = join(folder, 'out');
  // A draft, because an edited reading may well contradict what the texts of the demo say.
  const args = [cli, 'build', '--draft', '--data', data, '--out', out, '--cache', join(folder, 'cache')];
  const codes = [0, 1];
  const cold = timed(args, { codes });
  const stamps = () => Object.fromEntries(readdirSync(out, { recursive: true }).map((n) => [n, statSync(join(out, n))]).filter(([, s]) => s.isFile()).map(([n, s]) => [n, s.mtimeMs]));
  const before = stamps();
  const table = readdirSync(data, { recursive: true }).filter((n) => n.endsWith('readings.csv')).sort()[0];
  const text = readFileSync(join(data, table), 'utf8');
  // The first temperature under load, which every plan of pictures shows.
  const edited = text.replace(/^(.*,temperature,[^,]*,load,1,)(\d+)/m, (_w, head, value) => head + (Number(value) + 1));
  if (edited === text) throw new Error(`no reading to edit in ${table}`);
  writeFileSync(join(data, table), edited);
  const warm = timed(args, { codes });
  const after = stamps();
  const changed = Object.keys(after).filter((n) => after[n] !== before[n] && !n.startsWith('.'));
  const pictures = (names) => names.filter((n) => n.endsWith('.png')).length;
  return [{ what: `${changed.length} of ${Object.keys(after).length} files written, ${pictures(changed)} of ${pictures(Object.keys(after))} PNG`, ratio: warm / cold, detail: `${warm.toFixed(0)} ms against ${cold.toFixed(0)} ms` }];
}
