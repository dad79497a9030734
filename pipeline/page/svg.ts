// Drawn charts as they go into a page: checked, and with ids of their own.
import { renumberIds } from '../theme/index.js';

/** What an SVG inside a page must not hold: anything that runs, loads, or embeds a foreign document. */
const forbidden = /<(script|foreignObject|iframe|object|embed|image|use\s[^>]*href="(?!#))|\son\w+\s*=|javascript:|@import|url\(\s*['"]?(?!#)/i;

/** Undefined when the text is no SVG that may stand in a page; the page then links the picture instead. */
export function inlineSvg(svg: string, prefix: string): string | undefined {
  const start = svg.indexOf('<svg');
  if (start < 0 || forbidden.test(svg)) return undefined;
  return renumberIds(svg.slice(start).trim(), prefix).replace(/<svg /, '<svg aria-hidden="true" focusable="false" ');
}
