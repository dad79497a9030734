// A file is written under another name beside its place and then renamed: whoever looks sees the old one or the new one, whole.
import { dirname } from 'node:path';
import { disk, type Disk } from './disk.js';
import { makeFolder } from './make-folder.js';
import { errorCode, tell } from './trouble.js';

/** Makes missing folders on the way. On failure nothing is left behind and the old file stands as it was. `mode`: permissions, where they are to be kept. */
export function writeWhole(path: string, content: Uint8Array | string, fs: Disk = disk, mode?: number): void {
  const temporary = `${path}.${process.pid}.tmp`;
  tell('write', path, () => {
    try {
      makeFolder(dirname(path), fs);
      fs.writeFileSync(temporary, content, mode === undefined ? {} : { mode });
      fs.renameSync(temporary, path);
    } catch (thrown) {
      remove(temporary, fs);
      throw thrown;
    }
  });
}

/** Removes a file if it is there; a failure to do so is not worth an error. */
export function remove(path: string, fs: Disk = disk): void {
  try {
    fs.unlinkSync(path);
  } catch (thrown) {
    if (errorCode(thrown) === undefined) throw thrown;
  }
}
