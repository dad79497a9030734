// Text into the room that there is: it fits, or it fits on more lines, or it is a misfit; it is never shrunk or cut.
import { measure, missingGlyphs } from './measure.js';
import type { TextStyle } from './sizes.js';

/** Why a text cannot be shown as it is; the renderers make findings of it. */
export interface Misfit {
  code: 'label-too-long' | 'missing-glyph' | 'too-many-rows';
  text: string;
  message: string;
}

/**
 * Breaks into as few lines as need be, the lines as even as can be: between the parts of "a · b · c" first (the dot goes),
 * else at spaces, where need be within a part and not at its dot; never at no-break or thin spaces, nor between a number and its unit.
 */
export function wrap(text: string, style: TextStyle, width: number, most: number): { lines: string[] } | { misfit: Misfit } {
  const whole = text.trim();
  if (measure(whole, style) <= width + 0.5) return { lines: [whole] };
  const parts = whole.split(dot);
  for (const [pieces, joint] of [[parts, dot], ...(parts.length === 1 ? [[words(whole), ' '] as const] : [])] as const) {
    const lines = greedy(pieces, joint, style, width);
    if (!lines || lines.length > most) continue;
    const widest = Math.max(...lines.map((l) => measure(l, style)));
    let best = lines;
    for (let w = width; w > widest / 2; w -= 8) {
      const tighter = greedy(pieces, joint, style, w);
      if (!tighter || tighter.length > lines.length) break;
      best = tighter;
    }
    return { lines: best };
  }
  if (parts.length > 1) {
    const each = parts.map((p) => wrap(p, style, width, most));
    const lines = each.flatMap((w) => ('lines' in w ? w.lines : []));
    if (lines.length <= most && each.every((w) => 'lines' in w)) return { lines };
    const held = wrap(whole.replaceAll(dot, '\u00a0·\u00a0'), style, width, most);
    if ('lines' in held) return held;
  }
  return { misfit: tooLong(text, style, width, most) };
}

const dot = ' · ';

function words(text: string): string[] {
  return text.replace(/(\d) (?=(?:%|°|\p{L}{1,3}(?!\p{L})))/gu, '$1\u00a0').split(/[ \t\n]+/);
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
  return { code: 'missing-glyph', text, message: `pictures cannot show ${list.join(', ')}${missing.length > 5 ? ' and others' : ''} in "${brief(text)}": the bundled typeface has no shape for ${missing.length === 1 ? 'it' : 'them'}` };
}

function greedy(pieces: readonly string[], joint: string, style: TextStyle, width: number): string[] | undefined {
  const lines: string[] = [];
  for (const piece of pieces) {
    const longer = lines.length ? lines.at(-1)! + joint + piece : piece;
    if (lines.length && measure(longer, style) <= width) lines[lines.length - 1] = longer;
    else if (measure(piece, style) <= width) lines.push(piece);
    else return undefined;
  }
  return lines;
}

function tooLong(text: string, style: TextStyle, width: number, most: number): Misfit {
  const needed = Math.ceil(measure(text, style));
  return {
    code: 'label-too-long', text,
    message: `"${brief(text)}" is ${needed} px wide at size ${style.size}, and there is room for ${Math.floor(width)} px${most > 1 ? ` on each of ${most} lines` : ''}; shorten it`,
  };
}

/** A text as a message names it: fit to be printed, and cut where nobody would read on. */
export function brief(text: string): string {
  const plain = text.replace(/\p{C}/gu, '·');
  return plain.length > 60 ? `${plain.slice(0, 59)}…` : plain;
}
