// The files of a moving picture, all made in one pass over its frames.
import { drawFrames, type Moving } from './frames.js';
import { pngOf, webpOf } from './pixels.js';
import { animatedWebp, milliseconds, type Still } from './webp.js';

export interface Wanted {
  webp: boolean;
  png: boolean;
  /** Each is fed every frame, repeated for as long as it stands. */
  films: readonly ((frame: Uint8Array) => Promise<void>)[];
}

export interface MadeFiles {
  webp?: Buffer;
  /** One an instant; a frame that stands is there as often as it stands, as one and the same buffer. */
  pngs?: Buffer[];
}

/** How many boxes are drawn, and how many images packed, at a time. */
const inFlight = 2;

/** The smallest part there can be, where a picture begins with an empty frame. */
const nothing = { left: 0, top: 0, width: 2, height: 2, pixels: Buffer.alloc(16) };

export async function makeFiles(moving: Moving, rate: number, wanted: Wanted): Promise<MadeFiles> {
  const { width, height, frames } = moving;
  const lasts = milliseconds(frames.map((f) => f.stands), rate);
  const stills: Promise<Still>[] = [];
  const pngs: Promise<Buffer>[] = [];
  const packing = new Set<Promise<unknown>>();
  const pack = <T>(work: Promise<T>): Promise<T> => {
    const done: Promise<unknown> = work.then(() => packing.delete(done), () => packing.delete(done));
    packing.add(done);
    return work;
  };
  let i = 0;
  for await (const { pixels, changed, stands } of drawFrames(moving, inFlight)) {
    const lasting = lasts[i++]!;
    if (wanted.webp) {
      const part = changed ?? (stills.length === 0 ? nothing : undefined);
      if (part) stills.push(pack(webpOf(part.pixels, part.width, part.height).then((image): Still => ({ ...part, image, lasts: lasting }))));
      else stills.push(stills.pop()!.then((s) => ({ ...s, lasts: s.lasts + lasting })));
    }
    if (wanted.png) {
      const png = changed || pngs.length === 0 ? pack(pngOf(Buffer.from(pixels), width, height)) : pngs.at(-1)!;
      for (let n = 0; n < stands; n++) pngs.push(png);
    }
    for (const film of wanted.films) for (let n = 0; n < stands; n++) await film(pixels);
    while (packing.size >= 2 * inFlight) await Promise.race(packing);
  }
  const [webp, sequence] = await Promise.all([Promise.all(stills), Promise.all(pngs)]);
  return { ...(wanted.webp && { webp: animatedWebp(width, height, webp) }), ...(wanted.png && { pngs: sequence }) };
}
