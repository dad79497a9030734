// The two ends of "from … to …".
import { basesFor, baseWords } from './bases.js';
import { type Candidate, type Context, sameCellExcept } from './context.js';
import { fit } from './decide.js';
import { eitherEnd } from './ends-swapped.js';
import { push, readValue } from './read-value.js';
import { substitute, valueOf } from './terms.js';

/** The ends of "from … to …": the second is the subject, the first what it is compared with. */
export function readPair(c: Context, index: number, pair: { first: number; second: number; way?: 'up' | 'down' }): Candidate[] {
  if (index === pair.second) {
    const first = c.done[pair.first];
    const departs = first?.subject && first.term.kind === 'mean' && fit(c.parsed.said[pair.first]!.mention, first) ? first.subject : undefined;
    const [measure, part] = [c.grid.of.measure[0]!, c.grid.of.part[0]!];
    // "The oil cools from 71.2 to 64.5, for two decibels more": both ends are of the same quantity.
    const other = (x: Candidate): boolean => departs !== undefined && x.subject !== undefined && (x.subject.at[measure] !== departs.at[measure] || x.subject.at[part] !== departs.at[part]);
    // "19 on the slow one and 24 on the fast one … the other goes from 31 to 38": it does not arrive where it set out.
    const found = readValue(c, index).map((x) => (departs && x.subject === departs && x.term.kind === 'mean' && c.grid.cells.some((y) => y !== departs && y.at.every((v, i) => v === departs.at[i] || c.now.topics[i]!.includes(v)) && eitherEnd(c, y, departs)) ? { ...x, cost: x.cost + 1 } : other(x) ? { ...x, cost: x.cost + 1.2 } : x));
    return pair.way ? checkWay(c, pair, found) : found;
  }
  const out: Candidate[] = readValue(c, index).map((x) => ({ ...x, cost: x.cost + (namedBeside(c, index) ? 0 : 0.7) }));
  const second = c.parsed.said[pair.second]!.mention;
  const targets = readValue(c, pair.second);
  const good = targets.filter((x) => fit(second, x));
  for (const t of (good.length ? good : targets).slice(0, 3)) {
    if (!t.subject) continue;
    for (const b of basesFor(c, t.subject, pair.second, baseWords(c, pair.second), undefined)) {
      // "the limit goes from 160 down to 90 watts": a mark that was moved.
      if (b.cell.fixed && !t.subject.fixed) continue;
      const change = new Map(sameCellExcept(c.grid, t.subject, b.cell).map((i) => [i, b.cell.at[i]!] as const));
      const term = t.term.kind === 'mean' ? valueOf(b.cell.key) : substitute(c.grid, t.term, change);
      if (term) push(out, c, term, t.kind, t.cost + b.cost * 0.8, b.cell, b.why);
    }
  }
  return out;
}

function namedBeside(c: Context, index: number): boolean {
  return c.hits.hits.some((h) => h.segment === index && ['setup', 'setting', 'workload', 'phase'].includes(c.grid.slots[h.slot]!.field)) || c.hits.roles.some((r) => r.segment === index && r.firm) || c.hits.paired.has(index);
}

/** "12.11 up to 11.86" cannot be. */
function checkWay(c: Context, pair: { first: number; second: number; way?: 'up' | 'down' }, found: Candidate[]): Candidate[] {
  const a = c.parsed.said[pair.first]!.mention.value;
  const b = c.parsed.said[pair.second]!.mention.value;
  const rises = b.compare(a);
  if ((pair.way === 'up' && rises < 0) || (pair.way === 'down' && rises > 0)) return found.map((x) => ({ ...x, sign: (x.fact.value.sign() > 0 ? -1 : 1) as -1 | 1 }));
  return found;
}
