// "comes down to 37 decibels from 41", "is up to 12.4, from 11.9": where it is now, and, said after it, where it was.
import { comesFrom, leadAt } from './comes-from.js';
import { basesFor, baseWords } from './bases.js';
import { type Candidate, type Context, sameCellExcept } from './context.js';
import { fit } from './decide.js';
import { push, readValue } from './read-value.js';
import { valueOf } from './terms.js';

/** Readings of the figure that it came from: of the same quantity, in what the figure before it may be compared with; none where it is no such figure, or something is named beside it. */
export function readCameFrom(c: Context, index: number): Candidate[] {
  const { mention: m } = c.parsed.said[index]!;
  const { low } = c.parsed;
  const now = c.done[index - 1];
  const out: Candidate[] = [];
  const from = leadAt(low, m.from);
  if (low[from] !== 'from' || !now?.subject || now.term.kind !== 'mean' || now.subject.fixed || m.type !== 'cardinal' || !fit(c.parsed.said[index - 1]!.mention, now)) return out;
  // "31 decibels in the barn, up from 28": said as an afterthought.
  const way = afterthought(low, c.parsed.said[index - 1]!.mention.to, from);
  if (!way && !comesFrom(low, from) || (!way && c.parsed.said[index - 1]!.mention.to < from - 1) || (m.unit && m.unit.dimension !== now.fact.unit.dimension && !m.loose)) return out;
  const fields = ['setup', 'setting', 'workload', 'phase'];
  const beside = c.hits.hits.filter((h) => h.segment === index && h.from >= from && fields.includes(c.grid.slots[h.slot]!.field));
  const changed = beside.filter((h) => now.subject!.at[h.slot] !== h.value);
  if (changed.length) {
    // "up to 41.8 from 40.7 at rest": all else is as it was.
    for (const x of readValue(c, index)) if (x.subject && sameCellExcept(c.grid, x.subject, now.subject).every((i) => changed.some((h) => h.slot === i && x.subject!.at[i] === h.value))) out.push(x);
    return out;
  }
  for (const b of basesFor(c, now.subject, index - 1, { ...baseWords(c, index - 1), overrides: new Map(), any: false, low: [], pronoun: false }, undefined)) if (!b.cell.fixed) push(out, c, valueOf(b.cell.key), 'mean', b.cost, b.cell, 'where it came from');
  // "The Cobble's at 31 now, up from 28": from what it was itself.
  const own = way ? c.hits.hits.find((h) => h.from <= 2 && h.baseOf < 0 && c.grid.of.setup.includes(h.slot) && now.subject!.at[h.slot] === h.value && !/^(?:in|on|at|with|under|inside)$/.test(low[h.from - (low[h.from - 1] === 'the' ? 2 : 1)] ?? '')) : undefined;
  if (own && out.some((x) => x.subject?.at[own.slot] === own.value)) for (const x of out) if (x.subject?.at[own.slot] !== own.value) x.cost += 1.6;
  if (way) for (const x of out) if ((way === 'up') === (x.fact.value.compare(now.fact.value) > 0)) Object.assign(x, { sign: x.fact.value.sign() > 0 ? -1 : 1 });
  return out;
}

/** The way that stands right before "from", behind a comma and nothing that begins anew. */
function afterthought(low: readonly string[], since: number, from: number): 'up' | 'down' | undefined {
  const way = low[from - 1];
  const gap = low.slice(since, from - 1);
  if ((way !== 'up' && way !== 'down') || gap.length > 8) return undefined;
  const comma = gap.findLastIndex((w) => /^[,(—–-]$/.test(w));
  return comma >= 0 && gap.slice(comma + 1).every((w) => /^(?:which|is|that's|so|a|bit|little|lot|way|just|slightly|and|well|right)$/.test(w)) && !gap.slice(0, comma).some((w) => /^(?:and|but|while|so|because|it's|is|,|;)$/.test(w)) ? way : undefined;
}
