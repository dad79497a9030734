// "The Cobble takes 212 watts and needs 96 minutes. The Garth takes 174 and is done in 81": a bare number whose quantity is only
// carried over, and that cannot be of that one, is of the other that was told in the row before, if it is just right for it.
import { isFact } from '../facts/index.js';
import type { Context } from './context.js';
import { fit } from './decide.js';
import { significant } from './insist.js';
import type { Reading } from './read.js';

export function anotherMeasure(c: Context, index: number, r: Reading): Reading {
  const g = c.grid;
  const best = r.chosen;
  const m = r.mention;
  if ((r.verdict !== 'disagrees' && r.verdict !== 'untied') || r.turned || m.unit || m.hedge || m.type !== 'cardinal' || significant(m) < 3 || best?.term.kind !== 'mean' || !best.subject || best.subject.fixed) return r;
  const measure = g.of.measure[0]!;
  const own = best.subject;
  const named = [measure, ...g.of.part];
  if (c.hits.hits.some((h) => h.segment === index && named.includes(h.slot)) || c.hits.dimensions.some((d) => d.segment === index)) return r;
  for (const other of c.now.topics[measure]!) {
    if (other === own.at[measure]) continue;
    for (const x of g.byMeasure.get(other) ?? []) {
      if (x.fixed || ![...g.of.setup, ...g.of.setting, ...g.of.workload].every((i) => x.at[i] === own.at[i])) continue;
      const fact = c.facts.value(x.key);
      const candidate = { ...best, fact, subject: x } as typeof best;
      if (isFact(fact) && fit(m, candidate)) return { ...r, verdict: 'agrees', chosen: { ...candidate, term: { ...best.term, args: [x.key] } }, why: 'of the other quantity told before' };
    }
  }
  return r;
}
