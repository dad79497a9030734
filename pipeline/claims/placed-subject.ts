// What has a place, where a verb of being stands between: "it is third", "the Larch, which won in the spring, is now second".
import type { Context } from './context.js';

const softening = /^(?:the|only|now|still|again|then|today|just|already|currently|also|even|once|more|\p{L}+ly)$/u;

/** A pronoun, a thing named in a stretch before, or a setting; undefined where no verb of being leads to the place. */
export function placedSubject(c: Context, index: number): 'pronoun' | 'thing' | 'setting' | undefined {
  const { mention, segment } = c.parsed.said[index]!;
  const { low } = c.parsed;
  let k = mention.from - 1;
  while (k > segment.from && softening.test(low[k]!)) k--;
  if (/^(?:it|he|she|they)'(?:s|re)$/.test(low[k] ?? '')) return 'pronoun';
  if (!/^(?:is|was|are|were|comes|came|finishes|finished|remains|remained|ranks|ranked|places|placed|lands|landed|stays|stayed|becomes|became)$/.test(low[k] ?? '')) return undefined;
  while (k > segment.from && /^(?:now|then|today|still|also|only|just|again)$/.test(low[k - 1]!)) k--;
  if (/^(?:it|he|she|they)$/.test(low[k - 1] ?? '')) return 'pronoun';
  const field = (h: { slot: number; baseOf: number }): string => (h.baseOf < 0 ? c.grid.slots[h.slot]!.field : '');
  const own = c.hits.hits.filter((h) => h.segment === index && h.to <= k);
  if (own.some((h) => field(h) === 'setting' && h.to === k)) return 'setting';
  return k <= segment.from + 1 && !own.length && c.hits.hits.some((h) => h.segment < index && field(h) === 'setup') ? 'thing' : undefined;
}

/** "Mine is the loudest, and the Larch is second", "the one by the door was the hottest": something is placed that no name or pronoun of things says. */
export function subjectUnknown(c: Context, index: number): boolean {
  const { mention, segment } = c.parsed.said[index]!;
  const { low, tokens } = c.parsed;
  let k = mention.from - 1;
  while (k > segment.from && softening.test(low[k]!)) k--;
  if (!/^(?:is|was|are|were|been|be|remains|remained)$/.test(low[k] ?? '')) return false;
  while (k > segment.from && /^(?:is|was|are|were|been|be|has|had|have|would|will|now|still|also|only|just|clearly|by|far)$/.test(low[k - 1]!)) k--;
  const from = Math.max(segment.from, low.lastIndexOf(',', k - 1) + 1);
  const subject = tokens.slice(from, k).filter((t) => t.kind === 'word');
  if (!subject.length || subject.some((t) => /^(?:it|that|this|they|these|those|he|she|which|who|what|there|here|where|everything|nothing|combined|together)$/.test(t.low))) return false;
  // "With the lid on, mine was the coolest": where it was, and not whose it is.
  return !c.parsed.names.some((n) => n.from >= from && n.from < k) && !c.hits.hits.some((h) => h.from >= segment.from && h.from < k && (h.from >= from || c.grid.slots[h.slot]!.field === 'setup'));
}
