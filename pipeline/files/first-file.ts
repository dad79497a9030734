// Looking for a file in several places, of which some may not be there and some may be closed to us.
import { disk, type Disk } from './disk.js';
import { errorCode } from './trouble.js';

/** The first of these that is a file; a place that cannot be looked into holds none that could be used. */
export function firstFile(paths: readonly string[], fs: Disk = disk): string | undefined {
  return paths.find((path) => {
    try {
      return fs.statSync(path, { throwIfNoEntry: false })?.isFile();
    } catch (thrown) {
      if (errorCode(thrown) === undefined) throw thrown;
      return false;
    }
  });
}
