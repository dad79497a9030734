// A file of any encoding as UTF-8, block by block, in order or not.
import { type Bytes, stretch } from './bytes.js';
import { type ChosenEncoding, windows1252 } from './encoding.js';

type Label = ChosenEncoding['label'];

/** Bytes of the file in a block, unless another size is asked for. */
export const usualBlock = 256 * 1024;

export class Blocks {
  /** Where each block begins in the UTF-8 text; known as far as the blocks were read in order. Eight bytes a block. */
  readonly starts = [0];
  readonly count: number;
  readonly #bytes: Bytes;
  readonly #encoding: Label;
  readonly #mark: number;
  readonly #size: number;

  /** `mark` is the length of the byte order mark. */
  constructor(bytes: Bytes, encoding: Label, mark: number, size = usualBlock) {
    this.#bytes = bytes;
    this.#encoding = encoding;
    this.#mark = mark;
    this.#size = encoding.startsWith('utf-16') ? Math.max(2, size & ~1) : size;
    this.count = Math.ceil((bytes.size - mark) / this.#size);
  }

  /** The bytes that a block has at most. */
  get longest(): number {
    return this.#encoding === 'windows-1252' ? 3 * this.#size : 2 * this.#size;
  }

  /** Writes block `i` into `into` from `at` on and gives its length; undefined for UTF-16 that pairs its surrogates wrongly. */
  read(i: number, into: Uint8Array, at: number): number | undefined {
    const from = this.#mark + i * this.#size;
    let length: number;
    if (this.#encoding === 'utf-8') length = this.#bytes.read(into.subarray(at, at + Math.min(this.#size, this.#bytes.size - from)), from);
    else {
      const text = this.#text(i, from);
      if (!text) return undefined;
      into.set(text, at);
      length = text.length;
    }
    if (i + 1 === this.starts.length) this.starts.push(this.starts[i]! + length);
    return length;
  }

  #text(i: number, from: number): Uint8Array | undefined {
    return this.#encoding.startsWith('utf-16') ? this.#fromUtf16(from, i === 0) : utf8From1252(stretch(this.#bytes, from, from + this.#size));
  }

  /** The block that holds a position of the UTF-8 text. */
  blockAt(position: number): number {
    let low = 0;
    let high = Math.min(this.starts.length, this.count) - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.starts[middle]! <= position) low = middle;
      else high = middle - 1;
    }
    return Math.max(0, low);
  }

  /** A pair that the border of two blocks cuts belongs to the later one. */
  #fromUtf16(from: number, first: boolean): Uint8Array | undefined {
    const big = this.#encoding === 'utf-16be';
    const lead = (b: Uint8Array, at: number): boolean => at >= 0 && at + 1 < b.length && (b[at + (big ? 0 : 1)]! & 0xfc) === 0xd8;
    const units = stretch(this.#bytes, first ? from : from - 2, from + this.#size);
    const start = first || lead(units, 0) ? 0 : 2;
    const end = from + this.#size < this.#bytes.size && lead(units, units.length - 2) ? units.length - 2 : units.length;
    try {
      return new TextEncoder().encode(new TextDecoder(big ? 'utf-16be' : 'utf-16le', { fatal: true, ignoreBOM: true }).decode(units.subarray(start, Math.max(start, end))));
    } catch {
      return undefined;
    }
  }
}

const upper = Array.from(windows1252.slice(128), (c) => new TextEncoder().encode(c));

function utf8From1252(bytes: Uint8Array): Uint8Array {
  const out = new Uint8Array(bytes.length * 3);
  let at = 0;
  for (const b of bytes) {
    if (b < 128) out[at++] = b;
    else for (const c of upper[b - 128]!) out[at++] = c;
  }
  return out.subarray(0, at);
}
