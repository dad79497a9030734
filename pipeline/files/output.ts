// The output folder. All files of a build are written aside first; only when every one of them stands are they renamed into place,
// one by one, so that a build that fails or is killed leaves each file either old or new, and whole.
import { dirname, join } from 'node:path';
import { disk, type Disk } from './disk.js';
import { hash } from './hash.js';
import { lockName, takeLock } from './lock.js';
import { makeFolder } from './make-folder.js';
import { type Made, type Manifest, isInside, manifestName, readManifest, writeManifest } from './manifest.js';
import { Standing } from './standing.js';
import { errorCode, FileTrouble, tell } from './trouble.js';

export const stagingName = '.staging';

/** What publishing did, in paths from the output folder on, each list in order. */
export interface Published {
  written: string[];
  unchanged: string[];
  removed: string[];
  /** No longer wanted, but changed by somebody since: left alone. */
  left: string[];
}

export class Output {
  readonly folder: string;
  readonly before: Manifest;
  readonly #fs: Disk;
  readonly #made: Manifest = new Map();
  readonly #paths = new Set<string>();
  readonly #staged = new Map<string, string>();
  readonly #standing: Standing;
  readonly #letGo: () => void;
  readonly #onExit = (): void => this.close();
  #count = 0;
  #closed = false;

  /** Locks the folder and clears what a killed build left. Throws FileTrouble where the folder cannot be written. */
  constructor(folder: string, fs: Disk = disk, standing = new Standing(folder, undefined, fs)) {
    this.folder = folder;
    this.#fs = fs;
    this.#standing = standing;
    tell('write into', folder, () => makeFolder(folder, fs));
    this.#letGo = takeLock(folder, fs);
    try {
      this.#clear();
      this.before = readManifest(folder, fs);
      tell('write into', folder, () => fs.mkdirSync(join(folder, stagingName)));
      // Whoever interrupts the process finds the folder cleared and unlocked.
      process.once('exit', this.#onExit);
    } catch (thrown) {
      this.#letGo();
      throw thrown;
    }
  }

  /** Writes one file aside. Naming the same path twice is a mistake of the caller, and so is a path that leaves the folder. */
  put(maker: string, path: string, content: Uint8Array | string): void {
    if (!isInside(path)) throw new Error(`output path "${path}" leaves the output folder`);
    const sha = hash(content);
    this.#take(path);
    this.#maker(maker).files[path] = sha;
    if (this.#standing.stands(path, sha)) return;
    const aside = join(this.folder, stagingName, String(this.#count++));
    tell('write', join(this.folder, path), () => this.#fs.writeFileSync(aside, content));
    this.#staged.set(path, aside);
  }

  /** Names what the files of a maker were made from, once all are put. */
  seal(maker: string, key: string, card: unknown): void {
    Object.assign(this.#maker(maker), { key, card });
  }

  /** Takes over what an earlier build made, as it stands there. */
  keep(maker: string, made: Made): void {
    for (const path of Object.keys(made.files)) this.#take(path);
    this.#made.set(maker, made);
  }

  /** Renames everything into place, removes what no longer belongs and was made by an earlier build, and closes. */
  publish(): Published {
    const fs = this.#fs;
    const wanted = new Map([...this.#made.values()].flatMap((m) => Object.entries(m.files)));
    const result: Published = { written: [], unchanged: [], removed: [], left: [] };
    const own = new Map(ownPaths(this.before));
    for (const path of wanted.keys()) this.#makeWay(path, own.has(path));
    // Both old and new files are known as ours before the first rename, so that a build killed half way can be put right by the next.
    if (this.#staged.size > 0) writeManifest(this.folder, withUnfinished(this.before, this.#made), fs);
    for (const path of [...wanted.keys()].sort()) {
      const aside = this.#staged.get(path);
      if (aside === undefined) result.unchanged.push(path);
      else {
        tell('write', join(this.folder, path), () => fs.renameSync(aside, join(this.folder, path)));
        this.#standing.wrote(path, wanted.get(path)!);
        result.written.push(path);
      }
    }
    for (const [path, shas] of own) {
      if (wanted.has(path)) continue;
      const fate = this.#removeOurs(path, shas);
      if (fate) result[fate].push(path);
    }
    writeManifest(this.folder, this.#made, fs);
    this.#standing.remember(wanted.keys());
    this.close();
    return result;
  }

  /** Lets go of the folder; what was put and not published is dropped. Safe to call at any time and twice. */
  close(): void {
    if (this.#closed) return;
    this.#closed = true;
    process.off('exit', this.#onExit);
    try {
      this.#clear();
    } finally {
      this.#letGo();
    }
  }

  #maker(name: string): Made {
    let made = this.#made.get(name);
    if (!made) this.#made.set(name, (made = { key: '', card: undefined, files: {} }));
    return made;
  }

  #clear(): void {
    tell('clear', join(this.folder, stagingName), () => this.#fs.rmSync(join(this.folder, stagingName), { recursive: true, force: true }));
    for (const name of tell('read', this.folder, () => this.#fs.readdirSync(this.folder))) {
      if (name.startsWith(`${manifestName}.`) && name.endsWith('.tmp')) this.#fs.rmSync(join(this.folder, name), { force: true });
    }
  }

  /** The folders on the way to a path, none of them a link to somewhere else; in its place no folder, and no file that is not of an earlier build. */
  #makeWay(path: string, ours: boolean): void {
    const full = join(this.folder, path);
    tell('write', full, () => {
      const parts = path.split('/').slice(0, -1);
      for (let i = 1; i <= parts.length; i++) {
        const at = join(this.folder, ...parts.slice(0, i));
        const stat = this.#stat(at);
        if (stat?.isSymbolicLink()) throw new FileTrouble('write', full, `${at} is a link to another folder`);
        if (!stat) this.#fs.mkdirSync(at);
        else if (!stat.isDirectory()) throw new FileTrouble('write', full, `${at} is a file, not a folder`, 'ENOTDIR');
      }
      const there = this.#stat(full);
      if (there?.isDirectory()) throw new FileTrouble('write', full, 'a folder stands where the file should go', 'EISDIR');
      if (there && !ours && this.#staged.has(path)) throw new FileTrouble('write', full, 'a file that no build is known to have made stands there; move it away, or name another folder with --out');
    });
  }

  #removeOurs(path: string, shas: string[]): 'removed' | 'left' | undefined {
    const full = join(this.folder, path);
    const stat = this.#stat(full);
    if (!stat) return undefined;
    if (!stat.isFile() || !shas.some((sha) => this.#standing.stands(path, sha))) return 'left';
    tell('remove', full, () => this.#fs.unlinkSync(full));
    for (let at = dirname(path); at !== '.'; at = dirname(at)) {
      try {
        this.#fs.rmdirSync(join(this.folder, at));
      } catch (thrown) {
        // Not empty: something else lives there.
        if (errorCode(thrown) === undefined) throw thrown;
        break;
      }
    }
    return 'removed';
  }

  #take(path: string): void {
    if (this.#paths.has(path)) throw new Error(`output "${path}" is made twice`);
    this.#paths.add(path);
  }

  #stat(full: string) {
    return tell('look at', full, () => this.#fs.lstatSync(full, { throwIfNoEntry: false }));
  }
}

function withUnfinished(before: Manifest, after: Manifest): Manifest {
  return new Map([...before, ...[...after].map(([name, made]): [string, Made] => [`${name} (unfinished)`, { ...made, key: '' }])]);
}

/** Every path that an earlier build made or began to make, in order, with the contents it may have had. */
function ownPaths(manifest: Manifest): [string, string[]][] {
  const own = new Map<string, string[]>();
  for (const made of manifest.values()) {
    for (const [path, sha] of Object.entries(made.files)) own.set(path, [...(own.get(path) ?? []), sha]);
  }
  return [...own].sort(([a], [b]) => (a < b ? -1 : 1));
}

/** Clears what a killed build left in a folder where there is nothing to write; one that still works there is let be. */
export function clearLeftovers(folder: string, fs: Disk = disk): void {
  if (![lockName, stagingName].some((name) => fs.existsSync(join(folder, name)))) return;
  try {
    new Output(folder, fs).close();
  } catch (thrown) {
    if (!(thrown instanceof FileTrouble)) throw thrown;
  }
}
