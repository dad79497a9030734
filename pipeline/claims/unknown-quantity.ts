// "makes twice as much dust", "1.3 times as many crumbs": a multiple of what the words name, and nothing on record is called so.
import type { Context } from './context.js';

const ending = /^(?:as|than|in|on|at|for|with|from|when|while|where|and|but|or|so|here|there|again|now|then|too|either|of|to|per|[,.;:!?)—–])$/;

export function unknownQuantity(c: Context, index: number): boolean {
  const { low } = c.parsed;
  const from = c.parsed.said[index]!.mention.to + 2;
  if (low[from - 2] !== 'as' || !/^(?:much|many)$/.test(low[from - 1] ?? '')) return false;
  let to = from;
  while (to < low.length && to < from + 4 && !ending.test(low[to]!)) to++;
  const within = (k: number): boolean => k >= from && k < to;
  const nouns = low.slice(from, to).filter((w) => /^\p{L}{3,}$/u.test(w)).length;
  // "as much belt heat": a kind of heat that is not on record either.
  return nouns > 0 && !c.parsed.names.some((n) => within(n.from) && n.meanings.some((x) => x.own)) && (nouns > 1 || !c.hits.dimensions.some((d) => within(d.from)));
}
