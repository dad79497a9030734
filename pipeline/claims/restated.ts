// A figure that was said before, and was right, may be said again with less around it: "127 millivolts are worth it to me".
import { type KeyField, splitKey } from '../facts/index.js';
import type { Candidate } from './context.js';
import type { Hit } from './evidence.js';
import type { Grid } from './grid.js';
import type { Reading } from './read.js';

/** Readings that agreed, by number and unit. */
export type Agreed = Map<string, Candidate[]>;

const fields: readonly KeyField[] = ['setup', 'setting', 'part', 'workload'];

/** Remembers what agrees; turns an alarm into agreement where the very same figure was right before and nothing named here speaks against it. */
export function restated(g: Grid, agreed: Agreed, r: Reading, hits: readonly Hit[], segment: number): Reading {
  const m = r.mention;
  if (m.type !== 'cardinal' || !m.unit) return r;
  const key = `${m.value.n}/${m.value.d} ${m.unit.dimension} ${m.decimals}`;
  if (r.verdict === 'agrees' && r.chosen) {
    const list = agreed.get(key);
    if (list) list.push(r.chosen);
    else agreed.set(key, [r.chosen]);
    return r;
  }
  if (r.verdict !== 'disagrees' && r.verdict !== 'untied') return r;
  const named = hits.filter((h) => h.segment === segment);
  const before = agreed.get(key)?.find((x) => x.kind !== 'count' && x.kind !== 'rank' && (r.verdict === 'untied' || !r.chosen?.firm) && (!r.chosen?.subject || !x.subject || x.kind !== r.chosen.kind || x.sign === 0 || r.chosen.sign === 0 || x.sign === r.chosen.sign) && named.every((h) => {
    const { field } = g.slots[h.slot]!;
    return !fields.includes(field) || x.fact.keys.some((k) => g.byKey.get(k)?.at[h.slot] === h.value || splitKey(k.split('#')[0]!)?.[field] === h.value);
  }));
  return before ? { ...r, verdict: 'agrees', chosen: before, why: 'as said before' } : r;
}
