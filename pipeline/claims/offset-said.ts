// "with the supply turned down by sixty millivolts": by how much something was set lower or higher, where the record has that.
import { stretch, WordClass } from '../script/index.js';
import { isFact } from '../facts/index.js';
import type { Candidate, Context } from './context.js';
import { fits } from '../wording/index.js';
import { push } from './read-value.js';
import { valueOf } from './terms.js';

const setting = new WordClass(/^(?:down|up|lower|lowered|reduced|raised|undervolt(?:ed|ing)?|offset|full|whole|entire|turned|dialled|dialed|minus|negative|pulled|taken|dropped|set|tuned|backed|off)$/);

/** Just the offset that the record gives, where the words before the number say that something was set. */
export function offsetSaid(c: Context, index: number): Candidate[] {
  const m = c.parsed.said[index]!.mention;
  const out: Candidate[] = [];
  const { low } = c.parsed;
  // "The overclock adds 120 megahertz": the setting itself does it.
  const adds = /^(?:adds?|added|raises?|raised|gives?|gave|asks? for|asked for|lifts?|sets?|takes?|shaves?|cuts?)(?: by)?$/.test(stretch(low, c.hits.hits.findLast((h) => c.grid.of.setting.includes(h.slot) && h.to <= m.from)?.to ?? m.from, m.from));
  if (!m.unit || m.unit.id === '%' || (!adds && !setting.in(low, m.from - 5, m.from))) return out;
  for (const x of c.grid.cells) {
    const fact = x.role === 'offset' ? c.facts.value(x.key) : undefined;
    if (adds && !c.hits.hits.some((h) => x.at[h.slot] === h.value)) continue;
    if (fact && isFact(fact) && fits(m, fact, { size: true })) push(out, c, valueOf(x.key), 'constant', 0, x, 'by how much it was set');
  }
  return out;
}
