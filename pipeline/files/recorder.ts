// Takes note of what a run reads below one folder, so that a later run can tell whether it would read the same.
import { resolve, sep } from 'node:path';
import type { Disk } from './disk.js';
import { duckdbPaths } from './duckdb.js';
import { hash } from './hash.js';
import { programFiles } from './code-version.js';
import { contentHash, listHash, type Run, runPath, stampOf } from './replay.js';
import { toolPaths } from './tool.js';
import { FileTrouble } from './trouble.js';
import { writeWhole } from './write-whole.js';

/** Keeps what the same command is to print next time, as long as nothing changes. */
export function rememberRun(args: readonly string[], run: { text: string; code: number; outputs: string[]; recorder: Recorder }): void {
  const path = runPath(args);
  if (path === undefined) return;
  const kept: Run = { program: [...programFiles(), ...toolPaths('ffmpeg'), ...duckdbPaths()].map(stampOf), ...run.recorder.seen(), outputs: run.outputs.map(stampOf), text: run.text, code: run.code };
  try {
    writeWhole(path, JSON.stringify(kept));
  } catch (thrown) {
    // Without it the next run only takes longer.
    if (!(thrown instanceof FileTrouble)) throw thrown;
  }
}

export class Recorder {
  readonly disk: Disk;
  readonly #root: string;
  readonly #reads = new Map<string, string | undefined>();
  readonly #lists = new Set<string>();

  constructor(folder: string, fs: Disk) {
    this.#root = resolve(folder);
    const asked = <F extends (...args: never[]) => unknown>(call: F): F =>
      ((...args: never[]) => {
        const path = this.#within(args[0]);
        if (path !== undefined && !this.#reads.has(path)) this.#reads.set(path, undefined);
        return call(...args);
      }) as F;
    const read = (...args: Parameters<Disk['readFileSync']>): unknown => {
      const content = fs.readFileSync(...args);
      const path = this.#within(args[0]);
      if (path !== undefined && typeof content !== 'string') this.#reads.set(path, hash(content));
      return content;
    };
    const list = (...args: Parameters<Disk['readdirSync']>): unknown => {
      const path = this.#within(args[0]);
      if (path !== undefined) this.#lists.add(path);
      return fs.readdirSync(...args);
    };
    this.disk = {
      ...fs, statSync: asked(fs.statSync), existsSync: asked(fs.existsSync), realpathSync: Object.assign(asked(fs.realpathSync), { native: fs.realpathSync.native }),
      hashed: (path, sha) => {
        const within = this.#within(path);
        if (within !== undefined && this.#reads.get(within) === undefined) this.#reads.set(within, sha);
      },
      readFileSync: read as Disk['readFileSync'], readdirSync: list as Disk['readdirSync'],
    };
  }

  /** What was read counts as it was when it was read; what was only asked for, as it is now. */
  seen(): Pick<Run, 'reads' | 'lists'> {
    const reads = [...this.#reads].sort(([a], [b]) => (a < b ? -1 : 1));
    return { reads: reads.map(([path, sha]) => [path, sha ?? contentHash(path)]), lists: [...this.#lists].sort().map((path) => [path, listHash(path)]) };
  }

  #within(path: unknown): string | undefined {
    const full = resolve(String(path));
    return full === this.#root || full.startsWith(this.#root + sep) ? full : undefined;
  }
}
