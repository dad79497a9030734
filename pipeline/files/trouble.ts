// Trouble with the disk, told in words a person can act on. Not a finding: nothing that was written is wrong.

const meanings: Record<string, string> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk quota is used up',
  EROFS: 'the disk is read-only',
  EACCES: 'permission is denied',
  EPERM: 'permission is denied',
  ENOTDIR: 'a part of the path is a file, not a folder',
  EISDIR: 'a folder stands where the file should go',
  ENOENT: 'it is not there',
  EEXIST: 'a file stands where the folder should go',
  ENAMETOOLONG: 'the name is too long',
  ELOOP: 'its links lead in a circle',
  EMFILE: 'too many files are open',
  EIO: 'the disk reports an error',
  EBUSY: 'it is in use',
  EXDEV: 'it is on another disk',
};

export class FileTrouble extends Error {
  override name = 'FileTrouble';
  readonly path: string;
  readonly code: string;

  constructor(doing: string, path: string, why: string, code = '') {
    super(`Cannot ${doing} ${path}: ${why}${code ? ` (${code})` : ''}.`);
    this.path = path;
    this.code = code;
  }
}

/** The system's error code of something thrown, such as ENOSPC; undefined for anything else. */
export function errorCode(thrown: unknown): string | undefined {
  const code = (thrown as { code?: unknown } | undefined)?.code;
  return thrown instanceof Error && typeof code === 'string' ? code : undefined;
}

export function meaningOf(code: string): string {
  return meanings[code] ?? 'the system refused';
}

/** Runs `action`; a system error comes out as FileTrouble with the path and plain words, anything else as it is. */
export function tell<T>(doing: string, path: string, action: () => T): T {
  try {
    return action();
  } catch (thrown) {
    const code = errorCode(thrown);
    if (code === undefined || thrown instanceof FileTrouble) throw thrown;
    throw new FileTrouble(doing, path, meaningOf(code), code);
  }
}
