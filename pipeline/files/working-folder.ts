// The folder that one works in, which may have been removed meanwhile.
import { errorCode, FileTrouble, meaningOf } from './trouble.js';

/** Throws FileTrouble where it is gone: every name that a command is given starts from it. */
export function needWorkingFolder(cwd: () => string = () => process.cwd()): void {
  try {
    cwd();
  } catch (thrown) {
    const code = errorCode(thrown);
    if (code === undefined) throw thrown;
    throw new FileTrouble('use', 'the working folder', code === 'ENOENT' ? 'it is no longer there; change to a folder that is' : meaningOf(code), code);
  }
}
