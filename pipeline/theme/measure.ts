// How wide a text really is, and which of its characters the typeface lacks.
import type { GlyphRun } from 'fontkit';
import { font } from './font.js';
import type { TextStyle, Weight } from './sizes.js';

const runs = new Map<string, GlyphRun>();

/** The shaped text in font units; kept, because labels repeat. */
export function shape(text: string, weight: Weight, tabular = false): GlyphRun {
  const key = `${weight}${tabular ? 't' : 'p'}${text}`;
  let run = runs.get(key);
  if (!run) {
    run = font(weight).layout(text.normalize('NFC'), tabular ? ['tnum'] : []);
    runs.set(key, run);
  }
  return run;
}

/** Width in pixels. */
export function measure(text: string, style: TextStyle, letterSpacing = 0): number {
  if (!text) return 0;
  const run = shape(text, style.weight, style.tabular);
  return (run.advanceWidth * style.size) / font(style.weight).unitsPerEm + letterSpacing * run.glyphs.length;
}

/** From the pen's start to the ink of the first character, in pixels: large figures are set by their ink. */
export function inkLeft(text: string, style: TextStyle): number {
  const first = shape(text, style.weight, style.tabular).glyphs[0];
  return first ? (first.bbox.minX * style.size) / font(style.weight).unitsPerEm : 0;
}

/** The characters that would come out as an empty box, each once, in order. */
export function missingGlyphs(text: string, weight: Weight = 500): string[] {
  const face = font(weight);
  return [...new Set(text.normalize('NFC'))].filter((c) => !face.hasGlyphForCodePoint(c.codePointAt(0)!));
}
