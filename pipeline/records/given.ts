// The files of an episode as they were read, by the path that the record names them with.
import { type Bytes, decode, type Encoding } from '../logs/index.js';
import type { Source } from '../places/index.js';
import type { Outline, Want } from './outline.js';

/** The bytes of a file; those of a large one by stretches, or `whole`; or why they cannot be had. */
export type GivenFile = Uint8Array | (Bytes & { whole(): Uint8Array | { error: string } }) | { error: string };

export class Given {
  readonly #files: ReadonlyMap<string, GivenFile>;
  readonly #outline: Outline;
  readonly #folder: string;

  constructor(files: ReadonlyMap<string, GivenFile>, outline: Outline) {
    this.#files = files;
    this.#outline = outline;
    const { file } = outline.source;
    this.#folder = file.slice(0, file.lastIndexOf('/') + 1);
  }

  /** The paths of all files that could be read or not, patterns left out. */
  paths(): string[] {
    return [...this.#files.keys()].filter((p) => !/[{}]/.test(p));
  }

  /** The file's name as findings show it. */
  name(path: string): string {
    const beside = /^\.\.\/(.+)$/.exec(path)?.[1];
    return beside === undefined ? this.#folder + path : this.#folder.replace(/[^/]+\/$/, '') + beside;
  }

  /** Undefined, and a finding, for a file that is not there. */
  bytes(path: string, want: Want): Uint8Array | Bytes | undefined {
    const file = this.#files.get(path);
    return file && !('error' in file) ? file : this.#missing(path, want, file);
  }

  #missing(path: string, want: Want, file: { error: string } | undefined): undefined {
    this.#outline.ctx.reader.fail(want.place, 'file-missing', `the file ${path} cannot be read: ${file?.error ?? 'there is no such file'}`, { said: path, subject: path });
    return undefined;
  }

  text(path: string, want: Want, encoding?: Encoding): Source | undefined {
    const file = this.#files.get(path);
    const bytes = file && 'whole' in file ? file.whole() : file;
    if (!bytes || 'error' in bytes) return this.#missing(path, want, bytes);
    const decoded = decode(this.name(path), bytes, encoding);
    this.#outline.ctx.reader.findings.push(...decoded.findings);
    return decoded.value;
  }
}
