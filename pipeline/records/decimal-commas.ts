// Decimal commas inside braces, which YAML takes for the end of an entry.
import { isScalar, type Reader, type YAMLMap } from './document.js';

/**
 * {load: 60,5 61,5 °C} is a map of three to YAML: 60 under load, and two names without a value. What the commas cut off,
 * and the entry they cut it from, is one finding; the entries are handed back, to be passed over.
 */
export function decimalCommas(map: YAMLMap, reader: Reader): Set<unknown> {
  const cut = new Set<unknown>();
  const { text } = reader.source;
  if (!map.flow) return cut;
  const offsets = (node: unknown) => (isScalar(node) && node.type === 'PLAIN' ? node.range : undefined);
  for (let i = 0; i < map.items.length; i++) {
    const start = offsets(map.items[i]!.value);
    let end = start?.[1];
    if (!start || end === undefined) continue;
    let j = i;
    for (; j + 1 < map.items.length; j++) {
      const next = offsets(map.items[j + 1]!.key);
      if (!next || !hasNothing(map.items[j + 1]!.value) || !/^\d,\d$/.test(text.slice(end - 1, end + 2)) || next[0] !== end + 1) break;
      end = next[1];
    }
    if (j === i) continue;
    const said = text.slice(start[0], end);
    const suggest = said.replace(/(\d),(?=\d)/g, '$1.');
    reader.fail(reader.source.place(start[0], end), 'value-form', `"${said}" has a decimal comma, at which a value inside { } ends; write ${suggest}, or a space after the comma if it separates two entries`, { said, suggest });
    for (const item of map.items.slice(i, j + 1)) cut.add(item);
  }
  return cut;
}

function hasNothing(node: unknown): boolean {
  return !node || (isScalar(node) && node.value === null);
}
