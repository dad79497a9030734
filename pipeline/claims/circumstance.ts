// "The kettle takes 8 percent less than the urn on the long boil": what follows the thing that is compared with holds for both of
// the two, unless the first had its own: they are compared in one circumstance.
import type { Hit } from './evidence.js';
import type { Grid } from './grid.js';
import type { Parsed } from './parse.js';

const leads = new Set(['in', 'on', 'at', 'under', 'with', 'during', 'for', 'over', 'through']);

/** Takes names of work and parts out of the comparison that they only stand at the end of. */
export function shareCircumstance(g: Grid, p: Parsed, hits: readonly Hit[]): void {
  for (const h of hits) {
    if (h.baseOf < 0 || h.baseOf >= p.said.length) continue;
    const { field } = g.slots[h.slot]!;
    if (field !== 'workload' && field !== 'part') continue;
    // "on the long boil" after a thing; "the urn's lid", "the urn lid" too.
    const thing = hits.some((o) => o.baseOf === h.baseOf && o.to <= h.from && g.slots[o.slot]!.field === 'setup' && !g.holders.has(o.value) && (field === 'part' ? h.from - o.to <= 1 : true));
    if (!thing || (field === 'workload' && p.low[h.from] !== 'from' && !p.low.slice(Math.max(0, h.from - 2), h.from).some((w) => leads.has(w)))) continue;
    if (hits.some((o) => o !== h && g.slots[o.slot]!.field === field && o.value !== h.value)) continue;
    h.baseOf = -1;
  }
}
