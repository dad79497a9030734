// Where the episodes are.
import { join } from 'node:path';
import { disk, type Disk } from './disk.js';
import { tell } from './trouble.js';

export const recordName = 'episode.yaml';

/** Ids of the folders that hold a record, sorted by code unit. */
export function episodeIds(data: string, fs: Disk = disk): string[] {
  return tell('read the episodes of', data, () => fs.readdirSync(data))
    .filter((name) => !name.startsWith('.') && fs.existsSync(join(data, name, recordName)))
    .sort();
}
