// Whether output files still stand as they were written. Contents decide; size and time of change are remembered beside the hash,
// so that a file which nobody touched need not be read again.
import { join } from 'node:path';
import { type Cache } from './cache.js';
import { disk, type Disk } from './disk.js';
import { hash } from './hash.js';
import { errorCode } from './trouble.js';

/** Size in bytes, time of change in milliseconds, SHA-256. */
type Seen = [number, number, string];

export class Standing {
  readonly #folder: string;
  readonly #cache: Cache | undefined;
  readonly #fs: Disk;
  readonly #seen: Map<string, Seen>;
  #grown = false;

  constructor(folder: string, cache: Cache | undefined, fs: Disk = disk) {
    this.#folder = folder;
    this.#cache = cache;
    this.#fs = fs;
    this.#seen = new Map(Object.entries(cache?.recall<Record<string, Seen>>('standing', folder) ?? {}));
  }

  stands(path: string, sha: string): boolean {
    const full = join(this.#folder, path);
    try {
      const stat = this.#fs.lstatSync(full, { throwIfNoEntry: false });
      if (!stat?.isFile()) return false;
      const seen = this.#seen.get(path);
      if (Array.isArray(seen) && seen[0] === stat.size && seen[1] === stat.mtimeMs) return seen[2] === sha;
      const now = hash(this.#fs.readFileSync(full));
      this.#seen.set(path, [stat.size, stat.mtimeMs, now]);
      this.#grown = true;
      return now === sha;
    } catch (thrown) {
      if (errorCode(thrown) === undefined) throw thrown;
      return false;
    }
  }

  /** Takes note of a file just written. */
  wrote(path: string, sha: string): void {
    const stat = this.#fs.lstatSync(join(this.#folder, path), { throwIfNoEntry: false });
    if (stat) this.#seen.set(path, [stat.size, stat.mtimeMs, sha]);
    this.#grown = true;
  }

  /** Remembers how these files stand now; all others are forgotten. */
  remember(paths: Iterable<string>): void {
    const now: Record<string, Seen> = {};
    for (const path of [...paths].sort()) {
      const seen = this.#seen.get(path);
      if (seen) now[path] = seen;
    }
    if (this.#grown || Object.keys(now).length !== this.#seen.size) this.#cache?.remember('standing', this.#folder, now);
  }
}
