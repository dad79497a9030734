// A setting that is said to do something: what it changes is measured from how it is without it, all else being kept.
//   "Full fans are good for 5 degrees in the shed."          against quiet fans in the shed
//   "The Larch gets 5 degrees out of full fans"
//   "With the lid on it gains 4 seconds"                      … no: where it is so, and nothing that does it
import { stretch } from '../script/index.js';
import type { Context } from './context.js';
import type { Hit } from './evidence.js';
import { type Cell, movedTo } from './grid.js';
import { insteadOf } from './usual-setting.js';

/** Verbs of what is done to a figure. */
export const giving = /^(?:buys?|bought|saves?|saved|costs?|brings?|brought|gives?|gave|adds?|added|takes?|took|knocks?|knocked|shaves?|shaved|trims?|trimmed|earns?|earned|gains?|gained|does|did|do|makes?|made|puts?|wins?|won|helps?|helped|hurts?|raises?|raised|lowers?|lowered|cuts?|robs?|robbed|steals?|stole)$/;
const worth = /^(?:is|are|was|were|'s|they're|it's|that's) (?:good for|worth)\b/;
const getting = /^(?:gets?|got|gains?|gained|squeezes?|squeezed|wins?|won|takes?|took|saves?|saved|draws?|drew|coaxes|coaxed)$/;

/** More words than this between a setting and its verb, and it is another's. */
const reach = 4;

/** The setting that the clause says to do it; undefined where none is. */
function agentOf(c: Context, index: number): Hit | undefined {
  const { mention: m, segment } = c.parsed.said[index]!;
  const { low } = c.parsed;
  const settings = c.hits.hits.filter((h) => c.grid.slots[h.slot]!.field === 'setting');
  for (const h of settings) {
    // "out of full fans", "from full fans", "thanks to the undervolt"
    const lead = stretch(low, Math.max(0, h.from - 3), h.from).replace(/ the$/, '');
    if (h.from >= m.to && h.from <= m.to + 6 && /(?:^| )(?:out of|thanks to|from)$/.test(lead) && low.slice(segment.from, m.from).some((w) => getting.test(w))) return h;
    // "full fans save 4 seconds", "the undervolt is worth 5 degrees"
    if (h.to > m.from || h.to < segment.from || /^(?:in|on|at|with|under|without|for|to|from)$/.test(low[h.from - 1] === 'the' ? low[h.from - 2] ?? '' : low[h.from - 1] ?? '') || /^(?:in|on|at|with|under|without)$/.test(low[h.from] ?? '')) continue;
    const after = low.slice(h.to, Math.min(m.from, h.to + reach));
    if (after.some((w) => giving.test(w)) || after.some((_, k) => worth.test(after.slice(k).join(' ')))) return h;
  }
  return undefined;
}

const agents = new WeakMap<Context['hits'], Map<number, Hit | undefined>>();

/** The same, found once for each number, whatever readings are tried for it. */
function knownAgent(c: Context, index: number): Hit | undefined {
  let known = agents.get(c.hits);
  if (!known) agents.set(c.hits, (known = new Map()));
  if (!known.has(index)) known.set(index, agentOf(c, index));
  return known.get(index);
}

/** The reading without what does it: at the other of two settings, else at the usual one; undefined where it might be any. */
export function withoutAgent(c: Context, index: number, subject: Cell): Cell | undefined {
  const agent = knownAgent(c, index);
  if (!agent || subject.at[agent.slot] !== agent.value) return undefined;
  const other = insteadOf(c.grid, agent.slot, agent.value);
  return other === undefined ? undefined : movedTo(c.grid, subject, agent.slot, other);
}
