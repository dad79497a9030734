// Sizes in pixels of a 1920×1080 picture; other sizes are drawn by scaling the whole.

export const box = { width: 1920, height: 1080 } as const;

export interface Rect {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** Inset of the area for text, per edge and as a share (EBU R 95, SMPTE ST 2046-1: 5 %; action 3.5 %). */
export const insets = { text: 0.05, action: 0.035 } as const;

export function safeArea(width: number, height: number, inset: number): Rect {
  return { x: width * inset, y: height * inset, width: width * (1 - 2 * inset), height: height * (1 - 2 * inset) };
}

/** Nothing below 44, names and figures from 48 on. */
export const type = {
  small: { size: 44, weight: 500 },
  name: { size: 50, weight: 600 },
  value: { size: 52, weight: 700, tabular: true },
  title: { size: 64, weight: 700 },
  heading: { size: 104, weight: 700 },
  figure: { size: 208, weight: 700 },
} as const satisfies Record<string, TextStyle>;

export type Weight = 500 | 600 | 700;

export interface TextStyle {
  size: number;
  weight: Weight;
  /** Figures of one width, for columns. */
  tabular?: boolean;
}

/** Space between things, in steps. */
export const space = { hair: 8, tight: 16, small: 24, medium: 40, large: 64 } as const;

export const stroke = { hair: 2, line: 5, strong: 8 } as const;

/** Height of an Inter capital and depth of its descender, as shares of the size (from the font's own tables). */
export const capHeight = 1490 / 2048;
export const descent = 0.21;
export const lineHeight = 1.16;

export const panel = { x: 40, y: 40, width: 1840, height: 1000, radius: 14 } as const;
/** Where the text of a full picture stands. */
export const content = { left: 104, right: 1816, top: 104, bottom: 984 } as const;

/** A picture is for a phone in the hand: more rows than this are split. */
export const mostRows = 6;
export const bars = { least: 40, most: 88 } as const;
