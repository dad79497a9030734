// "Since March it has gained three decibels", "compared to March, it …": what a change is counted from, where the sentences
// before speak of another one.
import { stretch } from '../script/index.js';
import type { Hit } from './evidence.js';
import type { Grid } from './grid.js';
import type { Parsed } from './parse.js';
import type { State } from './state.js';

const counted = /^(?:since|(?:compared|relative) (?:to|with)|next to|against|versus)$/;

/** Marks what such words lead to as what the sentence sets out from. "Since the louvre", of what has been there from then on, is no start. */
export function departSince(g: Grid, p: Parsed, hits: readonly Hit[], state: State): void {
  if (!p.said.length || !p.said.every((s) => s.cue.op === 'change')) return;
  for (const h of hits) {
    const lead = p.low[h.from - 1] === 'the' ? h.from - 2 : h.from - 1;
    if (lead < 0 || !counted.test(stretch(p.low, lead > 0 && /^(?:to|with)$/.test(p.low[lead]!) ? lead - 1 : lead, lead + 1))) continue;
    if (lead > 1 || g.slots[h.slot]!.field !== 'setting' || h.to > p.said[0]!.mention.from) continue;
    const since = p.low[lead] === 'since';
    const here = state.topics[h.slot]![0];
    if (since && (here === undefined || here === h.value || p.names.some((n) => n.from === h.from && n.meanings.some((m) => m.led)))) continue;
    if (hits.some((o) => o !== h && o.slot === h.slot && o.value === h.value)) continue;
    Object.assign(h, { departs: true, alone: true, baseOf: p.said.length });
  }
}
