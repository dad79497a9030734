// One line of text with its place, and the SVG of it.
import { family } from './font.js';
import type { Rect, TextStyle } from './sizes.js';
import type { Colour, Colours } from './theme.js';
import { escapeXml } from './xml.js';

export interface Line {
  text: string;
  x: number;
  /** Of the baseline. */
  y: number;
  style: TextStyle;
  colour: Colour;
  anchor?: 'start' | 'middle' | 'end';
  /** When it comes, where the picture moves: a role of motion; else by its kind. */
  build?: string;
}

export function svgText({ text, x, y, style, colour, anchor = 'start', build }: Line, colours: Colours): string {
  const at = anchor === 'start' ? '' : ` text-anchor="${anchor}"`;
  const figures = style.tabular ? ' font-feature-settings="tnum"' : '';
  const moves = build ? ` data-build="${build}"` : '';
  return `<text${moves} x="${px(x)}" y="${px(y)}"${at} font-family="${family}, sans-serif" font-size="${style.size}" font-weight="${style.weight}"${figures} fill="${colours[colour]}">${escapeXml(text)}</text>`;
}

export function svgRect({ x, y, width, height }: Rect, fill: string, radius = 0): string {
  return `<rect x="${px(x)}" y="${px(y)}" width="${px(width)}" height="${px(height)}"${radius ? ` rx="${radius}"` : ''} fill="${fill}"/>`;
}

function px(n: number): string {
  return String(Math.round(n * 100) / 100);
}
