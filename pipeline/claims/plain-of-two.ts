// "The desk and shut on the desk are level": of two names side by side that agree but for what the one says more, the other is as
// it is without that.
import { stretch } from '../script/index.js';
import type { Hit } from './evidence.js';
import type { Grid } from './grid.js';
import type { Parsed } from './parse.js';
import { insteadOf } from './usual-setting.js';

type Named = Pick<Hit, 'slot' | 'value' | 'from' | 'to'>;

/** What the plainer of two such names leaves unsaid. */
export function plainOfTwo(g: Grid, p: Parsed, hits: readonly Hit[]): Named[] {
  const out: Named[] = [];
  for (const slots of [g.of.setting, g.of.setup]) {
    if (slots.length < 2) continue;
    const names = grouped(hits.filter((h) => slots.includes(h.slot)));
    names.slice(1).forEach((b, k) => {
      const a = names[k]!;
      if (!/^(?:,|,? ?(?:and|or)|against|versus|vs)(?: the| a)?$/.test(stretch(p.low, a[0]!.to, b[0]!.from))) return;
      const [plain, more] = a.length < b.length ? [a, b] : [b, a];
      if (plain.length === more.length || !plain.every((x) => more.some((y) => y.slot === x.slot && y.value === x.value))) return;
      for (const { slot, value } of more) {
        const instead = plain.some((x) => x.slot === slot) ? undefined : insteadOf(g, slot, value);
        if (instead !== undefined) out.push({ slot, value: instead, from: plain[0]!.from, to: plain[0]!.to });
      }
    });
  }
  return out;
}

/** Hits of one name each, in the order of the sentence. */
function grouped(hits: readonly Hit[]): Hit[][] {
  const out = new Map<number, Hit[]>();
  for (const h of hits) out.set(h.from, [...(out.get(h.from) ?? []), h]);
  return [...out.values()].sort((a, b) => a[0]!.from - b[0]!.from);
}
