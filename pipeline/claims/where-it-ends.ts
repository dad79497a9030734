// "sinks by nine, to 68": where a change ends, told right behind it, is of the quantity that changed.
import { stretch } from '../script/index.js';
import type { Candidate, Context } from './context.js';
import { fit } from './decide.js';
import { push } from './read-value.js';
import { valueOf } from './terms.js';

const to = /^(?:,? ?(?:(?:all the way |back |right )?(?:down|up) )?to|, (?:and )?(?:ends up|ending up|landing|lands) (?:at|on))(?: (?:just|about|around|only|nearly|almost|roughly|a|over|under|some))*$/;

export function readWhereItEnds(c: Context, index: number): Candidate[] {
  const { mention: m, cue } = c.parsed.said[index]!;
  const out: Candidate[] = [];
  const change = c.done[index - 1];
  const before = c.parsed.said[index - 1];
  if (!before || cue.op !== 'value' || m.type !== 'cardinal' || !change?.subject || !change.base || (change.kind !== 'difference' && change.kind !== 'rise') || !fit(before.mention, change)) return out;
  if (!to.test(stretch(c.parsed.low, before.mention.to, m.from)) || (m.unit && m.unit.dimension !== change.subject.unit.dimension && !m.loose) || change.term.args.some((a) => typeof a !== 'string')) return out;
  // "jumps by 5 decibels to 44 on the Cobble": of what is named behind it.
  if (c.hits.hits.some((h) => h.segment === index && h.value !== change.subject!.at[h.slot])) return out;
  push(out, c, valueOf(change.subject.key), 'mean', 0, change.subject, 'where it ends');
  // Where no word says which way it went, either may be the end.
  if (change.sign === 0 && !change.base.fixed) push(out, c, valueOf(change.base.key), 'mean', 0.3, change.base, 'where it ends');
  return out;
}
