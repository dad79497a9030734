// What a thing costs where nothing says in what: its price, which the record need not have.
import { comparatives } from '../script/index.js';
import type { Context } from './context.js';

/** "The Silo costs 470": a bare number after what a thing of the record costs, where nothing in it is money. */
export function isPrice(c: Context, index: number): boolean {
  const { mention: m } = c.parsed.said[index]!;
  const { low, names } = c.parsed;
  if (m.unit || m.type !== 'cardinal' || c.grid.dimensions.has('money') || comparatives.has(low[m.to] ?? '')) return false;
  let k = m.from - 1;
  while (/^(?:about|around|just|only|roughly|nearly|almost|under|over)$/.test(low[k] ?? '')) k--;
  return /^(?:costs?|costing)$/.test(low[k] ?? '') && names.some((n) => n.to === k && n.meanings.some((x) => x.own && x.slots.some((s) => c.grid.of.setup.includes(s.slot) && !c.grid.holders.has(s.value))));
}
