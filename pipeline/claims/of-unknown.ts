// "Four times the crowd, and still": a multiple of something that is no quantity of the record's says nothing about one that is.
import type { Context } from './context.js';

/** Nouns that stand for whatever was spoken of. */
const general = /^(?:size|amount|difference|gap|figure|number|value|rest|total|average|median|mean|others?|same|best|worst|spread|distance|lead|margin|saving|gain|loss|rise|drop|fall|increase|change|jump|step|first|second|last|one|ones|result|results|advantage|penalty|improvement|rate|share|way|fastest|slowest|quietest|loudest|highest|lowest|\p{L}+est)$/u;

/** The multiple is followed by "the" and a noun that names nothing known, and by no name after it. */
export function ofUnknown(c: Context, index: number): boolean {
  const { mention: m, segment } = c.parsed.said[index]!;
  const { low, tokens } = c.parsed;
  if (m.type !== 'multiplier' || low[m.to] !== 'the' || tokens[m.to + 1]?.kind !== 'word' || general.test(low[m.to + 1]!)) return false;
  const within = (x: { from: number }): boolean => x.from >= m.to && x.from < Math.max(segment.to, m.to + 4);
  return !c.hits.hits.some(within) && !c.hits.dimensions.some(within) && !c.hits.roles.some(within);
}
