// The names of a sentence sorted by slot, with the mention they stand by, and the lists that pair names with numbers.
import { anothersMark } from './anothers-mark.js';
import { standingBy } from './standing-by.js';
import { parallelEnds } from './parallel.js';
import { changeVerbs, phraseAt, stretch } from '../script/index.js';
import { roomParts } from '../facts/index.js';
import { withoutAsides } from './asides.js';
import { shareCircumstance } from './circumstance.js';
import { comparedIn, comparing } from './compared-in.js';
import { correctedSpan } from './corrected.js';
import type { Grid } from './grid.js';
import type { Course, Hit, SentenceHits } from './evidence.js';
import { unitsOf } from './context.js';
import type { Meaning, Name } from './lexicon.js';
import { measuresIn } from './measured.js';
import { namedAlready } from './named-already.js';
import { otherOfTwo } from './other-of-two.js';
import { partNotHolder } from './part-not-holder.js';
import { partOfQuantity } from './part-of-quantity.js';
import { oneAndOther } from './one-and-other.js';
import { plainOfTwo } from './plain-of-two.js';
import { numberLists, saidRespectively } from './lists.js';
import { type NameList, nameLists } from './name-lists.js';
import { isRoom, roomCompared } from './room-named.js';
import type { Parsed } from './parse.js';
import { departFromIdle } from './idle-to-load.js';
import { departLikened } from './likened.js';
import { departSince } from './since.js';
import type { State } from './state.js';
import { ledFrom } from './led-from.js';
import { endsOfCourse } from './ends-of-course.js';
import { inTurn } from './in-turn.js';
import { thenAndNow } from './then-and-now.js';

const elsewhere = new Set(['another', 'next', 'different', 'other', 'adjacent', 'neighbouring', 'neighboring', 'living', 'dining', 'spare', 'server', 'waiting']);

export function hitsOf(g: Grid, p: Parsed, state: State): SentenceHits {
  const hits: Hit[] = [];
  const roles: SentenceHits['roles'][number][] = [];
  const dimensions: SentenceHits['dimensions'][number][] = [];
  const corrected = correctedSpan(p.low);
  for (const n of p.names) {
    // "Corrected to the reference room": not what is told, but how.
    if (corrected && n.from >= corrected.from && n.to <= corrected.to) continue;
    // "hums till morning in another flat", "it hangs in the living room": not where it was measured.
    if (elsewhere.has(p.low[n.from - 1]!) && isRoom(g, n)) continue;
    const segment = standingBy(g, p, n) ?? segmentOf(p, n.from);
    const baseOf = p.said[segment]?.cue.overRoom && roomCompared(g, p, n) ? segment : comparedIn(g, p, n, segment);
    const measured = partNotHolder(g, p, n, state);
    // "39 per cent faster", where shares are called so: the unit of a change says nothing of what changes.
    const inPercent = p.said.some(({ mention: x, cue }) => x.unit?.id === '%' && (cue.op === 'change' || cue.op === 'share') && n.from > x.from && n.to <= x.to);
    for (const m of likely(p, n, hits, state)) {
      // "the processor", where the product whose limits are on record is called so too: the part is meant.
      if (anothersMark(g, p, n, m) || namedAlready(g, p, n, m) || (measured && m.fields.length === 1 && m.fields[0] === 'setup' && m.slots.every((s) => g.holders.has(s.value)))) continue;
      if (m.fields.length > 0 && m.fields.every((f) => f === 'part') && onlyUnit(g, p, n)) continue;
      if (inPercent && m.fields.length === 1 && m.fields[0] === 'measure') continue;
      for (const s of m.slots) hits.push({ slot: s.slot, value: s.value, from: n.from, to: n.to, segment, baseOf });
      // "on the sticker", where a setting is called so and the record has no rating: the setting.
      if (m.role && ![...g.roles.values()].includes(m.role.role) && n.meanings.some((x) => x.own && x.slots.length > 0)) continue;
      // "it finished the load 40 seconds sooner", "it finishes 8 seconds before the Larch": what was done, and no time of it.
      if (m.role?.role === 'end' && /^(?:finish(?:es|ed)?|ends|ended)$/.test(p.low[n.to - 1]!) && (/^(?:the|that|this|its|their|a|an|my|our|all|every|each)$/.test(p.low[n.to] ?? '') || p.said.some(({ mention: x, cue }) => x.unit?.dimension === 'duration' && cue.op === 'change' && x.from >= n.to && x.from <= n.to + 2))) continue;
      if (m.role) roles.push({ role: m.role.role, firm: m.role.firm, from: n.from, to: n.to, segment, baseOf });
      if (m.dimension) dimensions.push({ dimension: m.dimension, from: n.from, segment });
    }
  }
  hits.push(...partOfQuantity(g, p, hits));
  hits.push(...oneAndOther(g, p, hits, state).map((h): Hit => ({ ...h, segment: segmentOf(p, h.from), baseOf: g.slots[h.slot]!.field === 'part' ? -1 : comparing(p, h.from) })));
  hits.push(...otherOfTwo(g, p, hits, state).map((h): Hit => ({ ...h, segment: segmentOf(p, h.from), baseOf: comparing(p, h.from) })));
  for (const h of plainOfTwo(g, p, hits)) hits.splice(hits.findLastIndex((o) => o.from <= h.from) + 1, 0, { ...h, segment: segmentOf(p, h.from), baseOf: -1 });
  hits.push(...thenAndNow(g, p, hits, state).map((h): Hit => ({ ...h, segment: segmentOf(p, h.from), baseOf: -1 })));
  hits.push(...ledFrom(g, p, hits));
  markDependent(p, hits);
  shareCircumstance(g, p, hits);
  departSince(g, p, hits, state);
  departFromIdle(g, p, hits, roles);
  departLikened(g, p, hits);
  const course = courseOf(g, p, hits, state);
  const bySlot = inSlots(g, hits);
  const { paired, guesses } = pairs(g, p, hits, bySlot, state, course);
  const said = withoutAsides(p, hits);
  return { hits: said, bySlot: said === hits ? bySlot : inSlots(g, said), roles, dimensions, ...(course && { course }), paired, guesses };
}

function inSlots(g: Grid, hits: readonly Hit[]): readonly (readonly Hit[])[] {
  const out: Hit[][] = g.slots.map(() => []);
  for (const h of hits) out[h.slot]!.push(h);
  return out;
}

/** "with the big brick and 44 with the little one": of several things that are called so, the one of the kind named last, and not yet beside it. */
function likely(p: Parsed, n: Name, before: readonly Hit[], state: State): readonly Meaning[] {
  if (n.meanings.length < 2 || new Set(n.meanings.map((m) => m.fields.join())).size < 2 || !n.meanings.every((m) => m.own && m.slots.length > 0) || n.meanings.some((m) => m.fields.some((f) => f !== 'setup' && f !== 'setting' && f !== 'workload'))) return n.meanings;
  const at = (m: Meaning): number => Math.max(-1, ...m.slots.map((s) => before.findLastIndex((h) => h.slot === s.slot)));
  const age = (m: Meaning): number => Math.min(...m.slots.map((s) => state.ages[s.slot]!));
  const figure = p.said.findLast((s) => s.mention.from < n.from)?.mention.from ?? 0;
  const beside = (m: Meaning): number => (before.some((h) => h.from >= figure && m.slots.some((s) => s.slot === h.slot)) ? 1 : 0);
  return [[...n.meanings].sort((a, b) => beside(a) - beside(b) || at(b) - at(a) || age(a) - age(b))[0]!];
}

const subordinating = new Set(['where', 'whereas', 'although', 'though', 'while', 'since', 'because']);

/** "…, 71 percent of that, where the mesh alone gave 84": the mesh is not what the next sentence goes on about. */
function markDependent(p: Parsed, hits: readonly Hit[]): void {
  for (let i = p.low.indexOf(',', 1); i > 0 && i < p.low.length - 1; i = p.low.indexOf(',', i + 1)) {
    if (!subordinating.has(p.low[i + 1]!) || !p.said.some((s) => s.mention.from < i)) continue;
    const next = p.low.indexOf(',', i + 1);
    const end = next < 0 ? p.low.length : next;
    for (const h of hits) if (h.from > i && h.from < end && !hits.some((o) => o.slot === h.slot && (o.from < i || o.from > end))) h.depends = true;
  }
}

const setsOut = /^(?:going|go|goes|gone|went|moving|move|moves|switching|switch|switches|stepping|step|changing|change|dropping|turning|jumping|coming|swapping|(?:doubl|tripl|quadrupl|halv)(?:e|es|ed|ing)|,)$/;

/** "Going from stock to the undervolt, …": one is where a change starts, the other where it ends. */
function courseOf(g: Grid, p: Parsed, hits: Hit[], state: State): Course | undefined {
  const { low } = p;
  for (let i = low.indexOf('from'); i >= 0; i = low.indexOf('from', i + 1)) {
    if (!(i === 0 || setsOut.test(low[i - 1]!))) continue;
    const opens = i === 0 || (i === 1 && low[0] !== ',');
    const to = low.indexOf('to', i + 1);
    // "From slow, then, it gained 20 percent": set out from, and not what is spoken of.
    // But "From the Garrow, 12 watts less": who is set out from with nothing that goes on is who gives it.
    if (opens && (to < 0 || to > i + 7)) for (const h of hits) if (h.from > i && h.from <= i + 2 && low[h.to] === ',' && !(g.slots[h.slot]!.field === 'setup' && givenFrom(p, h.to + 1)) && ['setting', 'setup', 'workload', 'phase'].includes(g.slots[h.slot]!.field)) Object.assign(h, { departs: true, alone: true, baseOf: p.said.length });
    if (to < 0 || to > i + 7 || p.said.some((s) => !s.named && s.mention.from > i && s.mention.from < to + 1)) continue;
    for (const field of ['setting', 'setup', 'workload'] as const) for (const slot of g.of[field]) {
      const a = hits.filter((h) => h.slot === slot && h.from > i && h.to <= to && h.from <= i + 3);
      const b = hits.filter((h) => h.slot === slot && h.from > to && h.from <= to + 2);
      // "From slow to here it gains 14": here is where the section, or what was said last, is.
      const here = a.length === 1 && !b.length && /^(?:here|now|this)$/.test(low[to + 1] ?? '') ? state.heading.find(([k]) => k === slot)?.[1] ?? state.topics[slot]![0] : undefined;
      if (here && here !== a[0]!.value) { Object.assign(a[0]!, { departs: true, baseOf: p.said.length }); return { slot, from: a[0]!.value, to: here }; }
      if (a.length !== 1 || b.length > 1 || (b.length === 0 && low[to + 1] !== 'the') || a[0]!.value === b[0]?.value) continue;
      Object.assign(a[0]!, { departs: true, baseOf: p.said.length });
      if (!b.length) return undefined;
      return { slot, from: a[0]!.value, to: b[0]!.value };
    }
  }
  const step = stepOf(g, p, hits);
  if (step) return step;
  // "36 watts instead of 12"
  for (const x of hits) for (const y of hits) {
    if (x.slot !== y.slot || x.value === y.value || x.to > y.from || !['setting', 'setup', 'workload'].includes(g.slots[x.slot]!.field)) continue;
    // … and "the undervolt against stock: …", before any figure.
    const gap = stretch(low, x.to, y.from);
    if (/^(?:instead of|rather than)(?: the| at)?$/.test(gap) || ((/^(?:vs|versus|against|compared (?:with|to))(?: the)?$/.test(gap) || (x.from <= 1 && /^(?:over|next to|beside|relative to)(?: the)?$/.test(gap))) && y.to <= (p.said[0]?.mention.from ?? 0) && /^[:,]$/.test(low[y.to] ?? ''))) { Object.assign(y, { departs: true, baseOf: p.said.length }); return { slot: x.slot, from: y.value, to: x.value }; }
  }
  return undefined;
}

/** A figure stands there at once, with no one who does anything before it. */
function givenFrom(p: Parsed, at: number): boolean {
  const first = p.said[0]?.mention.from ?? 0;
  return first >= at && p.low.slice(at, first).every((w) => /^(?:a|an|the|you|get|just|only|about|some|another|rise|drop|saving|of|there|are|is|comes?|come)$/.test(w));
}

/** "Slow to brisk adds 6 decibels": two of one slot, said before any figure as a step from the one to the other. */
function stepOf(g: Grid, p: Parsed, hits: readonly Hit[]): Course | undefined {
  if (hits.length < 2 || !p.low.includes('to')) return undefined;
  const steps = hits.flatMap((x) => hits.filter((y) => x.slot === y.slot && x.value !== y.value && ['setting', 'setup', 'workload'].includes(g.slots[x.slot]!.field) && /^to(?: the)?$/.test(stretch(p.low, x.to, y.from)) && (x.from === 0 || !/^(?:from|close|next|near|compared|up|down|due|owed)$/.test(p.low[x.from - 1]!))).map((y) => [x, y] as const));
  const [x, y] = steps[0] ?? [];
  if (steps.length !== 1 || !x || !y || y.to > (p.said[0]?.mention.from ?? 0) || (!phraseAt(changeVerbs, p.low, y.to) && p.low[y.to] !== ':')) return undefined;
  Object.assign(x, { departs: true, baseOf: p.said.length });
  return { slot: x.slot, from: x.value, to: y.value };
}

/** "A low of 55, which is 18.3 frames per second more", where an average is called "frames": a piece of a unit names no part, nor does the whole of one beside a part of that quantity which is named. */
function onlyUnit(g: Grid, p: Parsed, n: Name): boolean {
  const within = (o: Name): boolean => p.said.some(({ mention: m }) => m.unit !== undefined && o.from > m.from && o.to <= m.to);
  const own = p.said.find(({ mention: m }) => m.unit !== undefined && n.from > m.from && n.to <= m.to)?.mention;
  if (!own) return false;
  if (n.to < own.to) return true;
  const measures = measuresIn(g, unitsOf({ mention: own }, true) ?? []).list;
  const ofThat = (slot: number, value: string): boolean => !roomParts.includes(value) && measures.some((m) => g.valuesWith.get(m)![slot]!.has(value));
  return p.names.some((o) => !within(o) && o.meanings.some((x) => x.own && x.slots.some((s) => g.of.part.includes(s.slot) && ofThat(s.slot, s.value))));
}

function segmentOf(p: Parsed, at: number): number {
  for (let i = p.said.length - 1; i >= 0; i--) if (p.said[i]!.segment.from <= at) return at < p.said[i]!.segment.to ? i : i + 0.5;
  return -1;
}

const unpaired: Pick<SentenceHits, 'paired' | 'guesses'> = { paired: new Map(), guesses: [] };

function pairs(g: Grid, p: Parsed, hits: readonly Hit[], bySlot: readonly (readonly Hit[])[], state: State, course?: Course): Pick<SentenceHits, 'paired' | 'guesses'> {
  if (p.said.length < 2) return unpaired;
  const out = new Map<number, { slot: number; value: string }[]>();
  const guesses: number[][] = [];
  const runs = numberLists(p);
  const lists = nameLists(g, p, bySlot);
  for (const numbers of runs) {
    const lead = p.low[p.said[numbers[0]!]!.mention.from - 1] ?? '';
    const opensRange = /^(?:between|from)$/.test(lead) && p.low.slice(0, p.said[numbers[0]!]!.mention.from).includes('between');
    // "the lid from 41 to 38": two ends of one thing.
    const ends = numbers.length === 2 && lead === 'from' && p.low[p.said[numbers[1]!]!.mention.from - 1] === 'to';
    if (opensRange || ends) continue;
    const fitting = lists.filter((l) => l.values.length === numbers.length && !(g.slots[l.slot]!.field === 'setup' && l.values.some((v) => g.holders.has(v)) && !l.values.every((v) => g.holders.has(v))));
    const again = numbers[0]! > 0 && numbers.every((i) => p.said[i]!.cue.because === 'as a percentage');
    const respectively = again || saidRespectively(p, runs, numbers);
    const first = p.said[numbers[0]!]!.mention.from;
    const last = p.said[numbers.at(-1)!]!.mention.to;
    const chosen = fitting.filter((l) => l.to <= first || l.from >= last).sort((a, b) => distance(a, first, last) - distance(b, first, last))[0];
    const each = again ? inTurn(p, g, hits, numbers, true) : undefined;
    if (each) {
      numbers.forEach((index, k) => out.set(index, [...(out.get(index) ?? []), { slot: each.slot, value: each.values[k]! }]));
    } else if (chosen) {
      numbers.forEach((index, k) => out.set(index, [...(out.get(index) ?? []), { slot: chosen.slot, value: chosen.values[k]! }]));
    } else if (respectively && [state.list, state.table].some((l) => l?.values.length === numbers.length)) {
      const list = state.list?.values.length === numbers.length ? state.list : state.table!;
      // Of things that were named one after the other, in the order that the record has.
      const order = 'scattered' in list ? [...measuredValues(g, list.slot)].filter((v) => list.values.includes(v)) : list.values;
      numbers.forEach((index, k) => out.set(index, [...(out.get(index) ?? []), { slot: list.slot, value: order[k]! }]));
      if (order.some((v, k) => v !== list.values[k])) guesses.push(numbers);
    } else if (inTurn(p, g, hits, numbers, respectively)) {
      const { slot, values } = inTurn(p, g, hits, numbers, respectively)!;
      numbers.forEach((index, k) => out.set(index, [...(out.get(index) ?? []), { slot, value: values[k]! }]));
    } else if (numbers.length >= 3 && !respectively && !fitting.length && !hits.some((h) => numbers.includes(h.segment) && h.segment !== numbers[0] && h.segment !== numbers.at(-1))) {
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
  // "the Cobble and the Garth do 93 against 88"
  for (let i = 0; i + 1 < p.said.length; i++) {
    const [a, b] = [p.said[i]!, p.said[i + 1]!];
    if (out.has(i) || out.has(i + 1) || b.mention.from - a.mention.to !== 1 || !/^(?:against|versus|vs)$/.test(p.low[a.mention.to]!) || a.named || b.named) continue;
    const list = lists.find((l) => l.values.length === 2 && ['setup', 'setting'].includes(g.slots[l.slot]!.field) && l.to <= a.mention.from && a.mention.from - l.to <= 4);
    if (list && !bySlot[list.slot]!.some((h) => h.from >= list.to)) [i, i + 1].forEach((index, k) => out.set(index, [{ slot: list.slot, value: list.values[k]! }]));
  }
  // "22.4, 27.9 and 33.0 on the flat one": what stands behind the last is said of all.
  for (const numbers of runs) for (const h of hits) {
    const last = p.said[numbers.at(-1)!]!.mention.to;
    if (h.segment !== numbers.at(-1) || h.from < last || h.baseOf >= 0 || h.departs || !/^(?:on|in|for|at|with|under)$/.test(p.low[last] ?? '') || h.from > last + 2 || !['setup', 'setting', 'workload'].includes(g.slots[h.slot]!.field) || numbers.some((i) => p.said[i]!.cue.op !== 'value')) continue;
    if (hits.some((o) => o !== h && o.slot === h.slot && o.value !== h.value && numbers.includes(o.segment)) || numbers.some((i) => out.get(i)?.some((x) => x.slot === h.slot))) continue;
    for (const index of numbers) out.set(index, [...(out.get(index) ?? []), { slot: h.slot, value: h.value }]);
  }
  for (const { index, slot, value } of parallelEnds(p, hits, [...g.of.setting, ...g.of.setup, ...g.of.workload, ...g.of.phase])) if (!out.has(index)) out.set(index, [{ slot, value }]);
  for (const { index, slot, value } of course ? endsOfCourse(p, course) : []) if (!out.has(index)) out.set(index, [{ slot, value }]);
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
