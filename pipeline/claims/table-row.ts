// "Oak 44, Elm 47, Ash 58": names and bare numbers in turn, which are figures although nothing else says so.
import type { Context } from './context.js';
import type { Parsed } from './parse.js';

const none: ReadonlySet<number> = new Set();
const known = new WeakMap<Parsed, ReadonlySet<number>>();

/** The mentions that stand right behind a thing's name, where at least three do so. */
function rowsOf(c: Context): ReadonlySet<number> {
  if (c.parsed.said.length < 3) return none;
  const found = known.get(c.parsed);
  if (found) return found;
  const { said, low } = c.parsed;
  const values = new Set<string>();
  const out = said.flatMap(({ mention: m }, k) => {
    const h = m.type !== 'cardinal' ? undefined : c.hits.hits.find((x) => c.grid.slots[x.slot]!.field === 'setup' && (x.to === m.from || (x.to === m.from - 1 && /^[:,]$/.test(low[x.to]!))) && !c.grid.holders.has(x.value));
    if (!h || !/^(?:[,.;:]|and)$/.test(low[m.to] ?? '.')) return [];
    values.add(h.value);
    return [k];
  });
  const rows = new Set(values.size > 2 ? out : []);
  known.set(c.parsed, rows);
  return rows;
}

export function inTable(c: Context, index: number): boolean {
  return rowsOf(c).has(index);
}

/** The heading says of what the table is. */
export function headed(c: Context): boolean {
  return c.now.heading.some(([slot]) => ['measure', 'part'].includes(c.grid.slots[slot]!.field));
}
