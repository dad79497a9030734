// Text into the room that there is: it fits, or it fits on more lines, or it is a misfit; it is never shrunk or cut.
import { measure, missingGlyphs } from './measure.js';
import type { TextStyle } from './sizes.js';

/** Why a text cannot be shown as it is; the renderers make findings of it. */
export interface Misfit {
  code: 'label-too-long' | 'missing-glyph';
  text: string;
  message: string;
}

/** Breaks at spaces (not at no-break and thin ones) into as few lines as need be, the lines as even as can be. */
export function wrap(text: string, style: TextStyle, width: number, most: number): { lines: string[] } | { misfit: Misfit } {
  const words = text.trim().split(/[ \t\n]+/);
  const lines = greedy(words, style, width);
  if (!lines || lines.length > most) return { misfit: tooLong(text, style, width, most) };
  if (lines.length === 1) return { lines };
  const widest = Math.max(...lines.map((l) => measure(l, style)));
  let best = lines;
  for (let w = width; w > widest / 2; w -= 8) {
    const tighter = greedy(words, style, w);
    if (!tighter || tighter.length > lines.length) break;
    best = tighter;
  }
  return { lines: best };
}

/** Undefined when it fits in one line. */
export function misfit(text: string, style: TextStyle, width: number): Misfit | undefined {
  return measure(text, style) > width + 0.5 ? tooLong(text, style, width, 1) : undefined;
}

/** Characters that the bundled typeface has no shape for. */
export function unshown(text: string): Misfit | undefined {
  const missing = missingGlyphs(text);
  if (missing.length === 0) return undefined;
  const list = missing.slice(0, 5).map((c) => `${/\p{C}|\p{Z}/u.test(c) ? '' : `${c} `}(U+${c.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')})`);
  return { code: 'missing-glyph', text, message: `pictures cannot show ${list.join(', ')}${missing.length > 5 ? ' and others' : ''} in "${printable(text)}": the bundled typeface has no shape for ${missing.length === 1 ? 'it' : 'them'}` };
}

function greedy(words: string[], style: TextStyle, width: number): string[] | undefined {
  const lines: string[] = [];
  for (const word of words) {
    const longer = lines.length ? `${lines.at(-1)!} ${word}` : word;
    if (lines.length && measure(longer, style) <= width) lines[lines.length - 1] = longer;
    else if (measure(word, style) <= width) lines.push(word);
    else return undefined;
  }
  return lines;
}

function tooLong(text: string, style: TextStyle, width: number, most: number): Misfit {
  const needed = Math.ceil(measure(text, style));
  return {
    code: 'label-too-long', text,
    message: `"${printable(text)}" is ${needed} px wide at size ${style.size}, and there is room for ${Math.floor(width)} px${most > 1 ? ` on each of ${most} lines` : ''}; shorten it`,
  };
}

function printable(text: string): string {
  const plain = text.replace(/\p{C}/gu, '·');
  return plain.length > 90 ? `${plain.slice(0, 89)}…` : plain;
}
