// Reading inside one folder and nowhere else: an episode names its files, and no name may lead out of its folder.
import { posix, sep } from 'node:path';
import { nearest } from '../places/index.js';
import { disk, type Disk } from './disk.js';
import { hash, hashOf } from './hash.js';
import { LargeFile } from './large-file.js';
import { errorCode, meaningOf } from './trouble.js';

/** The bytes of a file, or how to read them, or a clause that says why they cannot be had: "there is no such file". */
export type Given = Uint8Array | LargeFile | { error: string };

/** No longer file is read at once, as all but logs are. */
export const largestFile = 256 * 1024 * 1024;
/** Longer files are read by stretches. */
const smallFile = 4 * 1024 * 1024;

/** Of the content; of the error where there is none. */
export function hashGiven(given: Given): string {
  return 'error' in given ? hashOf(given.error) : given instanceof LargeFile ? given.hash() : hash(given);
}

/** A file that is wanted at once. */
export function wholeGiven(given: Given): Uint8Array | { error: string } {
  return given instanceof LargeFile ? given.whole() : given;
}

export class Folder {
  readonly path: string;
  readonly #fs: Disk;
  readonly #limit: number;

  constructor(path: string, fs: Disk = disk, limit = largestFile) {
    this.path = path;
    this.#fs = fs;
    this.#limit = limit;
  }

  /** Reads a file named relative to the folder with `/` between parts. Never throws for what a name or the disk may do. */
  read(name: string): Given {
    const wrong = leaves(name);
    if (wrong) return { error: wrong };
    try {
      const real = this.#inside(name);
      if (real === undefined) return { error: 'it is a link that leaves the episode folder' };
      const stat = this.#fs.statSync(real);
      if (stat.isDirectory()) return { error: 'it is a folder, not a file' };
      // A pipe or a device would block or never end.
      if (!stat.isFile()) return { error: 'it is not a plain file' };
      if (stat.size > Math.min(smallFile, this.#limit)) return new LargeFile(real, this.#fs, this.#limit);
      return this.#fs.readFileSync(real);
    } catch (thrown) {
      const code = errorCode(thrown);
      if (code === undefined) throw thrown;
      if (code === 'ENOENT' || code === 'ENOTDIR') return { error: this.#missing(name) };
      return { error: `it cannot be read: ${meaningOf(code)} (${code})` };
    }
  }

  /** Names that fit a pattern, sorted by code unit. `{any}` and `*` stand for one or more characters other than `/`. */
  list(pattern: string): string[] {
    if (leaves(pattern)) return [];
    let found = [''];
    const parts = pattern.split('/').filter((p) => p !== '' && p !== '.');
    for (const [i, part] of parts.entries()) {
      const last = i === parts.length - 1;
      found = found.flatMap((at) => this.#matching(at, part, last));
    }
    return found.sort();
  }

  #matching(at: string, part: string, last: boolean): string[] {
    // A plain name needs no look at what stands beside it.
    if (!isPattern(part)) return this.#fs.existsSync(posix.join(this.path, at, part)) ? [at ? `${at}/${part}` : part] : [];
    const fits = new RegExp(`^${part.split(/\{[^{}]*\}|\*/).map((s) => s.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).join('(.+)')}$`, 's');
    try {
      if (this.#inside(at || '.') === undefined) return [];
      return this.#fs.readdirSync(posix.join(this.path, at), { withFileTypes: true })
        .filter((e) => fits.test(e.name) && !e.name.endsWith('.tmp') && (last ? !e.isDirectory() : !e.isFile()))
        .map((e) => (at ? `${at}/${e.name}` : e.name));
    } catch (thrown) {
      if (errorCode(thrown) === undefined) throw thrown;
      return [];
    }
  }

  #inside(name: string): string | undefined {
    const root = this.#fs.realpathSync(this.path);
    const real = this.#fs.realpathSync(posix.join(this.path, name));
    return real === root || real.startsWith(root.endsWith(sep) ? root : root + sep) ? real : undefined;
  }

  #missing(name: string): string {
    const at = posix.dirname(name);
    const near = nearest(posix.basename(name), this.#matching(at === '.' ? '' : at, '*', true).map((n) => posix.basename(n)));
    return near === undefined ? 'there is no such file' : `there is no such file; did you mean "${at === '.' ? near : `${at}/${near}`}"?`;
  }
}

/** Whether a name has the form of a pattern. */
export function isPattern(name: string): boolean {
  return /\{[^{}]*\}|\*/.test(name);
}

function leaves(name: string): string | undefined {
  if (name === '') return 'the name is empty';
  if (/[\0\n\r]/.test(name)) return 'the name has a control character in it';
  if (name.includes('\\')) return 'the name has a backslash in it; folders are parted by "/"';
  if (name.startsWith('/') || /^[A-Za-z]:/.test(name)) return 'it is an absolute path; name files from the episode folder on';
  if (posix.normalize(name).split('/')[0] === '..') return 'it leaves the episode folder';
  return undefined;
}
