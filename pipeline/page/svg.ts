// Drawn charts as they go into a page: checked, and with ids of their own.
import { Exact } from '../quantities/index.js';
import { decodeXml, measure, nearestWeight, renumberIds } from '../theme/index.js';

/** What an SVG inside a page must not hold: anything that runs, loads, or embeds a foreign document. */
const forbidden = /<(script|foreignObject|iframe|object|embed|image|use\s[^>]*href="(?!#))|\son\w+\s*=|javascript:|@import|url\(\s*['"]?(?!#)/i;

/** Undefined when the text is no SVG that may stand in a page; the page then links the picture instead. */
export function inlineSvg(svg: string, prefix: string): string | undefined {
  const start = svg.indexOf('<svg');
  if (start < 0 || forbidden.test(svg)) return undefined;
  const cropped = svg.slice(start).trim().replace(/^<svg[^>]*>/, (root) => toPanel(root, svg).replace('<svg ', '<svg aria-hidden="true" focusable="false" '));
  return renumberIds(fixWidths(cropped), prefix);
}

/**
 * Each line of text as wide as in the typeface of the pictures, whatever face the reader has: a label that fitted when it
 * was drawn fits here.
 */
function fixWidths(svg: string): string {
  return svg.replace(/<text([^>]*)>([^<]+)<\/text>/g, (whole, attributes: string, text: string) => {
    const size = Number(/\bfont-size="([\d.]+)(?:px)?"/.exec(attributes)?.[1]);
    const weight = Number(/\bfont-weight="(\d+)"/.exec(attributes)?.[1] ?? 500);
    if (!size || attributes.includes('textLength')) return whole;
    const width = measure(decodeXml(text), { size, weight: nearestWeight(weight), tabular: attributes.includes('tnum') });
    return `<text${attributes} textLength="${Exact.fromNumber(width).toFixed(2)}" lengthAdjust="spacingAndGlyphs">${text}</text>`;
  });
}

/** On video the panel keeps a margin to the edge of the frame; in a page the page has margins of its own. */
function toPanel(root: string, svg: string): string {
  const panel = /<rect x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)"/.exec(svg);
  if (!panel) return root;
  const [, x, y, width, height] = panel;
  return root.replace(/ viewBox="[^"]*"/, ` viewBox="${x} ${y} ${width} ${height}"`).replace(/ width="\d+"/, ` width="${width}"`).replace(/ height="\d+"/, ` height="${height}"`);
}
