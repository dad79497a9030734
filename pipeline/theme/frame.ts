// What every full picture has around its body: panel, title, subtitle, legend, foot.
import { type Misfit, misfit, unshown, wrap } from './fit.js';
import { type Line, svgRect, svgText } from './line.js';
import { measure } from './measure.js';
import { capHeight, lineHeight, type Rect } from './sizes.js';
import type { Stage } from './stage.js';
import type { Colour } from './theme.js';
import { escapeXml } from './xml.js';

export interface LegendEntry {
  label: string;
  colour: Colour;
  shape?: 'square' | 'dot' | 'tick';
}

export interface Heading {
  title: string;
  /** What is measured, in which unit, which end is better. */
  subtitle: string;
  legend?: LegendEntry[];
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

const swatch = 36;

export function frame(stage: Stage, { title, subtitle, legend = [], foot }: Heading): Frame {
  const { content, type, space, colours, narrow } = stage;
  const width = content.right - content.left;
  const most = width < 1500 ? { title: 3, subtitle: 3, foot: 4 } : { title: 2, subtitle: 2, foot: 2 };
  const misfits: Misfit[] = [];
  const lines: Line[] = [];
  let marks = '';
  for (const text of [title, subtitle, foot, ...legend.map((l) => l.label)]) {
    const bad = unshown(text);
    if (bad) misfits.push(bad);
  }
  const set = (text: string, style: Line['style'], room: number, most: number): string[] => {
    const wrapped = wrap(text, style, room, most);
    if ('lines' in wrapped) return wrapped.lines;
    misfits.push(wrapped.misfit);
    return [text];
  };
  const pitch = type.small.size * lineHeight;
  const entryWidth = (l: LegendEntry): number => swatch + space.tight + measure(l.label, type.small);
  const widthOf = (entries: readonly LegendEntry[]): number => entries.reduce((sum, l) => sum + entryWidth(l) + space.medium, -space.medium);
  const key = (entries: readonly LegendEntry[], from: number, y: number): void => {
    let x = from;
    for (const entry of entries) {
      marks += mark(x, y - (capHeight * type.small.size) / 2, colours[entry.colour], entry.shape);
      lines.push({ text: entry.label, x: x + swatch + space.tight, y, style: type.small, colour: 'text' });
      x += entryWidth(entry) + space.medium;
    }
  };

  let y = content.top + capHeight * type.title.size;
  const titles = set(title, type.title, width, most.title);
  titles.forEach((text, i) => lines.push({ text, x: content.left, y: y + i * type.title.size * lineHeight, style: type.title, colour: 'text' }));
  y += (titles.length - 1) * type.title.size * lineHeight;
  const left = width - widthOf(legend) - space.large;
  const beside = legend.length > 0 && !narrow && 'lines' in wrap(subtitle, type.small, left, 2);
  if (subtitle || beside) {
    y += 68;
    const room = beside ? left : width;
    const subtitles = subtitle && misfit(subtitle, type.small, room) ? set(subtitle, type.small, room, most.subtitle) : [subtitle];
    subtitles.filter(Boolean).forEach((text, i) => lines.push({ text, x: content.left, y: y + i * pitch, style: type.small, colour: 'quiet' }));
    if (beside) key(legend, content.right - widthOf(legend), y);
    y += (subtitles.length - 1) * pitch;
  }
  if (legend.length > 0 && !beside) {
    for (const row of rowsOf(legend, width, widthOf)) {
      y += 64;
      key(row, content.left, y);
      for (const entry of row) if (entryWidth(entry) > width) misfits.push(misfit(entry.label, type.small, width - swatch - space.tight)!);
    }
  }

  let bottom: number = content.bottom;
  if (foot) {
    const feet = set(foot, type.small, width, most.foot);
    feet.reverse().forEach((text, i) => lines.push({ text, x: content.left, y: content.bottom - i * pitch, style: type.small, colour: 'quiet' }));
    bottom -= type.small.size * capHeight + (feet.length - 1) * pitch + 30;
  }
  const top = y + space.medium + 4;
  return { body: { x: content.left, y: top, width, height: bottom - top }, svg: marks.replace(/<(rect|circle) /g, '<$1 data-build="words" ') + lines.map((l) => svgText(l, colours)).join(''), misfits };
}

/** As many entries in a line as have room in it. */
function rowsOf(legend: readonly LegendEntry[], width: number, widthOf: (entries: readonly LegendEntry[]) => number): LegendEntry[][] {
  const rows: LegendEntry[][] = [];
  for (const entry of legend) {
    const last = rows.at(-1);
    if (last && widthOf([...last, entry]) <= width) last.push(entry);
    else rows.push([entry]);
  }
  return rows;
}

function mark(x: number, middle: number, fill: string, shape = 'square'): string {
  const y = Math.round(middle);
  if (shape === 'dot') return `<circle cx="${x + swatch / 2}" cy="${y}" r="${swatch / 2 - 3}" fill="${fill}"/>`;
  if (shape === 'tick') return svgRect({ x: x + swatch / 2 - 5, y: y - swatch / 2 - 4, width: 10, height: swatch + 8 }, fill, 3);
  return svgRect({ x, y: y - swatch / 2, width: swatch, height: swatch }, fill, 4);
}

export interface SheetParts {
  title: string;
  alt: string;
  /** The parts that lie on the panel. */
  inside: string;
  panel?: Rect;
  opaque?: boolean;
  draft?: boolean;
}

/** A whole picture. `title` and `alt` are read out in its place. */
export function sheet(stage: Stage, { title, alt, inside, panel: at = stage.panel, opaque = stage.opaque, draft }: SheetParts): string {
  const { width, height, colours, theme } = stage;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img" aria-labelledby="title alt">`
    + `<title id="title">${escapeXml(title)}</title><desc id="alt">${escapeXml(alt)}</desc>`
    + `<rect x="${at.x}" y="${at.y}" width="${at.width}" height="${at.height}" rx="${stage.opaque ? 0 : theme.panel.corner}" fill="${colours.panel}"${opaque ? '' : ` fill-opacity="${theme.panel.opacity}"`}/>`
    + inside + (draft ? stamp(at, colours.stamp) : '') + '</svg>';
}

/** Across the whole panel and translucent, so that it hides nothing and nobody can miss it. */
function stamp(at: Rect, fill: string): string {
  const size = Math.round(Math.min(at.width / 3.4, at.height / 2, 360));
  const x = at.x + at.width / 2;
  const y = at.y + at.height / 2;
  const lean = Math.min(at.height / at.width, 0.36) * 40;
  return `<g data-build="panel" transform="translate(${x} ${y}) rotate(-${Math.round(lean)})"><text x="0" y="${Math.round(size * capHeight / 2)}" text-anchor="middle" font-family="Inter, sans-serif" font-size="${size}" font-weight="700" letter-spacing="${Math.round(size / 12)}" fill="${fill}" fill-opacity="0.3">DRAFT</text></g>`;
}
