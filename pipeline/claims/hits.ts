// The names of a sentence sorted by slot, with the mention they stand by, and the lists that pair names with numbers.
import type { Grid } from './grid.js';
import type { Course, Hit, SentenceHits } from './evidence.js';
import { numberLists } from './lists.js';
import type { Parsed } from './parse.js';
import type { State } from './state.js';

export function hitsOf(g: Grid, p: Parsed, state: State): SentenceHits {
  const hits: Hit[] = [];
  const roles: SentenceHits['roles'][number][] = [];
  const dimensions: SentenceHits['dimensions'][number][] = [];
  for (const n of p.names) {
    const segment = segmentOf(p, n.from);
    const before = p.low[n.from - 1] === 'the' ? p.low[n.from - 2] : p.low[n.from - 1];
    const room = before === 'over' || before === 'above';
    const baseOf = room && p.said[segment]?.cue.overRoom ? segment : p.said.findIndex((s) => s.cue.base && n.from >= s.cue.base.from && n.from < s.cue.base.to);
    for (const m of n.meanings) {
      for (const s of m.slots) hits.push({ slot: s.slot, value: s.value, from: n.from, to: n.to, segment, baseOf });
      if (m.role) roles.push({ role: m.role.role, firm: m.role.firm, from: n.from, to: n.to, segment, baseOf });
      if (m.dimension) dimensions.push({ dimension: m.dimension, from: n.from, segment });
    }
  }
  const course = courseOf(g, p, hits);
  const { paired, guesses } = pairs(g, p, hits, state);
  return { hits: withoutAsides(p, hits), roles, dimensions, ...(course && { course }), paired, guesses };
}

/** "The drive, which sits under the card, is at 67.4": a thing named only to say which one is meant is not what the figure is about. */
function withoutAsides(p: Parsed, hits: readonly Hit[]): Hit[] {
  const { low } = p;
  const asides: { from: number; to: number }[] = [];
  for (let i = 1; i < low.length - 1; i++) {
    if (low[i] !== ',' || !/^(?:which|who|whose|where)$/.test(low[i + 1]!)) continue;
    const end = low.indexOf(',', i + 1);
    if (end > 0 && end - i < 12 && !p.said.some((s) => s.mention.from > i && s.mention.from < end)) asides.push({ from: i, to: end });
  }
  const inside = (h: Hit): { from: number; to: number } | undefined => asides.find((a) => a.from < h.from && h.from < a.to);
  return hits.filter((h) => { const a = inside(h); return !a || !hits.some((o) => o.slot === h.slot && o.value !== h.value && o.to <= a.from); });
}

const setsOut = /^(?:going|go|goes|gone|went|moving|move|moves|switching|switch|switches|stepping|step|changing|change|dropping|turning|jumping|coming|swapping|,)$/;

/** "Going from stock to the undervolt, …": one is where a change starts, the other where it ends. */
function courseOf(g: Grid, p: Parsed, hits: Hit[]): Course | undefined {
  const { low } = p;
  for (let i = 0; i < low.length; i++) {
    if (low[i] !== 'from' || !(i === 0 || setsOut.test(low[i - 1]!))) continue;
    const to = low.indexOf('to', i + 1);
    if (to < 0 || to > i + 7 || p.said.some((s) => s.mention.from > i && s.mention.from < to + 1)) continue;
    for (const field of ['setting', 'setup', 'workload'] as const) for (const slot of g.of[field]) {
      const a = hits.filter((h) => h.slot === slot && h.from > i && h.to <= to && h.from <= i + 3);
      const b = hits.filter((h) => h.slot === slot && h.from > to && h.from <= to + 2);
      if (a.length !== 1 || b.length > 1 || (b.length === 0 && low[to + 1] !== 'the') || a[0]!.value === b[0]?.value) continue;
      Object.assign(a[0]!, { departs: true, baseOf: p.said.length });
      if (!b.length) return undefined;
      return { slot, from: a[0]!.value, to: b[0]!.value };
    }
  }
  // "20 watts instead of 10"
  for (const x of hits) for (const y of hits) {
    if (x.slot !== y.slot || x.value === y.value || x.to > y.from || !['setting', 'setup', 'workload'].includes(g.slots[x.slot]!.field)) continue;
    if (/^(?:instead of|rather than)(?: the| at)?$/.test(low.slice(x.to, y.from).join(' '))) { Object.assign(y, { departs: true, baseOf: p.said.length }); return { slot: x.slot, from: y.value, to: x.value }; }
  }
  return undefined;
}

function segmentOf(p: Parsed, at: number): number {
  for (let i = p.said.length - 1; i >= 0; i--) if (p.said[i]!.segment.from <= at) return at < p.said[i]!.segment.to ? i : i + 0.5;
  return -1;
}

interface NameList { slot: number; values: string[]; from: number; to: number }

/** Runs of names of one slot joined by commas and "and", at least two. */
export function nameLists(g: Grid, p: Parsed, hits: readonly Hit[]): NameList[] {
  const out: NameList[] = [];
  g.slots.forEach((_, slot) => {
    const own = hits.filter((h) => h.slot === slot);
    let run: NameList | undefined;
    for (const h of own) {
      const joined = run && between(p, run.to, h.from);
      if (run && joined && !run.values.includes(h.value)) { run.values.push(h.value); run.to = h.to; } else if (!run || h.from >= run.to) {
        if (run && run.values.length > 1) out.push(run);
        run = { slot, values: [h.value], from: h.from, to: h.to };
      }
    }
    if (run && run.values.length > 1) out.push(run);
  });
  return out;
}

const glue = new Set([',', 'and', 'or', 'the', 'a', 'an', 'then', '&', 'to', 'by', 'on', 'at', 'in', 'for', 'of', 'my', 'its', 'finally', 'lastly']);
function between(p: Parsed, from: number, to: number): boolean {
  let joint = from === to || p.low.slice(from, to).every((w) => w === 'the' || w === 'a' || w === 'an');
  for (let i = from; i < to; i++) {
    if (!glue.has(p.low[i]!)) return false;
    if (/^(?:,|and|or|then|&|to)$/.test(p.low[i]!)) joint = true;
  }
  return joint;
}

function pairs(g: Grid, p: Parsed, hits: readonly Hit[], state: State): Pick<SentenceHits, 'paired' | 'guesses'> {
  const out = new Map<number, { slot: number; value: string }[]>();
  const guesses: number[][] = [];
  const runs = numberLists(p);
  if (runs.length === 0) return { paired: out, guesses };
  const lists = nameLists(g, p, hits);
  for (const numbers of runs) {
    const opensRange = /^(?:between|from)$/.test(p.low[p.said[numbers[0]!]!.mention.from - 1] ?? '') && p.low.slice(0, p.said[numbers[0]!]!.mention.from).includes('between');
    if (opensRange) continue;
    const fitting = lists.filter((l) => l.values.length === numbers.length);
    const respectively = p.low.includes('respectively') || /\b(?:same|that|this) order\b/.test(p.low.join(' '));
    const first = p.said[numbers[0]!]!.mention.from;
    const last = p.said[numbers.at(-1)!]!.mention.to;
    const chosen = fitting.filter((l) => l.to <= first || l.from >= last).sort((a, b) => distance(a, first, last) - distance(b, first, last))[0];
    if (chosen) {
      numbers.forEach((index, k) => out.set(index, [...(out.get(index) ?? []), { slot: chosen.slot, value: chosen.values[k]! }]));
    } else if (respectively && [state.list, state.table].some((l) => l?.values.length === numbers.length)) {
      const list = state.list?.values.length === numbers.length ? state.list : state.table!;
      numbers.forEach((index, k) => out.set(index, [...(out.get(index) ?? []), { slot: list.slot, value: list.values[k]! }]));
    } else if (numbers.length >= 3 && !fitting.length && !hits.some((h) => numbers.includes(h.segment) && h.segment !== numbers[0] && h.segment !== numbers.at(-1))) {
      // "88.4, 91.2, 88.6": as many figures as a setting or workload has values, in the order of the record.
      for (const field of ['setting', 'workload', 'setup'] as const) {
        const slot = g.of[field][0]!;
        const values = [...measuredValues(g, slot)];
        if (field === 'setup' && state.table?.slot === slot && state.table.values.length === values.length) values.splice(0, values.length, ...state.table.values);
        if (values.length !== numbers.length || g.of[field].length > 1 || (field !== 'setup' && [...g.values[g.of.setup[0]!]!.keys()].filter((v) => !g.holders.has(v)).length === numbers.length && (state.together[g.of.setup[0]!]! > 1 || p.low.some((w) => /^(?:they|them|these|order|row)$/.test(w))))) continue;
        const backwards = (named0(hits, slot) === values.at(-1) && new Set(hits.filter((h) => h.slot === slot).map((h) => h.value)).size > 1) || /\b(?:heaviest|highest|biggest|largest|fastest|top)\b.*\bfirst\b/.test(p.low.join(' '));
        const named = hits.filter((h) => h.slot === slot);
        if (named.length > 1 && !named.every((h) => h.value === values[0] || h.value === values.at(-1))) continue;
        numbers.forEach((index, k) => out.set(index, [...(out.get(index) ?? []), { slot, value: values[backwards ? values.length - 1 - k : k]! }]));
        guesses.push(numbers);
        break;
      }
    }
  }
  return { paired: out, guesses };
}

function distance(l: NameList, first: number, last: number): number {
  return l.to <= first ? first - l.to : l.from - last + 1;
}

const measured = new WeakMap<Grid, Map<number, readonly string[]>>();

/** Values of a slot that readings have, constants aside, in the order of the record. */
function measuredValues(g: Grid, slot: number): readonly string[] {
  let bySlot = measured.get(g);
  if (!bySlot) measured.set(g, (bySlot = new Map()));
  let values = bySlot.get(slot);
  if (!values) bySlot.set(slot, (values = [...new Set(g.cells.filter((x) => !x.fixed && x.at[slot]).map((x) => x.at[slot]!))]));
  return values;
}

/** The value of a slot that the sentence names first. */
function named0(hits: readonly Hit[], slot: number): string | undefined {
  return hits.find((h) => h.slot === slot)?.value;
}
