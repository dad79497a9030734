// "The lid takes the hum from 41 to 37 decibels": what does it is there at the end, and was not at the beginning.
import { giving } from './agent.js';
import { leadTo } from './comes-from.js';
import type { Hit } from './evidence.js';
import type { Grid } from './grid.js';
import type { Parsed } from './parse.js';
import { insteadOf } from './usual-setting.js';

const leading = /^(?:moves?|moved|brings?|drops|dropped|push(?:es|ed)?|pulls?|pulled|shrinks?|shrank|widens?|widened|narrows?|narrowed|lifts?|lifted|drags?|dragged|nudge[sd]?|bumps?|bumped|reduces?|reduced|boosts?|boosted|trims?|increase[sd]?|decrease[sd]?|improve[sd]?)$/;
const lead = /^(?:in|on|at|with|under|without|for|to|from|of)$/;

/** More words than these between what does it and its verb, and it is another's. */
const reach = 4;

/** Moves a setting that takes something from one figure to another to the second of them; gives what stands in its place at the first. */
export function ledFrom(g: Grid, p: Parsed, hits: readonly Hit[]): Hit[] {
  const out: Hit[] = [];
  // "…; outside it goes from 38 to 35": with the same ends.
  let ends: Hit[] = [];
  for (const [k, { mention: a, segment }] of p.said.entries()) {
    const b = p.said[k + 1]?.mention;
    if (!b || a.type !== 'cardinal' || b.type !== 'cardinal' || leadTo(p.low, a.from) !== 'from' || leadTo(p.low, b.from) !== 'to' || p.low.slice(a.to, b.from).some((w) => /^[,;:]$/.test(w))) continue;
    const own = hits.filter((h) => h.segment === k && g.slots[h.slot]!.field === 'setting' && h.baseOf < 0 && h.from >= segment.from && h.to <= a.from);
    if (!own.length) out.push(...ends.filter((e) => ![k, k + 1].some((i) => hits.some((h) => h.slot === e.slot && h.segment === i))).map((e, i) => ({ ...e, segment: k + (i % 2), from: a.from - 1, to: a.from })));
    for (const h of own) {
      const at = p.low[h.from - 1] === 'the' ? p.low[h.from - 2] : p.low[h.from - 1];
      if (lead.test(at ?? '') || lead.test(p.low[h.from]!) || !p.low.slice(h.to, Math.min(a.from, h.to + reach)).some((w) => giving.test(w) || leading.test(w)) || hits.some((o) => o.slot === h.slot && o !== h && (o.segment === k || o.segment === k + 1))) continue;
      const without = insteadOf(g, h.slot, h.value);
      h.segment = k + 1;
      if (without === undefined) continue;
      out.push({ ...h, value: without, from: a.from - 1, to: a.from, segment: k });
      ends = [out.at(-1)!, h];
    }
  }
  return out;
}
