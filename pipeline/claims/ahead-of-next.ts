// "… which leaves the Larch in first place by 0.8": by how much whoever is first is ahead of the second.
import { stretch } from '../script/index.js';
import { isFact } from '../facts/index.js';
import { byBefore } from './by-how-much.js';
import type { Candidate, Context } from './context.js';
import { fit } from './decide.js';
import { push } from './read-value.js';

export function aheadOfNext(c: Context, index: number): Candidate[] {
  const out: Candidate[] = [];
  const { mention: m } = c.parsed.said[index]!;
  const first = c.done[index - 1];
  const place = c.parsed.said[index - 1]?.mention;
  const by = byBefore(c.parsed.low, m.from);
  if (!place || by < place.to || first?.kind !== 'rank' || !first.subject || !fit(place, first) || first.fact.value.toNumber() !== 1 || !/^(?:place|spot|position|overall|now|here|again)?$/.test(stretch(c.parsed.low, place.to, by))) return out;
  const sign = first.term.variant === 'lowest' ? -1 : 1;
  const others = first.term.args.slice(1).flatMap((k) => { const f = typeof k === 'string' ? c.facts.value(k) : undefined; return f && isFact(f) ? [{ key: k as string, value: f.value }] : []; }).sort((a, b) => sign * b.value.compare(a.value));
  const next = others[0] && c.grid.byKey.get(others[0].key);
  if (next) push(out, c, { kind: m.unit?.id === '%' ? 'percent_change' : 'difference', args: [first.subject.key, next.key] }, m.unit?.id === '%' ? 'percent_change' : 'difference', 0, first.subject, 'ahead of the next', { base: next, firm: true, sign });
  return out;
}
