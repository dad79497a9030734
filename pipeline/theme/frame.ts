// What every full picture has around its body: panel, title, subtitle, legend, foot.
import { type Colour, colours, panelOpacity } from './colours.js';
import { type Misfit, misfit, unshown, wrap } from './fit.js';
import { type Line, svgRect, svgText } from './line.js';
import { measure } from './measure.js';
import { box, capHeight, content, lineHeight, panel, type Rect, space, type } from './sizes.js';
import { escapeXml } from './xml.js';

export interface Heading {
  title: string;
  /** What is measured, in which unit, which end is better. */
  subtitle: string;
  legend?: { label: string; colour: Colour; shape?: 'square' | 'dot' | 'tick' }[];
  /** Runs, room, anything that a careful viewer asks. */
  foot: string;
}

export interface Frame {
  /** Where the body stands. */
  body: Rect;
  /** SVG of everything but the panel and the body. */
  svg: string;
  misfits: Misfit[];
}

const width = content.right - content.left;
const swatch = 36;

export function frame({ title, subtitle, legend = [], foot }: Heading): Frame {
  const misfits: Misfit[] = [];
  const lines: Line[] = [];
  let rects = '';
  for (const text of [title, subtitle, foot, ...legend.map((l) => l.label)]) {
    const bad = unshown(text);
    if (bad) misfits.push(bad);
  }
  const legendWidth = legend.reduce((sum, l) => sum + swatch + space.tight + measure(l.label, type.small) + space.medium, -space.medium);
  const set = (text: string, style: Line['style'], room: number, most: number): string[] => {
    const wrapped = wrap(text, style, room, most);
    if ('lines' in wrapped) return wrapped.lines;
    misfits.push(wrapped.misfit);
    return [text];
  };

  let y = content.top + capHeight * type.title.size;
  const titles = set(title, type.title, width, 1);
  for (const text of titles) lines.push({ text, x: content.left, y, style: type.title, colour: 'text' });
  y += 68;
  const room = legend.length ? width - legendWidth - space.large : width;
  if (subtitle) {
    const whole = misfit(subtitle, type.small, room);
    const subtitles = whole ? set(subtitle, type.small, room, 2) : [subtitle];
    subtitles.forEach((text, i) => lines.push({ text, x: content.left, y: y + i * type.small.size * lineHeight, style: type.small, colour: 'quiet' }));
    if (legend.length) {
      let x = content.right - legendWidth;
      for (const { label, colour, shape } of legend) {
        rects += mark(x, y - capHeight * type.small.size / 2, colour, shape);
        lines.push({ text: label, x: x + swatch + space.tight, y, style: type.small, colour: 'text' });
        x += swatch + space.tight + measure(label, type.small) + space.medium;
      }
    }
    y += (subtitles.length - 1) * type.small.size * lineHeight;
  }

  let bottom: number = content.bottom;
  if (foot) {
    const feet = set(foot, type.small, width, 2);
    feet.reverse().forEach((text, i) => lines.push({ text, x: content.left, y: content.bottom - i * type.small.size * lineHeight, style: type.small, colour: 'quiet' }));
    bottom -= type.small.size * (capHeight + (feet.length - 1) * lineHeight) + 30;
  }
  const top = y + space.medium + 4;
  return { body: { x: content.left, y: top, width, height: bottom - top }, svg: rects + lines.map(svgText).join(''), misfits };
}

function mark(x: number, middle: number, colour: Colour, shape = 'square'): string {
  if (shape === 'dot') return `<circle cx="${x + swatch / 2}" cy="${Math.round(middle)}" r="${swatch / 2 - 3}" fill="${colours[colour]}"/>`;
  if (shape === 'tick') return svgRect(x + swatch / 2 - 5, Math.round(middle) - swatch / 2 - 4, 10, swatch + 8, colour, 3);
  return svgRect(x, Math.round(middle) - swatch / 2, swatch, swatch, colour, 4);
}

export interface SheetParts {
  title: string;
  alt: string;
  /** The parts that lie on the panel. */
  inside: string;
  panel?: Rect & { radius: number };
  opaque?: boolean;
  draft?: boolean;
}

/** A whole picture. `title` and `alt` are read out in its place. */
export function sheet({ title, alt, inside, panel: at = panel, opaque, draft }: SheetParts): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${box.width}" height="${box.height}" viewBox="0 0 ${box.width} ${box.height}" role="img" aria-labelledby="title alt">`
    + `<title id="title">${escapeXml(title)}</title><desc id="alt">${escapeXml(alt)}</desc>`
    + `<rect x="${at.x}" y="${at.y}" width="${at.width}" height="${at.height}" rx="${at.radius}" fill="${colours.panel}"${opaque ? '' : ` fill-opacity="${panelOpacity}"`}/>`
    + inside + (draft ? stamp(at) : '') + '</svg>';
}

/** Across the whole panel and translucent, so that it hides nothing and nobody can miss it. */
function stamp(at: Rect): string {
  const size = Math.round(Math.min(at.width / 3.4, at.height / 2, 360));
  const x = at.x + at.width / 2;
  const y = at.y + at.height / 2;
  const lean = Math.min(at.height / at.width, 0.36) * 40;
  return `<g transform="translate(${x} ${y}) rotate(-${Math.round(lean)})"><text x="0" y="${Math.round(size * capHeight / 2)}" text-anchor="middle" font-family="Inter, sans-serif" font-size="${size}" font-weight="700" letter-spacing="${Math.round(size / 12)}" fill="${colours.stamp}" fill-opacity="0.3">DRAFT</text></g>`;
}
