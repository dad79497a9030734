// A figure that was said before, and was right, may be said again with less around it: "127 millivolts are worth it to me".
import { type KeyField, splitKey } from '../facts/index.js';
import type { Mention } from '../script/index.js';
import type { Candidate } from './context.js';
import type { Hit } from './evidence.js';
import type { Grid } from './grid.js';
import type { Reading } from './read.js';

/** Readings that agreed, found by number and unit once any are asked for: most scripts have few alarms. */
export class Agreed {
  readonly #known = new Map<string, Candidate[]>();
  #fresh: { mention: Mention; chosen: Candidate }[] = [];

  add(mention: Mention, chosen: Candidate): void {
    this.#fresh.push({ mention, chosen });
  }

  /** In the order in which they were said. */
  like(m: Mention): readonly Candidate[] {
    for (const { mention, chosen } of this.#fresh) {
      const list = this.#known.get(keyOf(mention));
      if (list) list.push(chosen);
      else this.#known.set(keyOf(mention), [chosen]);
    }
    this.#fresh = [];
    return this.#known.get(keyOf(m)) ?? [];
  }
}

function keyOf(m: Mention): string {
  return `${m.value.n}/${m.value.d} ${m.unit!.dimension} ${m.decimals}`;
}

const fields: readonly KeyField[] = ['setup', 'setting', 'part', 'workload'];

/** Remembers what agrees; turns an alarm into agreement where the very same figure was right before and nothing named here speaks against it. */
export function restated(g: Grid, agreed: Agreed, r: Reading, hits: readonly Hit[], segment: number): Reading {
  const m = r.mention;
  if (m.type !== 'cardinal' || !m.unit) return r;
  if (r.verdict === 'agrees' && r.chosen) {
    agreed.add(m, r.chosen);
    return r;
  }
  if (r.verdict !== 'disagrees' && r.verdict !== 'untied') return r;
  const named = hits.filter((h) => h.segment === segment);
  const before = agreed.like(m).find((x) => x.kind !== 'count' && x.kind !== 'rank' && (r.verdict === 'untied' || !r.chosen?.firm) && (!r.chosen?.subject || !x.subject || x.kind !== r.chosen.kind || x.sign === 0 || r.chosen.sign === 0 || x.sign === r.chosen.sign) && named.every((h) => {
    const { field } = g.slots[h.slot]!;
    return !fields.includes(field) || x.fact.keys.some((k) => g.byKey.get(k)?.at[h.slot] === h.value || splitKey(k.split('#')[0]!)?.[field] === h.value);
  }));
  return before ? { ...r, verdict: 'agrees', chosen: before, why: 'as said before' } : r;
}
