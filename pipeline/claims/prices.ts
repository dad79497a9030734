// What a thing costs where nothing says in what: its price, which the record need not have.
import { comparatives } from '../script/index.js';
import type { Context } from './context.js';

/** Words of buying, beside which pounds are money. */
const bought = /^(?:bought|buy|buying|paid|pay|paying|costs?|sells?|sold|prices?|priced|asking|cheap|cheaper|cheapest|dearer|budget)$/;

/** "The Silo costs 470": a bare number after what a thing of the record costs, where nothing in it is money; "I bought it for 85 pounds", "a plate for 26 pounds". */
export function isPrice(c: Context, index: number): boolean {
  const { mention: m } = c.parsed.said[index]!;
  const { low, names } = c.parsed;
  // Where the record weighs in grams, pounds are money unless something is said to weigh.
  if (m.unit?.id === 'lb') return !c.grid.dimensions.has('money') && (!low.some((w) => /^(?:weigh\w*|heav\w*|light\w*|mass|ounces?)$/.test(w)) || low.some((w) => bought.test(w)) || (low[m.from - 1] === 'for' && !/^(?:of|on|in|at)$/.test(low[m.to] ?? '') && !comparatives.has(low[m.to] ?? '')));
  if (m.unit || m.type !== 'cardinal' || c.grid.dimensions.has('money') || comparatives.has(low[m.to] ?? '')) return false;
  let k = m.from - 1;
  while (/^(?:about|around|just|only|roughly|nearly|almost|under|over)$/.test(low[k] ?? '')) k--;
  return /^(?:costs?|costing)$/.test(low[k] ?? '') && names.some((n) => n.to === k && n.meanings.some((x) => x.own && x.slots.some((s) => c.grid.of.setup.includes(s.slot) && !c.grid.holders.has(s.value))));
}
