// "the one … the other", "the former … the latter": which of two named before.
import type { Hit } from './evidence.js';
import type { Grid } from './grid.js';
import type { Parsed } from './parse.js';
import type { State } from './state.js';

type Pointer = Pick<Hit, 'slot' | 'value' | 'from' | 'to' | 'points' | 'or'>;

/** "33 on the pump and 29 on the fan, so 0.4 higher with the one and 0.3 lower with the other": the two that were named last, in their order. */
export function oneAndOther(g: Grid, p: Parsed, hits: readonly Hit[], state: State): Pointer[] {
  const latter = p.low.some((w) => w === 'former' || w === 'latter');
  if (!latter && !p.low.includes('other')) return [];
  const at = (words: readonly string[], from: number): number => p.low.findIndex((w, k) => k >= from && w === words[0] && p.low[k + 1] === words[1] && !/^(?:of|that|which|who|i|we|you)$/.test(p.low[k + 2] ?? ''));
  const [one, other] = latter ? [at(['the', 'former'], 0), at(['the', 'latter'], 0)] as const : [at(['the', 'one'], 0), at(['the', 'other'], 2)] as const;
  // "the latter" may stand alone; "the other" says which only beside "the one".
  if (latter ? one < 0 && other < 0 : one < 0 || other < one + 2) return [];
  const first = latter ? Math.min(...[one, other].filter((k) => k >= 0)) : one;
  const pair = (slot: number): string[] => [...new Set(hits.filter((h) => h.slot === slot && h.to <= first).map((h) => h.value))];
  const own = g.slots.flatMap((s, slot) => (['setup', 'setting', 'part', 'workload'].includes(s.field) && pair(slot).length === 2 ? [{ slot, values: pair(slot) }] : []));
  const two = own.at(-1) ?? (state.list?.values.length === 2 ? state.list : undefined);
  if (!two) return [];
  // Two that were only named one after the other: which of them is "the one" is open.
  const open = !own.length && !latter && state.list?.scattered === true;
  return [one, other].flatMap((from, k): Pointer[] => (from < 0 ? [] : [{ slot: two.slot, value: two.values[k]!, from, to: from + 2, points: true, ...(open && { or: two.values[1 - k]! }) }]));
}
