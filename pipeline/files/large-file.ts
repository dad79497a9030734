// A file too large to be held: read by stretches as often as need be, and held to be the same each time.
import { createHash } from 'node:crypto';
import type { Disk } from './disk.js';
import { errorCode, meaningOf } from './trouble.js';

/** Bytes read at a time where all of it is gone through. */
const stretch = 1024 * 1024;

export class LargeFile {
  readonly path: string;
  /** In bytes. */
  readonly size: number;
  readonly #fs: Disk;
  readonly #most: number;
  #stamp: string;
  #hash: string | undefined;
  #trouble: string | undefined;

  /** `most` is how many bytes may be read at once. */
  constructor(path: string, fs: Disk, most: number) {
    const stat = fs.statSync(path, { bigint: true });
    this.path = path;
    this.size = Number(stat.size);
    this.#fs = fs;
    this.#most = most;
    this.#stamp = stampOf(stat);
  }

  /** Why it can no longer be read, as a clause; what was read of it then does not hold together. */
  get trouble(): string | undefined {
    return this.#trouble;
  }

  /** Fills `into` from an offset on; gives how many bytes it could: fewer only at the end, or in trouble. */
  read(into: Uint8Array, at: number): number {
    if (this.#trouble !== undefined) return 0;
    return this.#opened((fd) => (this.#isSame(fd) ? this.#fill(fd, into, at) : 0)) ?? 0;
  }

  /** SHA-256 in hex of what it held when that was first asked; with an error code where it could not be read. */
  hash(): string {
    this.#hash ??= this.#opened((fd) => this.#hashNow(fd)) ?? `unread: ${this.#trouble}`;
    return this.#hash;
  }

  /** All of it at once, for what is no log. */
  whole(): Uint8Array | { error: string } {
    if (this.size > this.#most) return { error: `it has ${megabytes(this.size)}, and at most ${megabytes(this.#most)} are read at once` };
    const bytes = new Uint8Array(this.size);
    this.read(bytes, 0);
    return this.#trouble === undefined ? bytes : { error: this.#trouble };
  }

  /** A file that was touched and holds what it held is the same. */
  #isSame(fd: number): boolean {
    const stamp = stampOf(this.#fs.fstatSync(fd, { bigint: true }));
    if (stamp === this.#stamp) return true;
    if (this.#hash === undefined || this.#hashNow(fd) !== this.#hash) {
      this.#trouble ??= 'it was changed while it was read';
      return false;
    }
    this.#stamp = stamp;
    return true;
  }

  #hashNow(fd: number): string {
    const hash = createHash('sha256');
    const part = new Uint8Array(stretch);
    for (let at = 0, n = 0; (n = this.#fs.readSync(fd, part, 0, stretch, at)) > 0; at += n) hash.update(part.subarray(0, n));
    const sha = hash.digest('hex');
    this.#fs.hashed?.(this.path, sha);
    return sha;
  }

  #fill(fd: number, into: Uint8Array, at: number): number {
    const wanted = Math.min(into.length, this.size - at);
    let filled = 0;
    for (let n = 1; filled < wanted && n > 0; filled += n) n = this.#fs.readSync(fd, into, filled, wanted - filled, at + filled);
    if (filled < wanted) this.#trouble = 'it was changed while it was read';
    return filled;
  }

  #opened<T>(work: (fd: number) => T): T | undefined {
    try {
      const fd = this.#fs.openSync(this.path, 'r');
      try {
        return work(fd);
      } finally {
        this.#fs.closeSync(fd);
      }
    } catch (thrown) {
      const code = errorCode(thrown);
      if (code === undefined) throw thrown;
      this.#trouble = `${meaningOf(code)} (${code})`;
      return undefined;
    }
  }
}

function stampOf({ size, mtimeNs, ctimeNs, ino }: { size: bigint; mtimeNs: bigint; ctimeNs: bigint; ino: bigint }): string {
  return `${size} ${mtimeNs} ${ctimeNs} ${ino}`;
}

export function megabytes(bytes: number): string {
  return `${Math.ceil(bytes / (1024 * 1024))} MB`;
}
