// "Hum, same order. 31.2, 38.4, 42.7": a row of figures without a name, as many as there are things or settings. Which row of
// the record it is, the figures tell: all of them together fit one row alone. One that does not fit where the others do, or two
// that have changed places, is a mistake.
import { type Facts, isFact, roomParts } from '../facts/index.js';
import type { SentenceHits } from './evidence.js';
import { fits } from '../wording/index.js';
import type { Cell, Grid } from './grid.js';
import { numberLists } from './lists.js';
import type { Parsed } from './parse.js';
import type { State } from './state.js';
import { defaultPhases } from './usual-phases.js';

/** What is not named and was not spoken of costs so much; a row may cost no more than the second where all fit, the third where not. */
const cost = { unspoken: 3, most: 7, mistaken: 1 } as const;

interface Row { slot: number; cells: readonly Cell[]; cost: number }

/** The names of the sentence, with the rows that its figures tell. */
export function withRows(facts: Facts, g: Grid, p: Parsed, hits: SentenceHits, s: State): SentenceHits {
  let paired: Map<number, readonly { slot: number; value: string }[]> | undefined;
  let guesses = hits.guesses;
  const runs = p.said.length < 3 ? [] : numberLists(p);
  for (const run of runs) {
    const guessed = guesses.some((x) => x.includes(run[0]!));
    if (run.length < 3 || (hits.paired.has(run[0]!) && !guessed) || run.some((k) => p.said[k]!.mention.type !== 'cardinal' || p.said[k]!.cue.op !== 'value')) continue;
    const row = rowOf(facts, g, p, hits, s, run);
    if (!row) continue;
    paired ??= new Map(hits.paired);
    const first = row.cells[0]!;
    const shared = g.slots.flatMap((_, i) => (i !== row.slot && first.at[i] ? [{ slot: i, value: first.at[i]! }] : []));
    run.forEach((k, i) => paired!.set(k, [{ slot: row.slot, value: row.cells[i]!.at[row.slot]! }, ...shared]));
    // "71, 64 and 58 degrees, and the lid takes 5, 4 and 3 off those": the same things again.
    for (const next of runs) if (next.length === run.length && next[0]! > run.at(-1)! && next.every((k) => p.said[k]!.cue.op === 'change' && !p.said[k]!.cue.base)) next.forEach((k, i) => paired!.set(k, [{ slot: row.slot, value: row.cells[i]!.at[row.slot]! }]));
    guesses = guesses.filter((x) => !x.includes(run[0]!));
  }
  return paired ? { ...hits, paired, guesses } : hits;
}

function rowOf(facts: Facts, g: Grid, p: Parsed, hits: SentenceHits, s: State, run: readonly number[]): Row | undefined {
  let best: Row | undefined;
  let wrong: Row | undefined;
  const right = (k: number, x: Cell): boolean => { const f = facts.value(x.key); return isFact(f) && fits(p.said[k]!.mention, f, { size: false }); };
  for (const slot of [...g.of.setup, ...g.of.setting, ...g.of.workload]) for (const all of rowsOf(g, slot)) {
    const cells = subset(s, slot, all, run.length);
    if (!cells || !run.some((k) => cells.some((x) => right(k, x)))) continue;
    const total = costOf(g, p, hits, s, run, slot, cells[0]!);
    if (total > cost.most) continue;
    const whose = run.map((k) => cells.filter((x) => right(k, x)));
    const orders = ordersOf(s, slot, cells, p.low.includes('respectively'));
    const fitting = orders.find((o) => o.every((x, i) => whose[i]!.includes(x))) ?? bySize(p, run, whose);
    if (fitting) { if (!best || total < best.cost) best = { slot, cells: fitting, cost: total }; continue; }
    if (total > cost.mistaken || (wrong && wrong.cost <= total)) continue;
    const off = orders.find((o) => o.filter((x, i) => whose[i]!.includes(x)).length >= run.length - 1) ?? swapped(orders[0]!, whose);
    if (off) wrong = { slot, cells: off, cost: total };
  }
  return best ?? wrong;
}

/** Two have changed places, and each of the two is right for the other. */
function swapped(order: readonly Cell[], whose: readonly (readonly Cell[])[]): readonly Cell[] | undefined {
  const off = order.flatMap((x, i) => (whose[i]!.includes(x) ? [] : [i]));
  return off.length === 2 && order.length > 2 && whose[off[0]!]!.includes(order[off[1]!]!) && whose[off[1]!]!.includes(order[off[0]!]!) ? order : undefined;
}

/** From the least to the most, or the other way: whose each is then, the figures tell. */
function bySize(p: Parsed, run: readonly number[], whose: readonly (readonly Cell[])[]): readonly Cell[] | undefined {
  const steps = run.slice(1).map((k, i) => p.said[k]!.mention.value.compare(p.said[run[i]!]!.mention.value));
  if (whose.some((x) => x.length !== 1) || new Set(whose.map((x) => x[0])).size !== run.length || !(steps.every((d) => d > 0) || steps.every((d) => d < 0))) return undefined;
  return whose.map((x) => x[0]!);
}

/** As things were named last, as the record has them, and backwards. */
function ordersOf(s: State, slot: number, cells: readonly Cell[], respectively: boolean): readonly (readonly Cell[])[] {
  const told = [s.table, s.list].flatMap((l) => {
    if (l?.slot !== slot || l.values.length !== cells.length || ('scattered' in l && l.scattered)) return [];
    const order = l.values.map((v) => cells.find((x) => x.at[slot] === v));
    return order.every((x) => x !== undefined) ? [order as Cell[]] : [];
  });
  return told.length && respectively ? told : [...told, cells, [...cells].reverse()];
}

/** All that the record has in the row, or as many of them as were named side by side. */
function subset(s: State, slot: number, all: readonly Cell[], length: number): readonly Cell[] | undefined {
  if (all.length === length) return all;
  const list = [s.table, s.list].find((l) => l?.slot === slot && l.values.length === length);
  const some = list && all.filter((x) => list.values.includes(x.at[slot]!));
  return some?.length === length ? some : undefined;
}

function costOf(g: Grid, p: Parsed, hits: SentenceHits, s: State, run: readonly number[], slot: number, cell: Cell): number {
  let total = 0;
  const end = p.said[run.at(-1)!]!.mention.to;
  for (const [i, { field }] of g.slots.entries()) {
    if (i === slot) { if (hits.hits.some((h) => h.slot === i && run.includes(h.segment))) total += 1; continue; }
    const value = cell.at[i]!;
    const named = hits.bySlot[i]!.filter((h) => h.baseOf < 0 && !h.departs && h.from <= end + 4);
    const own = named.filter((h) => run.includes(h.segment));
    const last = own.length ? own : named.slice(-1);
    if (last.length) { if (!last.some((h) => h.value === value)) return Infinity; continue; }
    if (field === 'phase') { if (!defaultPhases(g).has(value) && s.topics[i]![0] !== value) total += 1; continue; }
    if (!value || (g.slots[i]!.field !== 'measure' && g.values[i]!.size === 1)) continue;
    if (field === 'part' && roomParts.includes(value)) return Infinity;
    if (field === 'measure' && (p.said[run[0]!]!.mention.unit || saidKind(g, hits, value))) continue;
    const k = s.topics[i]!.indexOf(value);
    total += k >= 0 ? (k < s.together[i]! ? 0 : 0.5 * k) : field === 'part' ? 0.5 : cost.unspoken;
  }
  return total;
}

function saidKind(g: Grid, hits: SentenceHits, measure: string): boolean {
  return hits.dimensions.some((d) => d.dimension.some((x) => g.measureUnits.get(measure)?.has(x)));
}

const rows = new WeakMap<Grid, Map<number, readonly (readonly Cell[])[]>>();

/** The measured cells that differ in one slot alone, three or more, in the order of the record. */
function rowsOf(g: Grid, slot: number): readonly (readonly Cell[])[] {
  let bySlot = rows.get(g);
  if (!bySlot) rows.set(g, (bySlot = new Map()));
  let found = bySlot.get(slot);
  if (!found) {
    const groups = new Map<string, Cell[]>();
    for (const x of g.cells) {
      if (x.fixed || !x.at[slot] || g.holders.has(x.at[slot]!)) continue;
      const id = x.at.map((v, i) => (i === slot ? '' : v)).join('\u0000');
      const list = groups.get(id);
      if (list) list.push(x);
      else groups.set(id, [x]);
    }
    bySlot.set(slot, (found = [...groups.values()].filter((l) => l.length > 2)));
  }
  return found;
}
