// What the last build left in an output folder: which files are its own, and what they held. The same input gives the same manifest.
import { join } from 'node:path';
import { disk, type Disk } from './disk.js';
import { errorCode } from './trouble.js';
import { writeWhole } from './write-whole.js';

export const manifestName = '.manifest.json';

/** A set of files made from one thing (an episode, or all of them for the index). */
export interface Made {
  /** Hash of all that the files were made from. */
  key: string;
  /** What the index shows of it, and whatever else the maker wants to keep. */
  card: unknown;
  /** SHA-256 by path from the output folder on. */
  files: Record<string, string>;
}

/** By the maker's name: an episode's id, or '' for the index. */
export type Manifest = Map<string, Made>;

const form = 1;

/** An unreadable, foreign or tampered manifest counts as none: then nothing there is known to be ours, and nothing is removed or written over. */
export function readManifest(folder: string, fs: Disk = disk): Manifest {
  let text: string;
  try {
    text = fs.readFileSync(join(folder, manifestName), 'utf8');
  } catch (thrown) {
    if (errorCode(thrown) === undefined) throw thrown;
    return new Map();
  }
  try {
    const parsed = JSON.parse(text) as { form?: unknown; made?: Record<string, Made> };
    if (parsed.form !== form || typeof parsed.made !== 'object' || parsed.made === null) return new Map();
    const made = Object.entries(parsed.made);
    const sound = made.every(([, m]) => typeof m.key === 'string' && Object.entries(m.files).every(([path, sha]) => isInside(path) && /^[0-9a-f]{64}$/.test(sha)));
    return sound ? new Map(made) : new Map();
  } catch {
    return new Map();
  }
}

export function writeManifest(folder: string, manifest: Manifest, fs: Disk = disk): void {
  const made = Object.fromEntries([...manifest].sort(([a], [b]) => (a < b ? -1 : 1)).map(([name, m]) => [name, { ...m, files: sorted(m.files) }]));
  writeWhole(join(folder, manifestName), `${JSON.stringify({ form, made }, null, 1)}\n`, fs);
}

/** A path that stays in its folder and is none of this room's own files. */
export function isInside(path: string): boolean {
  return path !== '' && !/[\0\\]/.test(path) && path.split('/').every((part) => part !== '' && part !== '.' && part !== '..') && !path.startsWith('.');
}

function sorted(files: Record<string, string>): Record<string, string> {
  return Object.fromEntries(Object.entries(files).sort(([a], [b]) => (a < b ? -1 : 1)));
}
