// What the record says of pictures that move.
import { type Build, builds, type MotionFormat, motionFormats, pictureSizes } from '../theme/index.js';
import type { Place } from '../places/index.js';
import { byKind, choice, fields, list, type Read, type Shape, turned } from './shape.js';
import { texts } from './plain-shapes.js';

/** The pictures that move, besides those that say so themselves, and the files made of them. */
export interface MotionRequest {
  build?: Build | 'none';
  /** Names of the pictures that it holds for; all where nothing is said. */
  only?: { text: string; place: Place }[];
  formats: { value: MotionFormat; place: Place }[];
  sizes?: { size: string; place: Place }[];
  place: Place;
}

const says = 'Whether pictures come in, go out, or both.';
/** For one picture. */
export const motionOf = choice([...builds, 'none'], says);

const full = fields({
  pictures: motionOf,
  only: texts('Names of the pictures that it holds for; all where nothing is said.'),
  formats: list(choice(motionFormats, 'Kind of file.'), 'Files that are made: webp (animated), png (a sequence), mov and webm (films with alpha, by ffmpeg); webp and png where nothing is said.', true),
  sizes: list(choice(pictureSizes.map((s) => `${s.width}x${s.height}`), 'Width and height in pixels.'), 'Sizes that move; the first of the picture where nothing is said.', true),
}, { expects: 'a map of pictures, only, formats, sizes' });

type Full = Read<typeof full>;

export const motion: Shape<MotionRequest> = byKind<MotionRequest>({
  scalar: turned(motionOf, (c) => ({ build: c.value, formats: [], place: c.place })),
  map: turned(full, ({ fields: f, place }: Full) => ({
    ...(f.pictures && { build: f.pictures.value }), ...(f.only && { only: f.only.map(({ text, place: at }) => ({ text, place: at })) }),
    formats: (f.formats ?? []).map(({ value, place: at }) => ({ value, place: at })),
    ...(f.sizes && { sizes: f.sizes.map(({ value, place: at }) => ({ size: value, place: at })) }), place: f.pictures?.place ?? place,
  })),
}, 'one of in, in-out, out, none, or a map of pictures, only, formats, sizes', 'Pictures that move: {pictures: in-out, only: [between-setups], formats: [webp, mov]}');
