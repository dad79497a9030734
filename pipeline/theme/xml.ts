// The little of XML that pictures need.

/** Escaped for text and attributes; characters that XML 1.0 cannot hold are left out. */
export function escapeXml(text: string): string {
  return text
    .replace(/(?![\t\n\r])[\p{Cc}\p{Cs}\ufffe\uffff]/gu, '')
    .replace(/[&<>"']/g, (c) => `&${{ '&': 'amp', '<': 'lt', '>': 'gt', '"': 'quot', "'": '#39' }[c]};`);
}

export function decodeXml(text: string): string {
  return text.replace(/&(?:#x([0-9a-f]+)|#(\d+)|(amp|lt|gt|quot|apos));/gi, (whole, hex?: string, dec?: string, name?: string) => {
    if (name) return { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" }[name.toLowerCase()] ?? whole;
    const code = hex ? parseInt(hex, 16) : Number(dec);
    return code <= 0x10ffff ? String.fromCodePoint(code) : '';
  });
}

export type Attributes = Record<string, string>;

const attribute = /([\w:.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;
const token = /<!--[\s\S]*?-->|<\?[\s\S]*?\?>|<(\/?)([\w:.-]+)((?:\s+[\w:.-]+\s*=\s*(?:"[^"]*"|'[^']*'))*)\s*(\/?)>/g;

export interface Tag {
  name: string;
  attributes: Attributes;
  kind: 'open' | 'close' | 'empty';
  start: number;
  end: number;
}

/** The tags of a well-formed SVG in order, values decoded. */
export function* tags(svg: string): Generator<Tag> {
  for (const m of svg.matchAll(token)) {
    if (!m[2]) continue;
    const attributes: Attributes = {};
    for (const a of m[3]!.matchAll(attribute)) attributes[a[1]!] = decodeXml(a[2] ?? a[3]!);
    yield { name: m[2], attributes, kind: m[1] ? 'close' : m[4] ? 'empty' : 'open', start: m.index, end: m.index + m[0].length };
  }
}

export function writeAttributes(attributes: Attributes): string {
  return Object.entries(attributes).map(([k, v]) => ` ${k}="${escapeXml(v)}"`).join('');
}
