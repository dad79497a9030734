// What is carried over from before gives way to what the sentence names, where the record has no reading of the two together:
// "With the wide tray, it takes 40 minutes", after a spell of drying that knows no trays.
import type { Hit, SentenceHits, SlotEvidence } from './evidence.js';
import type { Grid } from './grid.js';
import { firstCell, type Term } from './terms.js';

const known = new WeakMap<Grid, Map<string, ReadonlySet<string>>>();

/** The pairs of slot values that measured readings of a measure have. */
function pairsOf(g: Grid, measure: string): ReadonlySet<string> {
  let byMeasure = known.get(g);
  if (!byMeasure) known.set(g, (byMeasure = new Map()));
  let pairs = byMeasure.get(measure);
  if (!pairs) {
    const all = new Set<string>();
    for (const x of g.byMeasure.get(measure) ?? []) if (!x.fixed) for (let i = 0; i < x.at.length; i++) for (let k = 0; k < x.at.length; k++) if (i !== k) all.add(`${i}=${x.at[i]!}\u0000${k}=${x.at[k]!}`);
    byMeasure.set(measure, (pairs = all));
  }
  return pairs;
}

/** `measures`: those that the figure can be of. */
export function yieldToNamed(g: Grid, out: readonly SlotEvidence[], { bySlot, roles }: Pick<SentenceHits, 'bySlot' | 'roles'>, index: number, measures: readonly string[], mark: boolean): void {
  for (const i of g.of.setting) {
    const named = settingNamed(bySlot, i, index);
    if (!named) continue;
    const having = measures.filter((m) => g.valuesWith.get(m)![i]!.has(named.value));
    if (!having.length) continue;
    const e = out[i]!;
    if (!e.named && !mark && !roles.some((r) => /^(?:limit|target|rated)$/.test(r.role))) e.empty = Math.max(e.empty, unnamed);
    for (const k of g.of.workload) {
      const carried = out[k]!;
      if (carried.named || bySlot[k]!.some((h) => h.segment <= index)) continue;
      for (const v of carried.costs.keys()) if (!having.some((m) => pairsOf(g, m).has(`${i}=${named.value}\u0000${k}=${v}`))) carried.costs.delete(v);
    }
  }
}

/** What a reading costs that has no setting, where the sentence names one. */
const unnamed = 0.4;

function settingNamed(bySlot: readonly (readonly Hit[])[], slot: number, index: number): Hit | undefined {
  return bySlot[slot]!.filter((h) => h.baseOf < 0 && !h.departs && h.segment <= index).at(-1);
}

/** What the last figure is of was measured with this value of a slot, too. */
export function givenFor(g: Grid, last: Term, slot: number, value: string): boolean {
  const cell = firstCell(g, last);
  return cell === undefined || (g.byMeasure.get(cell.at[g.of.measure[0]!]!) ?? []).some((x) => x.at[slot] === value && g.of.part.every((i) => x.at[i] === cell.at[i]));
}
