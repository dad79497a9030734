// A count of what a list behind it names, whatever noun it is counted by.
//   "Each sheet saw three ages: fresh, worn and dried"     as many as are named; of which kind they are says the record
//   "Two of them, the Alder and the Brook, …"
import { stretch } from '../script/index.js';
import { Exact } from '../quantities/index.js';
import { type Context } from './context.js';

export interface Listed {
  slot: number;
  values: readonly string[];
  /** The list ends its sentence, joined by a last "and": nothing more can belong to it. */
  whole: boolean;
}

/** Who counts more than this does not name them all. */
const most = 12;

/** More words than this before the list opens, and something else is counted. */
const reach = 8;

const joint = /^(?:,|and|the|a|an|then|or|both|plus|my|our)$/;

export function listedBehind(c: Context, index: number): Listed | undefined {
  const { mention: m } = c.parsed.said[index]!;
  if (m.type !== 'cardinal' || m.unit || m.decimals > 0) return undefined;
  const { low } = c.parsed;
  const outOf = (k: number): boolean => { const [a, b] = [c.parsed.said[k]?.mention, c.parsed.said[k + 1]?.mention]; return a !== undefined && b !== undefined && /^of(?: the| my| our| these| those)?$/.test(stretch(low, a.to, b.from)); };
  // "two of the five get by, the Alder and the Brook": two are named, and not five.
  if (outOf(index - 1)) return undefined;
  const after = c.parsed.said[outOf(index) ? index + 2 : index + 1];
  const opens = low.findIndex((w, k) => k >= m.to && (/^[,:;—–]$/.test(w) || w === 'namely'));
  if (opens < 0 || opens > m.to + reach || (after?.mention.from ?? opens) < opens || m.value.compare(Exact.of(most)) > 0) return undefined;
  let start = opens + 1;
  while (joint.test(low[start] ?? '')) start++;
  for (const slot of [...c.grid.of.setup, ...c.grid.of.setting, ...c.grid.of.workload]) {
    const values: string[] = [];
    let at = start;
    let last = '';
    for (;;) {
      const hit = c.hits.bySlot[slot]!.find((h) => h.from <= at && at < h.to);
      if (!hit || values.includes(hit.value)) break;
      values.push(hit.value);
      let next = hit.to;
      while (joint.test(low[next] ?? '')) next++;
      last = low.slice(hit.to, next).includes('and') ? 'and' : last;
      if (next === hit.to) { at = next; break; }
      at = next;
    }
    if (values.length > 1) return { slot, values, whole: last === 'and' && (at >= low.length || low[at] === '.' || (low[at - 1] === ',' && /^of (?:them|these|those)$/.test(stretch(low, m.to, m.to + 2)))) };
  }
  return undefined;
}
