// "…, twice what it was", "half of what it used to be", "1.9 times what that had been a moment ago": the quantity said last,
// against itself as it was before. What "before" means is told by what was spoken of: the figures said, the work or the setting
// named earlier. Where none of them gives the multiple, what it was is not known, and nothing is told wrong.
import { stretch } from '../script/index.js';
import { type Candidate, type Context, sameCellExcept } from './context.js';
import { moved } from './grid.js';
import { siblings } from './siblings.js';
import { push } from './read-value.js';
import { evaluate, firstCell, substitute, type Term } from './terms.js';

const past = /^(?:of )?what (?:it|they|that|this|he|she|the \p{L}+) (?:was|were|had been|used to be|once was|did|had|used to|took|cost|drew)\b/u;

/** Readings as a multiple of what was said last as it was then; undefined where the words speak of something else. */
export function readWhatItWas(c: Context, index: number): Candidate[] | undefined {
  const { mention: m, cue } = c.parsed.said[index]!;
  const { low } = c.parsed;
  if (!past.test(stretch(low, m.to, m.to + 6))) return undefined;
  const fields = ['setup', 'setting', 'workload', 'phase'];
  // Whose it is may be said in the clause, and what is meant by then after it.
  if (c.hits.hits.some((h) => (h.segment === index || (h.from >= m.to && h.from < Math.max(cue.base?.to ?? 0, m.to + 6))) && fields.includes(c.grid.slots[h.slot]!.field)) || c.hits.roles.some((r) => r.from >= m.to)) return undefined;
  const [last, ...earlier] = c.now.said;
  const cell = last && firstCell(c.grid, last);
  if (!last || !cell) return [];
  const out: Candidate[] = [];
  const add = (other: Term | undefined, cost: number): void => { if (other) push(out, c, { kind: 'ratio', args: [last, other] }, 'ratio', cost, cell, 'what it was', { firm: true }); };
  const quantity = [...c.grid.of.measure, ...c.grid.of.part];
  for (const t of earlier) { const x = firstCell(c.grid, t); if (t.kind === last.kind && t.args.every((a, k) => typeof a === typeof last.args[k]) && x && quantity.every((i) => x.at[i] === cell.at[i])) add(t, 0.1); }
  for (const field of ['setting', 'workload', 'phase'] as const) for (const i of c.grid.of[field]) for (const v of c.now.topics[i]!) {
    if (v === cell.at[i]) continue;
    add(substitute(c.grid, last, new Map([[i, v]])), 0.2);
    add(spreadAt(c, last, i, v), 0.2);
  }
  return out;
}

/** "Best to worst that is 17 degrees": where it is from the least to the most of all things, the same elsewhere is of whoever comes first and last there. */
function spreadAt(c: Context, t: Term, slot: number, value: string): Term | undefined {
  const [a, b] = t.args.map((x) => (typeof x === 'string' ? c.grid.byKey.get(x) : undefined));
  if (t.kind !== 'difference' || !a || !b || !sameCellExcept(c.grid, a, b).every((i) => c.grid.of.setup.includes(i))) return undefined;
  const there = moved(c.grid, a, new Map([[slot, value]]));
  const valued = there ? siblings(c.grid, there, c.grid.of.setup).flatMap((x) => { const f = evaluate(c.facts, { kind: 'mean', args: [x.key] }); return f ? [{ key: x.key, value: f.value }] : []; }).sort((p, q) => p.value.compare(q.value)) : [];
  return valued.length > 2 ? { kind: 'difference', args: [valued.at(-1)!.key, valued[0]!.key] } : undefined;
}
