// Whether outputs stay clear of the sources: an output may have the name of a table that a record reads.
import { basename, dirname, join, relative, resolve } from 'node:path';
import { disk, type Disk } from './disk.js';

/** Why nothing may be built into `out`, as a sentence, where it is, holds or lies in the folder of the episodes or one of them; links are followed. */
export function tooNear(out: string, data: string, ids: readonly string[], fs: Disk = disk): string | undefined {
  const [at, root] = [real(out, fs), real(data, fs)];
  for (const [folder, name] of [[root, data], ...ids.map((id) => [real(join(data, id), fs), join(data, id)])] as [string, string][]) {
    const how = at === folder ? 'is' : within(folder, at) ? 'holds' : within(at, folder) ? 'lies in' : undefined;
    if (how) return `Outputs cannot go to ${out}: it ${how} ${name}, where the records are, and could be written over them. Name another folder with --out.`;
  }
  return undefined;
}

function within(path: string, folder: string): boolean {
  const way = relative(folder, path);
  return way !== '' && !/^\.\.(?:[/\\]|$)/.test(way) && resolve(way) !== way;
}

/** The real path of what is there of it, and the rest as written. */
function real(path: string, fs: Disk): string {
  const full = resolve(path);
  if (fs.existsSync(full)) return fs.realpathSync(full);
  return dirname(full) === full ? full : join(real(dirname(full), fs), basename(full));
}
