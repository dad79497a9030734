// Units as they are said and written after a number.
import { differenceUnit, perUnit, type Unit, unit, units } from '../quantities/index.js';
import type { Token } from './tokens.js';

export interface UnitSpan {
  from: number;
  to: number;
  unit: Unit;
  /** "degrees" alone: of whichever scale the record uses, a temperature or a difference. */
  loose: boolean;
  /** Said in the singular after a number other than one, or hyphenated: "a 48 degree limit", "the 2-gram dose". */
  adjectival: boolean;
}

interface Node {
  next: Map<string, Node>;
  unit?: Unit;
  exact?: string;
  plural?: boolean;
}

const root: Node = { next: new Map() };
// Symbols that are English words too, or too short to be told from one, count only right after digits and in their exact case.
const exactOnly = new Set(['C', 'F', 'A', 'V', 'W', 'K', 'B', 'g', 'm', 's', 'h', 'd', 'l', 'L', 'J', 'bar', 'in', 'ft', 'min', 'x', '×', '°', 'lb', 'oz', 'gal', 'Pa', 'Hz', 'mm', 'cm', 'um', 'us', 'ms', 'mg', 'kg', 'MB', 'GB', 'TB', 'kB', 'mV', 'mW', 'mA', 'kW', 'Wh', 'Ah', 'kJ', 'um', 'lx']);
/** Symbols that no word looks like, in whatever case a transcript has them. */
const anyCase = new Set(['db', 'mv', 'kw', 'mw', 'wh', 'kg', 'mm', 'cm', 'gb', 'tb', 'mb', 'kb', 'hz', 'ns']);
const never = new Set(['count', '1', 'in', 'degree Celsius', 'd', 'pp']);

function words(name: string): string[] {
  return name.match(/dB ?\(A\)|[\p{L}µμΩ][\p{L}\p{N}³²₂]*(?:\/\p{L}[\p{L}³²]*)?|\S/gu) ?? [];
}

function add(name: string, of: Unit, plural: boolean): void {
  if (!name || never.has(name)) return;
  const exact = exactOnly.has(name) || (name.length <= 2 && /^[A-Za-z]+$/.test(name));
  let node = root;
  for (const w of words(name)) {
    const key = w.toLowerCase();
    let child = node.next.get(key);
    if (!child) node.next.set(key, (child = { next: new Map() }));
    node = child;
  }
  if (node.unit) return;
  node.unit = of;
  node.plural = plural;
  if (exact && !anyCase.has(name.toLowerCase())) node.exact = name;
}

add('kelvin', unit('K'), true);
for (const u of units.values()) {
  add(u.symbol, u, true);
  add(u.id, u, true);
  const pairs: [string, boolean][] = [[u.one, u.one === u.many], [u.many, true], ...u.also.map((a): [string, boolean] => [a, a.split(' ')[0]!.endsWith('s') || !/[a-z]{3}/.test(a)])];
  for (const [name, plural] of pairs) {
    if (!name) continue;
    add(name, u, plural);
    if (name.includes(' per ')) for (const other of [' a ', ' an ', ' each ']) add(name.replace(' per ', other), u, plural);
    if (name.includes('-')) add(name.replace(/-/g, ' '), u, plural);
  }
}
for (const [name, id, plural] of [['degree', 'degC', false], ['degrees', 'degC', true], ['percentage points', 'points', true], ['percentage point', 'points', false], ['frames', 'fps', true], ['revs', 'rpm', true], ['watts hours', 'Wh', true], ['cents', 'USD', true], ['candelas', 'cd/m2', true], ['candela', 'cd/m2', false]] as const) add(name, unit(id), plural);

/** The longest unit that starts at token `i`, which follows a number whose value is `one` or not. Example: "frames per second", "dB(A)", "-degree". */
export function unitAt(t: readonly Token[], i: number, one: boolean): UnitSpan | undefined {
  let from = i;
  const hyphen = t[from]?.low === '-' && t[from]!.tight && t[from + 1]?.tight;
  if (hyphen) from++;
  let node: Node | undefined = root;
  let found: UnitSpan | undefined;
  for (let j = from; j < t.length && node; j++) {
    const w = t[j]!;
    const raw = w.text.toLowerCase();
    node = node.next.get(raw) ?? node.next.get(w.low);
    if (!node?.unit) continue;
    if (node.exact !== undefined && (w.text !== node.exact || t[i - 1]?.kind !== 'number' || (node.exact.length === 1 && /[a-z]/.test(node.exact) && !t[i]!.tight))) continue;
    const singular = !node.plural && !one;
    found = { from: i, to: j + 1, unit: node.unit, loose: /^degrees?$|^°$|^deg$/.test(raw) && node.unit.id === 'degC', adjectival: Boolean(hyphen) || singular };
  }
  return found && compoundAt(t, found);
}

/** What stands between the two units; `driving`: only before a unit of power or energy, as the words mean other things too. */
const forEach: readonly { words: readonly string[]; driving: boolean }[] = [
  { words: ['per'], driving: false }, { words: ['/'], driving: false },
  ...['for each', 'for every', 'for one', 'per single', 'to the', 'to a', 'each', 'every', 'a'].map((w) => ({ words: w.split(' '), driving: true })),
];

/** "frames per watt": one unit for each of another. */
function compoundAt(t: readonly Token[], top: UnitSpan): UnitSpan {
  const each = top.unit.dimension === 'share' ? undefined : forEach.find(({ words: w }) => w.every((x, k) => t[top.to + k]?.low === x));
  const bottom = each && simpleUnit(t, top.to + each.words.length);
  if (!bottom || (each.driving && bottom.unit.dimension !== 'power' && bottom.unit.dimension !== 'energy')) return top;
  return { ...top, to: bottom.to, loose: false, unit: perUnit(top.unit.dimension === 'temperature' ? differenceUnit(top.unit) : top.unit, bottom.unit) };
}

function simpleUnit(t: readonly Token[], from: number): { unit: Unit; to: number } | undefined {
  let node: Node | undefined = root;
  let found: { unit: Unit; to: number } | undefined;
  for (let j = from; j < t.length && node; j++) {
    node = node.next.get(t[j]!.low);
    if (node?.unit && !(node.exact !== undefined && t[j]!.text !== node.exact)) found = { unit: node.unit, to: j + 1 };
  }
  return found;
}
