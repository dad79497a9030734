// The disk as this room uses it. Handed in, so that a test can let it be full or locked.
import * as fs from 'node:fs';

export type Disk = Pick<typeof fs,
  | 'closeSync' | 'existsSync' | 'fstatSync' | 'linkSync' | 'lstatSync' | 'mkdirSync' | 'mkdtempSync' | 'openSync' | 'readdirSync' | 'readFileSync'
  | 'readSync' | 'realpathSync' | 'renameSync' | 'rmdirSync' | 'rmSync' | 'statSync' | 'unlinkSync' | 'writeFileSync'> & {
  /** Told the SHA-256 of a file that was read by stretches. */
  hashed?(path: string, sha: string): void;
};

export const disk: Disk = fs;
