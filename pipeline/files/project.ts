// Where the episodes are.
import { join } from 'node:path';
import { disk, type Disk } from './disk.js';
import { errorCode, FileTrouble, meaningOf, tell } from './trouble.js';

export const recordName = 'episode.yaml';

/** Folders that systems make for themselves, and lock. */
const ofTheSystem: ReadonlySet<string> = new Set(['lost+found', 'System Volume Information', '$RECYCLE.BIN']);

/**
 * Ids of the folders that hold a record, sorted by code unit. One that cannot be looked into may hold an episode: taken for
 * none, its outputs would be cleared away.
 */
export function episodeIds(data: string, fs: Disk = disk): string[] {
  return tell('read the episodes of', data, () => fs.readdirSync(data))
    .filter((name) => !name.startsWith('.') && !ofTheSystem.has(name) && holdsRecord(join(data, name), fs))
    .sort();
}

function holdsRecord(folder: string, fs: Disk): boolean {
  const record = join(folder, recordName);
  try {
    fs.statSync(record);
    return true;
  } catch (thrown) {
    const code = errorCode(thrown);
    if (code === undefined) throw thrown;
    // A file beside the episodes.
    if (code === 'ENOTDIR') return false;
    if (code !== 'ENOENT') throw new FileTrouble('read the episode folder', folder, meaningOf(code), code);
    const lost = [folder, record].find((path) => leadsNowhere(path, fs));
    if (lost !== undefined) throw new FileTrouble('read the episode folder', folder, `${lost === folder ? 'it' : recordName} is a link to what is not there`, code);
    return false;
  }
}

function leadsNowhere(path: string, fs: Disk): boolean {
  try {
    return fs.lstatSync(path).isSymbolicLink() && !fs.existsSync(path);
  } catch (thrown) {
    if (errorCode(thrown) === undefined) throw thrown;
    return false;
  }
}
