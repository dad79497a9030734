// Animated WebP (RFC 9649): the parts that changed, each a lossless image of its own at its place and time.
import type { Box } from './changes.js';

export interface Still extends Box {
  /** A WebP file of that size. */
  image: Buffer;
  /** Milliseconds. */
  lasts: number;
}

/** Plays `loops` times, 0 for ever, over a transparent ground. Boxes begin at even pixels and replace what was there. */
export function animatedWebp(width: number, height: number, stills: readonly Still[], loops = 1): Buffer {
  const header = Buffer.alloc(10);
  // Alpha and animation.
  header[0] = 0x12;
  header.writeUIntLE(width - 1, 4, 3);
  header.writeUIntLE(height - 1, 7, 3);
  const animation = Buffer.alloc(6);
  animation.writeUInt16LE(loops, 4);
  const frames = stills.map(({ left, top, width: w, height: h, image, lasts }) => {
    if (left % 2 || top % 2) throw new RangeError(`a part of an animation cannot begin at ${left} ${top}: even pixels only`);
    const head = Buffer.alloc(16);
    head.writeUIntLE(left / 2, 0, 3);
    head.writeUIntLE(top / 2, 3, 3);
    head.writeUIntLE(w - 1, 6, 3);
    head.writeUIntLE(h - 1, 9, 3);
    head.writeUIntLE(lasts, 12, 3);
    // Not blended with what was there, and left standing.
    head[15] = 0x02;
    return chunk('ANMF', Buffer.concat([head, imageChunk(image)]));
  });
  const body = Buffer.concat([Buffer.from('WEBP', 'latin1'), chunk('VP8X', header), chunk('ANIM', animation), ...frames]);
  return chunk('RIFF', body);
}

/** The lossless image data of a WebP file, with its own head. */
function imageChunk(file: Buffer): Buffer {
  for (let at = 12; at + 8 <= file.length;) {
    const size = file.readUInt32LE(at + 4);
    if (file.toString('latin1', at, at + 4) === 'VP8L') return chunk('VP8L', file.subarray(at + 8, at + 8 + size));
    at += 8 + size + (size % 2);
  }
  throw new Error('a WebP file without lossless image data');
}

function chunk(name: string, content: Buffer): Buffer {
  const head = Buffer.alloc(8, name, 'latin1');
  head.writeUInt32LE(content.length, 4);
  return Buffer.concat(content.length % 2 ? [head, content, Buffer.alloc(1)] : [head, content]);
}

/** Whole milliseconds a frame, so that no time is lost on the way: 33, 34, 33 … at 30 a second. */
export function milliseconds(stands: readonly number[], rate: number): number[] {
  let frames = 0;
  return stands.map((n) => {
    const begin = Math.round((frames * 1000) / rate);
    frames += n;
    return Math.round((frames * 1000) / rate) - begin;
  });
}
