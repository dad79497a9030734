// "It starts at 5,240 and ends at 3,310, so it keeps 63 percent": of the first of the two figures beside it, the second.
import type { Candidate, Context } from './context.js';
import { fit } from './decide.js';
import { push } from './read-value.js';

/** The share that is kept, where two figures of one thing were told right before and nothing else is named. */
export function keptOfTwo(c: Context, index: number): Candidate[] {
  const { cue } = c.parsed.said[index]!;
  const [a, b] = [c.done[index - 2], c.done[index - 1]];
  if (cue.op !== 'share' || cue.because !== 'keeps' || (cue.base && cue.base.to > cue.base.from) || a?.term.kind !== 'mean' || b?.term.kind !== 'mean') return [];
  const [from, to] = [a.subject, b.subject];
  const { measure, part, setup } = c.grid.of;
  if (!from || !to || from === to || from.fixed || to.fixed || [...measure, ...part, ...setup].some((i) => from.at[i] !== to.at[i])) return [];
  if (![index - 2, index - 1].every((k) => fit(c.parsed.said[k]!.mention, c.done[k]!)) || c.hits.hits.some((h) => h.segment === index)) return [];
  const out: Candidate[] = [];
  push(out, c, { kind: 'percent_of', args: [to.key, from.key] }, 'percent_of', 0, to, 'of the two figures beside it', { base: from, firm: true });
  return out;
}
