// A folder with all that are missing on the way to it. Node's own way of making them tries again for as long as the system answers
// ENOENT, which it does for ever where there can be no new folder: in /proc, or in a working folder that was removed.
import { dirname } from 'node:path';
import { disk, type Disk } from './disk.js';
import { errorCode, FileTrouble } from './trouble.js';

export function makeFolder(path: string, fs: Disk = disk): void {
  if (made(path, fs)) return;
  const parent = dirname(path);
  if (parent !== path) makeFolder(parent, fs);
  if (!made(path, fs)) throw new FileTrouble('make the folder', path, 'the system takes no new folder there', 'ENOENT');
}

/** False where a folder on the way is missing. */
function made(path: string, fs: Disk): boolean {
  try {
    fs.mkdirSync(path);
    return true;
  } catch (thrown) {
    const code = errorCode(thrown) ?? '';
    // Of the root of a disk systems say different things.
    if (['EEXIST', 'EISDIR', 'EPERM'].includes(code) && isFolder(path, fs)) return true;
    if (code === 'ENOENT') return false;
    throw thrown;
  }
}

function isFolder(path: string, fs: Disk): boolean {
  try {
    return fs.statSync(path).isDirectory();
  } catch (thrown) {
    if (errorCode(thrown) === undefined) throw thrown;
    return false;
  }
}
