// How all pictures look, as one value: it is read from a file that a person can replace (templates/themes).
import type { TextStyle } from './sizes.js';

/** What a colour is for. */
export const colourNames = ['panel', 'text', 'quiet', 'muted', 'plain', 'highlight', 'rule', 'band', 'stamp'] as const;
export type Colour = (typeof colourNames)[number];
/** sRGB, "#rrggbb". */
export type Colours = Readonly<Record<Colour, string>>;

export const typeNames = ['small', 'name', 'value', 'title', 'heading', 'figure'] as const;
export type TypeScale = Readonly<Record<(typeof typeNames)[number], TextStyle>>;

export const spaceNames = ['hair', 'tight', 'small', 'medium', 'large'] as const;
export type Space = Readonly<Record<(typeof spaceNames)[number], number>>;

export const strokeNames = ['hair', 'line', 'strong'] as const;
export type Stroke = Readonly<Record<(typeof strokeNames)[number], number>>;

export interface Motion {
  /** Frames per second. */
  rate: number;
  /** Frames in which a graphic comes, stands and goes. */
  come: number;
  stand: number;
  go: number;
  /** x1 y1 x2 y2 of a cubic curve from 0 0 to 1 1. */
  easing: readonly [number, number, number, number];
}

export interface Theme {
  name: string;
  colours: Colours;
  /** Opacity from 0 to 1; corner in pixels. */
  panel: { opacity: number; corner: number };
  /** Sizes, spaces and strokes in pixels of a picture 1920 wide. */
  type: TypeScale;
  space: Space;
  stroke: Stroke;
  motion: Motion;
}
