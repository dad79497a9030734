// Work done before, by the hash of what it was done from. A cache may be lost, broken or locked at any time: then the work is done again.
import { join } from 'node:path';
import { disk, type Disk } from './disk.js';
import { hash } from './hash.js';
import { errorCode, FileTrouble } from './trouble.js';
import { writeWhole } from './write-whole.js';

/** When all entries together grow beyond this, the oldest go. */
const most = 1024 * 1024 * 1024;

export class Cache {
  readonly folder: string | undefined;
  readonly #fs: Disk;

  /** Without a folder nothing is kept. */
  constructor(folder: string | undefined, fs: Disk = disk) {
    this.folder = folder;
    this.#fs = fs;
  }

  /** Bytes kept under a content hash; undefined where there are none or they are damaged. */
  get(kind: string, key: string): Buffer | undefined {
    const whole = this.#read(this.#path(kind, key));
    if (!whole) return undefined;
    const content = whole.subarray(64);
    return whole.toString('latin1', 0, 64) === hash(content) ? content : undefined;
  }

  put(kind: string, key: string, content: Uint8Array): void {
    this.#write(this.#path(kind, key), Buffer.concat([Buffer.from(hash(content), 'latin1'), content]));
  }

  /** What was last remembered under a name. The caller decides whether it still holds. */
  recall<T>(kind: string, name: string): T | undefined {
    const whole = this.#read(this.#named(kind, name));
    if (!whole) return undefined;
    try {
      return JSON.parse(whole.toString('utf8')) as T;
    } catch {
      return undefined;
    }
  }

  remember(kind: string, name: string, value: unknown): void {
    this.#write(this.#named(kind, name), JSON.stringify(value));
  }

  /** Drops leftovers of killed builds and, when the whole has grown too large, the entries longest unchanged. */
  prune(limit = most): void {
    if (!this.folder) return;
    const entries = this.#files(this.folder);
    let total = 0;
    for (const e of entries.sort((a, b) => b.time - a.time || (a.path < b.path ? -1 : 1))) {
      total += e.size;
      if (total > limit || (e.path.endsWith('.tmp') && !this.#writing(e.path))) this.#drop(e.path);
    }
  }

  #files(folder: string): { path: string; size: number; time: number }[] {
    try {
      return this.#fs.readdirSync(folder, { withFileTypes: true }).flatMap((e) => {
        const path = join(folder, e.name);
        if (e.isDirectory()) return this.#files(path);
        const stat = this.#fs.lstatSync(path);
        return [{ path, size: stat.size, time: stat.mtimeMs }];
      });
    } catch (thrown) {
      return quiet(thrown);
    }
  }

  #writing(temporary: string): boolean {
    const pid = /\.(\d+)\.tmp$/.exec(temporary)?.[1];
    if (pid === undefined) return false;
    try {
      process.kill(Number(pid), 0);
      return true;
    } catch {
      return false;
    }
  }

  #path(kind: string, key: string): string | undefined {
    return this.folder && join(this.folder, kind, key.slice(0, 2), key.slice(2));
  }

  #named(kind: string, name: string): string | undefined {
    return this.folder && join(this.folder, kind, `${hash(name).slice(0, 32)}.json`);
  }

  #read(path: string | undefined): Buffer | undefined {
    if (path === undefined) return undefined;
    try {
      return this.#fs.readFileSync(path);
    } catch (thrown) {
      quiet(thrown);
      return undefined;
    }
  }

  #write(path: string | undefined, content: Uint8Array | string): void {
    if (path === undefined) return;
    try {
      writeWhole(path, content, this.#fs);
    } catch (thrown) {
      if (!(thrown instanceof FileTrouble)) quiet(thrown);
    }
  }

  #drop(path: string): void {
    try {
      this.#fs.unlinkSync(path);
    } catch (thrown) {
      quiet(thrown);
    }
  }
}

function quiet(thrown: unknown): never[] {
  if (errorCode(thrown) === undefined) throw thrown;
  return [];
}
