// A run whose outcome is known: same command, same program, same inputs, outputs still standing. It stands alone and imports nothing
// of ours, because it decides whether anything else need be loaded at all.
import { createHash } from 'node:crypto';
import { closeSync, lstatSync, openSync, readdirSync, readFileSync, readSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';

/** Size in bytes and time of change in milliseconds; undefined where no such file can be seen. */
export type Stamp = [path: string, size: number | undefined, time: number | undefined];

export interface Run {
  /** The program's own files, its templates and libraries. */
  program: Stamp[];
  /** Files read, with the SHA-256 of what they held; empty where they could not be read. */
  reads: [path: string, sha: string][];
  /** Folders listed, with the hash of their names. */
  lists: [path: string, sha: string][];
  outputs: Stamp[];
  /** What it prints, and its exit code. */
  text: string;
  code: number;
}

/** Everything besides files that the printed text depends on. */
export function nameOfRun(args: readonly string[], stream: { isTTY?: boolean; columns?: number } = process.stdout): string {
  const { NO_COLOR, TERM, FORCE_COLOR, PATH } = process.env;
  return sha(JSON.stringify([args, process.cwd(), process.version, process.arch, stream.isTTY === true, stream.columns ?? 0, NO_COLOR ?? '', TERM ?? '', FORCE_COLOR ?? '', PATH ?? '']));
}

/** Where the run is kept; undefined where the arguments ask for no cache, or for what is not worth keeping. */
export function runPath(args: readonly string[], name = nameOfRun(args)): string | undefined {
  if ((args[0] !== 'check' && args[0] !== 'build') || args.includes('--no-cache') || args.includes('--help') || args.includes('-h')) return undefined;
  const at = args.findIndex((a) => a === '--cache' || a.startsWith('--cache='));
  const folder = at < 0 ? '.cache' : args[at]!.startsWith('--cache=') ? args[at]!.slice(8) : args[at + 1];
  return folder === undefined ? undefined : resolve(folder, 'runs', `${name}.json`);
}

/** What the run would print and exit with, if nothing that it rests on has changed. */
export function replay(args: readonly string[]): Pick<Run, 'text' | 'code'> | undefined {
  try {
    const path = runPath(args);
    if (path === undefined) return undefined;
    const run = JSON.parse(readFileSync(path, 'utf8')) as Run;
    return holds(run) ? run : undefined;
  } catch {
    // None kept, or a broken one: the work is done again.
    return undefined;
  }
}

function holds(run: Run): boolean {
  return [...run.program, ...run.outputs].every(([path, size, time]) => {
    const now = stampOf(path);
    // JSON keeps what was not there as null.
    return now[1] === (size ?? undefined) && now[2] === (time ?? undefined);
  }) && run.lists.every(([path, names]) => listHash(path) === names) && run.reads.every(([path, content]) => contentHash(path) === content);
}

export function stampOf(path: string): Stamp {
  try {
    const stat = statSync(path, { throwIfNoEntry: false });
    return [path, stat?.size, stat?.mtimeMs];
  } catch {
    return [path, undefined, undefined];
  }
}

export function contentHash(path: string): string {
  try {
    return shaOfFile(path);
  } catch {
    return '';
  }
}

/** Of the names in a folder and whether each is a folder, a file or something else. */
export function listHash(path: string): string {
  try {
    return sha(JSON.stringify(readdirSync(path).sort().map((name) => [name, lstatSync(join(path, name)).mode & 0o170000])));
  } catch {
    return '';
  }
}

/** Of a file of any length. */
function shaOfFile(path: string): string {
  const hash = createHash('sha256');
  const part = new Uint8Array(1024 * 1024);
  const fd = openSync(path, 'r');
  try {
    for (let n = 0; (n = readSync(fd, part)) > 0;) hash.update(part.subarray(0, n));
  } finally {
    closeSync(fd);
  }
  return hash.digest('hex');
}

function sha(content: Uint8Array | string): string {
  return createHash('sha256').update(content).digest('hex');
}
