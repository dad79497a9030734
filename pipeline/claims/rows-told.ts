// "The base reads 37 and the lid 41. … Switch on the fan and it's 34 and 36, so 3 and 5 less": figures side by side that name
// nothing go, in turn, with those things that had figures side by side before them.
import { type Facts, isFact } from '../facts/index.js';
import { fits } from '../wording/index.js';
import { unitsOf } from './context.js';
import type { SentenceHits } from './evidence.js';
import { type Cell, type Grid, movedTo } from './grid.js';
import { numberLists } from './lists.js';
import { measuresIn } from './measured.js';
import type { Parsed } from './parse.js';
import type { State } from './state.js';
import type { ToldRow } from './told-row.js';

type Slotted = { slot: number; value: string };

/** Changes are of what was told just before; plain figures may go further back, as they tell themselves. */
const nearBy = 2;

/** The names of the sentence, with those that such figures go with. */
export function withRowsTold(facts: Facts, g: Grid, p: Parsed, hits: SentenceHits, s: State): SentenceHits {
  if (p.said.length < 2) return hits;
  let paired: Map<number, readonly Slotted[]> | undefined;
  let guesses = hits.guesses;
  let told: { row: Pick<ToldRow, 'slot' | 'values'> } | undefined;
  for (const run of numberLists(p)) {
    const guessed = guesses.some((x) => x.includes(run[0]!));
    if (!plainList(p, run)) continue;
    const { op } = p.said[run[0]!]!.cue;
    // What goes with a list told earlier still goes with a row told since.
    const slot = hits.paired.get(run[0]!)?.[0]?.slot;
    if (slot !== undefined && !guessed && (hits.bySlot[slot]!.length > 0 || s.rows?.find((r) => r.values.length === run.length)?.age !== 0)) continue;
    const found = op === 'value' ? valuesOf(facts, g, p, hits, s, run, slot !== undefined && !guessed) ?? changesAgain(g, p, hits, s, run) : changesOf(g, p, hits, s, run, told?.row);
    if (!found) continue;
    paired ??= new Map(hits.paired);
    run.forEach((k, i) => paired!.set(k, [{ slot: found.row.slot, value: found.row.values[i]! }, ...found.shared]));
    guesses = guesses.filter((x) => !x.includes(run[0]!));
    told = found;
  }
  return paired ? { ...hits, paired, guesses } : hits;
}

interface Found { row: Pick<ToldRow, 'slot' | 'values'>; shared: readonly Slotted[] }

/** Figures said one after the other, all of one kind, and no two ends of something. */
function plainList(p: Parsed, run: readonly number[]): boolean {
  const [first, last] = [p.said[run[0]!]!, p.said[run.at(-1)!]!];
  if (run.some((k) => p.said[k]!.mention.type !== 'cardinal' || p.said[k]!.named || p.said[k]!.cue.op !== first.cue.op) || !/^(?:value|change)$/.test(first.cue.op)) return false;
  // "louder than the quietest of the three, and 4.7 louder than …": how many there are is no figure of a list.
  if (run.some((k) => /^(?:the|these|those|all|of)$/.test(p.low[p.said[k]!.mention.from - 1] ?? ''))) return false;
  const between = p.low.slice(first.mention.to, last.mention.from);
  return !between.some((w) => /^(?:to|or|down|up|then|over|under)$/.test(w)) && between.includes('and') && !/^(?:between|from|both)$/.test(p.low[first.mention.from - 1] ?? '');
}

/** Nothing of that kind is named beside the figures or before them. */
function unnamed(hits: SentenceHits, p: Parsed, run: readonly number[], slot: number): boolean {
  const end = p.said[run.at(-1)!]!.mention.to;
  return !hits.hits.some((h) => h.slot === slot && h.baseOf < 0 && (run.includes(h.segment) || h.from < end || /^(?:for|on|in|with|at|of)$/.test(p.low[end] ?? '') && h.from <= end + 2));
}

/** Of rows told before, the first with a reading of each thing such that at least one figure is right where it stands. */
function valuesOf(facts: Facts, g: Grid, p: Parsed, hits: SentenceHits, s: State, run: readonly number[], sure: boolean): Found | undefined {
  const measure = g.of.measure[0]!;
  const unit = run.map((k) => p.said[k]!).find((x) => x.mention.unit);
  const possible = unit && measuresIn(g, unitsOf(unit, false) ?? []).set;
  const named = new Set(hits.bySlot[measure]!.filter((h) => run.includes(h.segment)).map((h) => h.value));
  const kind = (m: string): boolean => (!possible || possible.has(m)) && (!named.size || named.has(m)) && !hits.dimensions.some((d) => run.includes(d.segment) && !d.dimension.some((x) => g.measureUnits.get(m)?.has(x)));
  let some: Found | undefined;
  const tried: ToldRow[] = [];
  const plain = (s.rows ?? []).filter((x) => !x.changes);
  const like = (row: ToldRow): boolean => kind(g.byKey.get(row.of)!.at[measure]!);
  // Rows of the same quantity first.
  for (const row of [...plain.filter(like), ...plain.filter((x) => !like(x))]) {
    const of = g.byKey.get(row.of)!;
    if (some && !like(row)) break;
    // In which order the same things were told last counts, and no order before that.
    if (row.values.length !== run.length || (sure && row.age > 0) || tried.some((t) => t.slot === row.slot && like(t) === like(row) && t.values.every((v) => row.values.includes(v))) || !unnamed(hits, p, run, row.slot)) continue;
    tried.push(row);
    const same = like(row);
    // "It draws 5 on slow and 9 on brisk. It hums at 31 and 36 decibels": another quantity of the same things.
    const others = same || row.age >= nearBy || g.slots[row.slot]!.field === 'part' || !(possible || named.size) ? [] : [...g.byMeasure.keys()].filter(kind);
    const parts = same ? g.of.part.filter((i) => i !== row.slot && of.at[i]) : [];
    if ((!same && !others.length) || hits.hits.some((h) => run.includes(h.segment) && parts.includes(h.slot) && h.value !== of.at[h.slot] && g.valuesWith.get(of.at[measure]!)![h.slot]!.has(h.value))) continue;
    const alike = rowsLike(g, hits, p, run, row, (x) => (same ? [measure, ...parts].every((i) => x.at[i] === of.at[i]) : others.includes(x.at[measure]!)));
    const right = Math.max(0, ...alike.map((cells) => run.filter((k, i) => givenBy(facts, p, k, cells[i]!)).length));
    const found: Found = { row, shared: same ? [measure, ...parts].map((i) => ({ slot: i, value: of.at[i]! })) : [] };
    if (right === run.length || (p.said[run[0]!]!.cue.overRoom && of.unit.dimension === 'temperature' && row.age < nearBy)) return found;
    // "In the shed those are 34 and 36 respectively": in the order in which they were just told.
    if (row.age === 0 && right > 0 && p.low.includes('respectively')) return found;
    const turned = run.length === 2 && (same ? row.age <= nearBy : row.age === 0) && alike.some((cells) => run.every((k, i) => givenBy(facts, p, k, cells[1 - i]!)));
    if (turned || right * 2 >= run.length && right > 0 && !sure) some ??= found;
  }
  return some;
}

/** The readings of the things of a row that are of a kind, in whatever setting or work the words leave open. */
function rowsLike(g: Grid, hits: SentenceHits, p: Parsed, run: readonly number[], row: ToldRow, kind: (x: Cell) => boolean): Cell[][] {
  const end = p.said[run.at(-1)!]!.mention.to;
  const open = g.slots.flatMap(({ field }, i) => (i === row.slot || field === 'measure' || field === 'part' ? [] : [{ i, own: hits.bySlot[i]!.filter((h) => h.baseOf < 0 && !h.departs && h.from < end + 3).at(-1) }]));
  const all = g.cells.filter((x) => !x.fixed && x.at[row.slot] && kind(x) && open.every(({ i, own }) => !own || !x.at[i] || x.at[i] === own.value));
  return all.filter((x) => x.at[row.slot] === row.values[0]).flatMap((x) => {
    const cells = row.values.map((v) => (v === x.at[row.slot] ? x : movedTo(g, x, row.slot, v)));
    return cells.every((y) => y !== undefined) ? [cells as Cell[]] : [];
  });
}

function givenBy(facts: Facts, p: Parsed, k: number, x: Cell): boolean {
  const f = facts.value(x.key);
  return isFact(f) && fits(p.said[k]!.mention, f, { size: false });
}

/** "The fan takes 9 degrees off the lid and 15 off the base. In the hut it's 11 and 14": the same of another. */
function changesAgain(g: Grid, p: Parsed, hits: SentenceHits, s: State, run: readonly number[]): Found | undefined {
  const row = run[0] === 0 ? s.rows?.find((r) => r.changes && r.age === 0 && r.values.length === run.length) : undefined;
  const another = row && hits.hits.some((h) => h.slot !== row.slot && h.baseOf < 0 && h.to <= p.said[0]!.mention.from && ['setup', 'setting', 'workload', 'part'].includes(g.slots[h.slot]!.field));
  return row && another && unnamed(hits, p, run, row.slot) ? { row, shared: [] } : undefined;
}

/** How much each of them changed: of those just told in the sentence, else of those told before it. */
function changesOf(g: Grid, p: Parsed, hits: SentenceHits, s: State, run: readonly number[], told: Found['row'] | undefined): Found | undefined {
  const units = unitsOf({ mention: p.said[run.at(-1)!]!.mention }, true);
  if (p.said[run.at(-1)!]!.mention.unit?.id === '%') return undefined;
  const row = told?.values.length === run.length ? told : sideBySide(g, p, hits, run) ?? s.rows?.find((r) => !r.changes && r.values.length === run.length && r.age < nearBy && (!units || measuresIn(g, units).set.has(g.byKey.get(r.of)!.at[g.of.measure[0]!]!)));
  if (!row || hits.hits.some((h) => h.slot === row.slot && (run.includes(h.segment) || h.baseOf === run[0]) && h.from > p.said[run[0]! - 1]?.mention.to!)) return undefined;
  return { row, shared: [] };
}

/** "The base reads 37 and the lid 41, so the fan takes off 4 and 5": as many figures before, each with a name of its own. */
function sideBySide(g: Grid, p: Parsed, hits: SentenceHits, run: readonly number[]): Found['row'] | undefined {
  const n = run.length;
  for (let first = run[0]! - n; first >= 0; first--) {
    const before = Array.from({ length: n }, (_, k) => first + k);
    if (before.some((k) => p.said[k]!.cue.op !== 'value' || p.said[k]!.mention.type !== 'cardinal')) continue;
    for (const field of ['part', 'setup', 'setting', 'workload'] as const) for (const slot of g.of[field]) {
      const own = before.map((k) => [...new Set(hits.bySlot[slot]!.filter((h) => h.segment === k && h.baseOf < 0).map((h) => h.value))]);
      if (own.every((v) => v.length === 1) && new Set(own.flat()).size === n) return { slot, values: own.flat() };
    }
  }
  return undefined;
}
