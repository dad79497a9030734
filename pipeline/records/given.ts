// The files of an episode as they were read, by the path that the record names them with.
import { decode, type Encoding } from '../logs/index.js';
import type { Source } from '../places/index.js';
import type { Outline, Want } from './outline.js';

export class Given {
  readonly #files: ReadonlyMap<string, Uint8Array | { error: string }>;
  readonly #outline: Outline;
  readonly #folder: string;

  constructor(files: ReadonlyMap<string, Uint8Array | { error: string }>, outline: Outline) {
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
  bytes(path: string, want: Want): Uint8Array | undefined {
    const file = this.#files.get(path);
    if (file instanceof Uint8Array) return file;
    this.#outline.ctx.reader.fail(want.place, 'file-missing', `the file ${path} cannot be read: ${file?.error ?? 'there is no such file'}`, { said: path, subject: path });
    return undefined;
  }

  text(path: string, want: Want, encoding?: Encoding): Source | undefined {
    const bytes = this.bytes(path, want);
    const decoded = bytes && decode(this.name(path), bytes, encoding);
    if (decoded) this.#outline.ctx.reader.findings.push(...decoded.findings);
    return decoded?.value;
  }
}
