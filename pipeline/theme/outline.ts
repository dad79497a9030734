// Every text of an SVG as paths, so that its pixels depend on no font set-up at all.
import { textPath, unitsPerEm } from './glyphs.js';
import { nearestWeight } from './font.js';
import { apply, identity, type Matrix, multiply, readTransform } from './matrix.js';
import { measure } from './measure.js';
import { capHeight, descent, type TextStyle } from './sizes.js';
import { type Attributes, decodeXml, escapeXml, tags, writeAttributes } from './xml.js';

/** One line of text, placed. */
interface Piece {
  text: string;
  x: number;
  y: number;
  style: TextStyle;
  letterSpacing: number;
}

/** Where a text stands on the picture, from capital height to descender, after all transforms. */
export interface TextBox {
  text: string;
  size: number;
  left: number;
  top: number;
  right: number;
  bottom: number;
}

const inherited = ['font-size', 'font-weight', 'letter-spacing', 'text-anchor', 'font-feature-settings', 'dominant-baseline', 'data-build'] as const;
/** What stays on the path that a text becomes. */
const kept = ['transform', 'fill', 'fill-opacity', 'opacity', 'stroke', 'stroke-width', 'stroke-opacity', 'class', 'id'];

/** The SVG with paths for texts. Throws when a text is left that it could not read. */
export function outline(svg: string): string {
  let out = '';
  let from = 0;
  for (const found of texts(svg)) {
    out += svg.slice(from, found.start) + found.pieces.map((p) => piecePath(p, found)).join('');
    from = found.end;
  }
  out += svg.slice(from);
  if (/<(text|tspan)[\s>]/.test(out)) throw new Error('a text was left in an outlined picture');
  return out;
}

export function textBoxes(svg: string): TextBox[] {
  return [...texts(svg)].flatMap(({ pieces, matrix }) => pieces.map((p) => {
    const top = p.y - capHeight * p.style.size;
    const bottom = p.y + descent * p.style.size;
    const right = p.x + measure(p.text, p.style, p.letterSpacing);
    const corners = [apply(matrix, p.x, top), apply(matrix, right, top), apply(matrix, p.x, bottom), apply(matrix, right, bottom)];
    const xs = corners.map((c) => c.x);
    const ys = corners.map((c) => c.y);
    return { text: p.text, size: p.style.size * Math.hypot(matrix[0], matrix[1]), left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
  }));
}

interface FoundText {
  start: number;
  end: number;
  attributes: Attributes;
  matrix: Matrix;
  pieces: Piece[];
  /** What is to be known of it when the picture is built up, where no group around it says so. */
  build?: string;
}

function* texts(svg: string): Generator<FoundText> {
  const stack: { matrix: Matrix; styles: Attributes }[] = [{ matrix: identity, styles: {} }];
  let open: { start: number; attributes: Attributes; matrix: Matrix; styles: Attributes; parts: { attributes: Attributes; text: string }[]; from: number; span?: Attributes } | undefined;
  for (const tag of tags(svg)) {
    if (open) {
      const text = decodeXml(svg.slice(open.from, tag.start));
      if (text) open.parts.push({ attributes: open.span ?? {}, text });
      open.from = tag.end;
      if (tag.name === 'tspan') open.span = tag.kind === 'open' ? tag.attributes : undefined;
      else if (tag.name === 'text' && tag.kind === 'close') {
        yield { start: open.start, end: tag.end, attributes: open.attributes, matrix: open.matrix, pieces: place(open.parts, open.attributes, open.styles), ...buildOf(open.attributes, open.styles) };
        open = undefined;
      } else throw new Error(`<${tag.name}> inside a text`);
      continue;
    }
    if (tag.kind === 'close') {
      stack.pop();
      continue;
    }
    const above = stack.at(-1)!;
    const styles = { ...above.styles, ...stylesOf(tag.attributes) };
    const matrix = multiply(above.matrix, readTransform(tag.attributes.transform));
    if (tag.name === 'text' && tag.kind === 'open') open = { start: tag.start, attributes: tag.attributes, matrix, styles, parts: [], from: tag.end };
    else if (tag.kind === 'open') stack.push({ matrix, styles });
  }
}

/** A path no longer tells whether it was words or figures of one width. */
function buildOf(attributes: Attributes, styles: Attributes): { build?: string } {
  const own = attributes['data-build'];
  if (own !== undefined) return { build: own };
  return styles['data-build'] === undefined ? { build: /tnum/.test(styles['font-feature-settings'] ?? '') ? 'figures' : 'words' } : {};
}

function stylesOf(attributes: Attributes): Attributes {
  const css = Object.fromEntries((attributes.style ?? '').split(';').map((p) => p.split(':').map((s) => s.trim())).filter((p) => p.length === 2) as [string, string][]);
  const all = { ...attributes, ...css };
  return Object.fromEntries(inherited.filter((k) => all[k] !== undefined).map((k) => [k, all[k]!]));
}

/** A tspan with its own x begins a new line; the others run on. */
function place(parts: { attributes: Attributes; text: string }[], text: Attributes, styles: Attributes): Piece[] {
  let x = number(text.x) + number(text.dx);
  let y = number(text.y) + number(text.dy);
  const lines: { x: number; anchor: string; pieces: Piece[] }[] = [];
  for (const { attributes, text: words } of parts) {
    const own = { ...styles, ...stylesOf(attributes) };
    if ((own['dominant-baseline'] ?? 'auto') !== 'auto') throw new Error('dominant-baseline is not supported: give the baseline itself');
    const style: TextStyle = {
      size: number(own['font-size'], 16), weight: nearestWeight(weightOf(own['font-weight'])), tabular: /tnum/.test(own['font-feature-settings'] ?? ''),
    };
    if (attributes.x !== undefined || lines.length === 0) {
      x = attributes.x === undefined ? x : number(attributes.x);
      lines.push({ x, anchor: own['text-anchor'] ?? 'start', pieces: [] });
    }
    x += number(attributes.dx);
    y = (attributes.y === undefined ? y : number(attributes.y)) + number(attributes.dy);
    const letterSpacing = number(own['letter-spacing']);
    lines.at(-1)!.pieces.push({ text: words, x, y, style, letterSpacing });
    x += measure(words, style, letterSpacing);
  }
  return lines.flatMap(({ x: start, anchor, pieces }) => {
    const last = pieces.at(-1)!;
    const width = last.x + measure(last.text, last.style, last.letterSpacing) - start;
    const shift = anchor === 'middle' ? -width / 2 : anchor === 'end' ? -width : 0;
    return pieces.map((p) => ({ ...p, x: p.x + shift }));
  });
}

function piecePath(p: Piece, { attributes, build }: FoundText): string {
  const units = unitsPerEm(p.style.weight);
  const scale = p.style.size / units;
  const d = textPath(p.text, p.style.weight, p.style.tabular, p.letterSpacing / scale);
  if (!d) return '';
  const own = Object.fromEntries(kept.filter((k) => attributes[k] !== undefined && k !== 'transform').map((k) => [k, attributes[k]!]));
  if (build) own['data-build'] = build;
  const before = attributes.transform ? `${attributes.transform} ` : '';
  const k = short(scale, 6);
  return `<path${writeAttributes(own)} transform="${escapeXml(before)}translate(${short(p.x)} ${short(p.y)}) scale(${k} -${k})" d="${d}"/>`;
}

function short(n: number, digits = 3): string {
  return String(Number(n.toFixed(digits)));
}

function number(text: string | undefined, fallback = 0): number {
  const n = parseFloat(text ?? '');
  return Number.isFinite(n) ? n : fallback;
}

function weightOf(text: string | undefined): number {
  return text === 'bold' ? 700 : number(text, 500);
}
