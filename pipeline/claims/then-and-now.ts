// "Before, it ran at 91 percent; now it's 84", "it used to take 12": of the two that were compared last, the one that was left
// and the one that was come to. Only "before" and its like say so by themselves: "now" opens any sentence.
import { sameCellExcept } from './context.js';
import type { Hit } from './evidence.js';
import type { Grid } from './grid.js';
import type { Parsed } from './parse.js';
import type { State } from './state.js';

const former = /^(?:before|previously|beforehand|formerly|originally|earlier|until|used)$/;
const later = /^(?:now|today|afterwards|afterward|since|nowadays)$/;

type Named = Pick<Hit, 'slot' | 'value' | 'from' | 'to'>;

export function thenAndNow(g: Grid, p: Parsed, hits: readonly Hit[], state: State): Named[] {
  if (!state.pair || (state.since ?? 0) > 3 || !p.low.some((w) => former.test(w))) return [];
  const [from, to] = state.pair.map((k) => g.byKey.get(k));
  const slots = from && to ? sameCellExcept(g, from, to) : [];
  const slot = slots[0];
  // What is named here for itself needs no word of time, but "now" may be the name of what was come to.
  if (slot === undefined || slots.length !== 1 || g.slots[slot]!.field !== 'setting' || hits.some((h) => h.slot === slot && h.value !== to!.at[slot])) return [];
  // "half of what it burnt in spring": what is compared with is looked for by itself.
  const named = (k: number): boolean => p.names.some((n) => n.from <= k && k < n.to) || p.said.some(({ cue }) => cue.base && cue.base.from <= k && k < cue.base.to);
  const places = [...p.low.keys()].filter((k) => !named(k));
  const was = places.filter((k) => isFormer(p.low, k));
  if (!was.length) return [];
  const is = places.filter((k) => later.test(p.low[k]!));
  return [...was.map((k) => ({ slot, value: from!.at[slot]!, from: k, to: k + 1 })), ...is.map((k) => ({ slot, value: to!.at[slot]!, from: k, to: k + 1 }))].sort((a, b) => a.from - b.from);
}

/** "before" with nothing that it stands before; "used to" with what was done then. */
function isFormer(low: readonly string[], k: number): boolean {
  if (!former.test(low[k]!)) return false;
  if (low[k] === 'used') return low[k + 1] === 'to' && !/^(?:is|are|was|were|get|gets|got|be|been|being|it's)$/.test(low[k - 1] ?? '');
  if (low[k] === 'until') return /^(?:now|then)$/.test(low[k + 1] ?? '');
  return /^(?:[,.;:!?)]|and|but|or)?$/.test(low[k + 1] ?? '') && !/^(?:as|than|days?|weeks?|months?|years?|hours?|minutes?|seconds?|night|time|ever|never|the|one)$/.test(low[k - 1] ?? '');
}
