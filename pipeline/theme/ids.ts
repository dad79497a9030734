// Ids inside a picture, renumbered under its own name: they count up per process otherwise, and clash in one page.

/** Every id and every reference to it, in order of appearance: `NAME-1`, `NAME-2` … `prefix` must be a plain id itself. */
export function renumberIds(svg: string, prefix: string): string {
  const ids = new Map<string, string>();
  for (const [, id] of svg.matchAll(/\sid="([^"]+)"/g)) if (!ids.has(id!)) ids.set(id!, `${prefix}-${ids.size + 1}`);
  return svg
    .replace(/(\sid=")([^"]+)(")/g, (_w, a: string, id: string, b: string) => a + ids.get(id)! + b)
    .replace(/url\(#([^)]+)\)/g, (whole, id: string) => (ids.has(id) ? `url(#${ids.get(id)!})` : whole))
    .replace(/(\s(?:xlink:)?href="#)([^"]+)(")/g, (whole, a: string, id: string, b: string) => (ids.has(id) ? a + ids.get(id)! + b : whole))
    .replace(/(\saria-(?:labelledby|describedby)=")([^"]+)(")/g, (_w, a: string, list: string, b: string) => a + list.split(' ').map((id) => ids.get(id) ?? id).join(' ') + b);
}
