// Shapes and measures that no theme changes.

export interface Rect {
  x: number;
  y: number;
  width: number;
  height: number;
}

export function safeArea(width: number, height: number, inset: number): Rect {
  return { x: width * inset, y: height * inset, width: width * (1 - 2 * inset), height: height * (1 - 2 * inset) };
}

export type Weight = 500 | 600 | 700;

export interface TextStyle {
  size: number;
  weight: Weight;
  /** Figures of one width, for columns. */
  tabular?: boolean;
}

/** Height of an Inter capital and depth of its descender, as shares of the size (from the font's own tables). */
export const capHeight = 1490 / 2048;
export const descent = 0.21;
export const lineHeight = 1.16;

/** A picture is for a phone in the hand: more rows than this are split. */
export const mostRows = 6;
