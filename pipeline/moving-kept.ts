// The files of a moving picture in the cache: one entry a format, a sequence as its distinct frames and the order in which they stand.
import type { Cache } from './files/index.js';
import type { MotionFormat } from './theme/index.js';

export interface Made {
  format: MotionFormat;
  /** What follows `NN-NAME-`. */
  path: string;
  bytes: Uint8Array;
}

export function keep(cache: Cache, key: string, files: readonly Made[]): void {
  for (const { format, bytes } of files) if (format !== 'png') cache.put(`motion-${format}`, key, bytes);
  const sequence = files.filter((f) => f.format === 'png').map((f) => f.bytes);
  if (sequence.length > 0) cache.put('motion-png', key, pack(sequence));
}

/** All of them, or undefined where one is missing. */
export function kept(cache: Cache, key: string, formats: readonly MotionFormat[], width: number, height: number): Made[] | undefined {
  const made: Made[] = [];
  for (const format of formats) {
    const bytes = cache.get(`motion-${format}`, key);
    const parts = bytes && format === 'png' ? unpack(bytes) : bytes && [bytes];
    if (!parts) return undefined;
    made.push(...parts.map((b, i): Made => ({ format, path: `${width}x${height}${format === 'png' ? `/${String(i + 1).padStart(4, '0')}` : ''}.${format}`, bytes: b })));
  }
  return made;
}

/** A frame that stands is kept once. */
function pack(frames: readonly Uint8Array[]): Buffer {
  const distinct = [...new Set(frames)];
  const head = Buffer.from(JSON.stringify({ lengths: distinct.map((f) => f.length), order: frames.map((f) => distinct.indexOf(f)) }));
  const size = Buffer.alloc(4);
  size.writeUInt32LE(head.length);
  return Buffer.concat([size, head, ...distinct]);
}

function unpack(bytes: Buffer): Buffer[] | undefined {
  try {
    const from = 4 + bytes.readUInt32LE(0);
    const { lengths, order } = JSON.parse(bytes.toString('utf8', 4, from)) as { lengths: number[]; order: number[] };
    let at = from;
    const distinct = lengths.map((n) => bytes.subarray(at, (at += n)));
    return order.map((i) => distinct[i]!);
  } catch {
    return undefined;
  }
}
