// "on the lid it goes from 41.2 on slow to 38.0 on brisk, and on the base from 33.1 to 31.4": the second pair has the ends of the first.
import type { Hit } from './evidence.js';
import type { Parsed } from './parse.js';

/** For each later pair of "from … to …" that names neither end: what the ends of the first were named, by slot. */
export function parallelEnds(p: Parsed, hits: readonly Hit[], ends: readonly number[]): { index: number; slot: number; value: string }[] {
  const pairs = p.said.flatMap((_, k) => (k > 0 && isPair(p, k) ? [k - 1] : []));
  if (pairs.length < 2) return [];
  const named = (index: number, slot: number): string[] => [...new Set(hits.filter((h) => h.slot === slot && h.segment === index && h.from >= p.said[index]!.mention.to && h.baseOf < 0).map((h) => h.value))];
  return ends.flatMap((slot) => {
    const [from, to] = [named(pairs[0]!, slot), named(pairs[0]! + 1, slot)];
    if (from.length !== 1 || to.length !== 1 || from[0] === to[0]) return [];
    return pairs.slice(1).flatMap((k) => ([k, k + 1].some((i) => hits.some((h) => h.slot === slot && h.segment === i)) ? [] : [{ index: k, slot, value: from[0]! }, { index: k + 1, slot, value: to[0]! }]));
  });
}

function isPair(p: Parsed, second: number): boolean {
  const [a, b] = [p.said[second - 1]!.mention, p.said[second]!.mention];
  return a.type === 'cardinal' && b.type === 'cardinal' && p.low[a.from - 1] === 'from' && p.low[b.from - 1] === 'to' && !p.low.slice(a.to, b.from).some((w) => /^(?:,|;|and|but)$/.test(w));
}
