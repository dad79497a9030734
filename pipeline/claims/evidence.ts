// For each slot of a key: how well each value goes with what is said and what was said before. Costs: 0 is what the words
// say; below 1 a reading about as good; from 1 on a reading that asks for something unsaid. No cost depends on a value.
import type { Dimension, Unit } from '../quantities/index.js';
import { Few } from './few.js';
import type { Grid } from './grid.js';
import { givenFor, yieldToNamed } from './goes-together.js';
import { liesBy, markOfAnother, setBeside } from './lies-by.js';
import { markPhases } from './mark-phases.js';
import { measuresIn, onlySet, wasMeasured } from './measured.js';
import type { Parsed } from './parse.js';
import { passedOver } from './oblique.js';
import { apposed } from './placed.js';
import { isArrival } from './arrived-at.js';
import { sectionFirst } from './section-first.js';
import type { State } from './state.js';
import { firstCell } from './terms.js';
import { defaultPhases, phasesOf } from './usual-phases.js';
import type { Role } from './roles.js';
import { sharedByBoth } from './shared-by-both.js';
import { whereTested } from './where-tested.js';

export interface SlotEvidence {
  costs: Few;
  /** Of values that are not listed. Infinity where the words name the value outright. */
  rest: number;
  /** Of cells that have no value in this slot. */
  empty: number;
  /** Named in the mention's own stretch. */
  named: boolean;
  /** Named there, earlier in the sentence, or the topic. */
  known: boolean;
}

export interface Hit {
  slot: number;
  value: string;
  from: number;
  to: number;
  segment: number;
  /** Index of the mention whose comparison it stands in, or -1. */
  baseOf: number;
  /** It is what "going from … to …" sets out from. */
  departs?: boolean;
  /** … and no other is said at which it ends: "From slow, it gained 20 percent". */
  alone?: boolean;
  /** Named in a clause that depends on another, which names nothing of its kind: what is spoken of stays as it was. */
  depends?: boolean;
  /** Said as "the one" or "the other" of two named before. */
  points?: boolean;
  /** It may as well be this one. */
  or?: string;
}

/** "Going from stock to the undervolt": what the sentence's changes are between. */
export interface Course { slot: number; from: string; to: string }

export interface SentenceHits {
  hits: readonly Hit[];
  /** The same by slot. */
  bySlot: readonly (readonly Hit[])[];
  roles: readonly { role: Role; firm: boolean; from: number; to: number; segment: number; baseOf: number; /** What every change is counted from. */ departs?: true }[];
  dimensions: readonly { dimension: readonly Dimension[]; from: number; segment: number }[];
  course?: Course;
  /** Paired lists: value of a slot by mention index. */
  paired: ReadonlyMap<number, readonly { slot: number; value: string }[]>;
  /** Lists of mentions whose pairing no word states: they are as many as the record has values, in its order. */
  guesses: readonly (readonly number[])[];
}

export const unlisted = 2;

export function evidenceFor(g: Grid, p: Parsed, s: SentenceHits, index: number, state: State, units: readonly Unit[] | undefined, options: { ahead?: boolean; ignoreBase?: boolean; ownPart?: boolean; measured?: boolean } = {}): SlotEvidence[] {
  const said = p.said[index]!;
  const measures = units && measuresIn(g, units).list;
  // "from 38.2 at idle to 84.6": what stands by the first end is just what the second is not.
  // … but "from 38.2 at idle the Larch climbs to 84.6" names what climbs.
  const from = isArrival(p, index) ? p.said[index - 1]! : undefined;
  // What no reading in this unit has cannot be what is spoken of.
  const possible = (i: number, v: string): boolean => !measures || measures.some((m) => g.valuesWith.get(m)![i]!.has(v));
  const out = g.slots.map((slot, i): SlotEvidence => {
    const e: SlotEvidence = { costs: new Few(), rest: 1, empty: 0, named: false, known: false };
    const pair = s.paired.get(index)?.find((x) => x.slot === i);
    if (pair) {
      e.costs.set(pair.value, 0);
      return outright(e, 0.5);
    }
    const hits = s.bySlot[i]!;
    const own = hits.length === 0 ? [] : hits.filter((h) => !h.departs && (h.segment === index || (h.segment === index - 1 && apposed(p, index, h.from))) && !setBeside(g, p, h, index) && !(slot.field === 'setup' && whereTested(g, p, h, index)) && (h.baseOf !== index || options.ignoreBase || (options.ownPart && slot.field === 'part') || (slot.field === 'measure' && said.cue.op === 'ratio')));
    // "get the small one for a render: 18.9 minutes", where a phase of other readings is called so too: the work is meant.
    if (slot.field === 'phase') own.splice(0, own.length, ...own.filter((h) => possible(i, h.value) || !s.hits.some((o) => o.slot !== i && o.from === h.from)));
    // "69 per cent of its time", where something else is measured "in per cent": the unit names nothing there.
    if (slot.field === 'measure' && said.mention.unit?.id === '%' && (said.cue.op === 'share' || p.low[said.mention.to] === 'of')) own.splice(0, own.length, ...own.filter((h) => h.from < said.mention.from || h.to > said.mention.to));
    // "8 percent of its rated flow": what it is a share of tells the quantity.
    const shared = slot.field === 'measure' && shareOf(p, index) ? hits.filter((h) => h.from > said.mention.to && h.from <= said.mention.to + 4) : [];
    if (shared.length && own.length === 0 && said.cue.op === 'share') own.push(...shared);
    if (shared.length && own.some((h) => !shared.includes(h)) && own.every((h) => shared.includes(h) || (h.from >= said.mention.from && h.to <= said.mention.to))) own.splice(0, own.length, ...shared);
    // "you start the wash and it goes up by 31", where the time of a wash is called so as well: other parts stay open.
    if (slot.field === 'part' && own.length && own.every((h) => s.hits.some((o) => o.from === h.from && o.to === h.to && g.slots[o.slot]!.field === 'workload'))) {
      for (const v of distinct(own, said.mention.from)) e.costs.set(v, 0);
      state.topics[i]!.forEach((v, k) => { if (!e.costs.has(v)) e.costs.set(v, 0.1 + 0.2 * k); });
      return Object.assign(e, { rest: 0.5, known: true });
    }
    if (own.length) {
      const values = distinct(own, said.mention.from);
      values.forEach((v, k) => e.costs.set(v, k === 0 ? 0 : 0.6));
      for (const h of own) if (h.or !== undefined && !e.costs.has(h.or)) e.costs.set(h.or, 0.3);
      return outright(e, slot.field === 'phase' ? 0.3 : slot.field === 'setup' ? 1 : 0.4);
    }
    // A test plan is no thing tested: its name says nothing about the figures that follow.
    const thing = (v: string): boolean => slot.field !== 'setup' || !g.holders.has(v);
    const earlier = hits.length === 0 ? [] : hits.filter((h) => h.segment < index && h.baseOf < 0 && !(slot.field === 'phase' && markOfAnother(g, p, h, index)) && possible(i, h.value) && thing(h.value) && !(slot.field === 'setup' && passedOver(p, index, hits, h)));
    const later = options.ahead && hits.length > 0 ? hits.filter((h) => h.segment > index && h.segment <= index + 1 && h.baseOf < 0 && possible(i, h.value) && thing(h.value)) : [];
    // "The Larch has 9 more than the Rowan on peat": both are, where it was not said otherwise.
    const both = hits.length && !later.length && !earlier.length && (slot.field === 'setting' || slot.field === 'workload') ? sharedByBoth(g, p, s, hits, index) : [];
    const near = hits.length === 0 ? hits : [...both, ...later, ...earlier.reverse()].filter((h) => !(from && h.segment === index - 1 && h.from >= from.mention.to));
    let cost = 0;
    for (const h of near) if (!e.costs.has(h.value) && !near.some((o) => o.value !== h.value && contains(o.value, h.value))) { e.costs.set(h.value, cost); cost = cost === 0 ? 0.7 : cost + 0.3; }
    if (near.length) { e.known = true; e.rest = unlisted; }
    if (slot.field === 'phase' || slot.field === 'measure') return e;
    const fresh = near.length === 0;
    const section = state.heading.find(([slot]) => slot === i)?.[1];
    const ends = from ? hits.filter((h) => h.segment === index - 1 && h.from >= from.mention.to).map((h) => h.value) : undefined;
    const topics = state.topics[i]!.filter((v) => possible(i, v) && !ends?.includes(v));
    sectionFirst(topics, section, state, i, slot.field === 'setting' && fresh);
    const usual = fresh && slot.field === 'part' && state.ages[i]! > 2 ? usualPart(g, measures ?? measureNamed(g, s, index)) : undefined;
    if (usual !== undefined && topics[0] !== usual) topics.splice(0, topics.length, usual, ...topics.filter((v) => v !== usual));
    // "the Stoat may stay, with its eleven watts": what is its own is no other's.
    const owned = slot.field === 'setup' && near.length > 0 && e.costs.size === 1 && /^(?:its|their|his|her)$/.test(p.low[said.mention.from - 1] ?? '') ? 0.7 : 0;
    // The work that the last figure was about, where that was never given for what was named before.
    const work = fresh && slot.field === 'workload' && state.ages[i]! > 2 && state.said[0] ? firstCell(g, state.said[0])?.at[i] : undefined;
    if (work && possible(i, work) && !topics.includes(work) && !e.costs.has(work) && !givenFor(g, state.said[0]!, i, topics[0] ?? work)) e.costs.set(work, 0.1);
    topics.forEach((v, k) => {
      if (e.costs.has(v)) return;
      // "… and the Stoat gained twice that. It hums at 31 now": the section's own is gone back to without a word.
      e.costs.set(v, fresh ? (k < state.together[i]! ? 0.2 * k : v === section && (slot.field === 'setup' || slot.field === 'setting') ? 0.2 : Math.min(1.4, 0.5 + 0.4 * k)) : 1 + owned + 0.3 * k);
    });
    if (fresh && e.costs.size) { e.known = true; e.rest = slot.field === 'part' ? 1.1 : unlisted; }
    if (!e.known) e.rest = 1;
    return e;
  });
  phaseEvidence(g, out, p, from ? { ...s, roles: s.roles.filter((r) => !(r.segment === index - 1 && r.from >= from.mention.to)) } : s, index, state, options.ignoreBase ?? false, said.cue.op === 'change' || options.measured === true);
  measureEvidence(g, out, p, s, index, state, units);
  dropIncompatible(g, out, s.roles.some((r) => /^(?:limit|target|rated)$/.test(r.role)));
  dropPhase(g, out, s, index);
  if (said.cue.op !== 'rank') yieldToNamed(g, out, s, index, measures ?? [...g.measureUnits.keys()], /than|at (?:most|least)/.test(said.mention.hedge?.name ?? ''));
  return out;
}

/** The words name the value. */
const outright = (e: SlotEvidence, empty: number): SlotEvidence => Object.assign(e, { rest: Infinity, empty, named: true, known: true });

function shareOf(p: Parsed, index: number): boolean {
  const { mention } = p.said[index]!;
  return (mention.unit?.id === '%' || mention.type === 'fraction') && p.low[mention.to] === 'of';
}

/** "131 frames per second": where a quantity is given as an average and otherwise, it is the average that needs no word. */
function usualPart(g: Grid, measures: readonly string[] | undefined): string | undefined {
  if (measures?.length !== 1) return undefined;
  const parts = [...g.valuesWith.get(measures[0]!)![g.of.part[0]!]!];
  return parts.length > 1 ? parts.find((v) => /^(?:average|avg|mean)$/.test(v)) : undefined;
}

/** The measure that the stretch names, where it is one alone. */
function measureNamed(g: Grid, s: SentenceHits, index: number): readonly string[] | undefined {
  const named = [...new Set(s.bySlot[g.of.measure[0]!]!.filter((h) => h.segment === index && h.baseOf < 0).map((h) => h.value))];
  return named.length === 1 ? named : undefined;
}

function distinct(hits: readonly Hit[], at: number): string[] {
  if (hits.length === 1) return [hits[0]!.value];
  const sorted = [...hits].sort((a, b) => Math.abs(a.from - at) - Math.abs(b.from - at));
  const values = [...new Set(sorted.map((h) => h.value))];
  return values.filter((v) => !values.some((w) => w !== v && contains(w, v)));
}

/** "liquid-over-ambient" says all that "over-ambient" says, and more. */
function contains(longer: string, shorter: string): boolean {
  return `-${longer}-`.includes(`-${shorter}-`);
}

function phaseEvidence(g: Grid, out: SlotEvidence[], p: Parsed, s: SentenceHits, index: number, state: State, ignoreBase: boolean, change: boolean): void {
  const i = g.of.phase[0]!;
  const e = out[i]!;
  e.empty = 0.2;
  if (e.named) return;
  const ofRole = (role: Role): readonly string[] => markPhases(g, role) ?? phasesOf(g, role);
  const own = s.roles.filter((r) => r.segment === index && !r.departs && !liesBy(p, r, index) && (r.baseOf !== index || ignoreBase) && ofRole(r.role).length && !(change && /^(?:limit|target|rated)$/.test(r.role)));
  const firm = own.filter((r) => r.firm).at(-1);
  if (firm) {
    e.costs.clear();
    for (const v of ofRole(firm.role)) e.costs.set(v, 0);
    // "load" is what nearly all readings are; the word alone does not rule others out.
    Object.assign(e, { rest: firm.role === 'load' ? 1.5 : Infinity, named: firm.role !== 'load', known: true });
    return;
  }
  const earlier = s.roles.filter((r) => r.segment < index && r.baseOf < 0 && r.firm && ofRole(r.role).length && r.role !== 'limit' && r.role !== 'target' && r.role !== 'rated').at(-1);
  const usual = defaultPhases(g);
  const mentioned = e.costs.size > 0;
  const leaning = own.at(-1);
  for (const v of g.values[i]!.keys()) {
    const role = g.roles.get(v)!;
    const constant = role === 'limit' || role === 'target' || role === 'rated' || role === 'offset';
    let cost = usual.has(v) ? (mentioned || earlier ? 0.6 : 0) : constant ? 1.6 : 0.9;
    if (earlier && role === earlier.role) cost = Math.min(cost, 0);
    if (leaning && role === leaning.role) cost = 0;
    if (e.costs.has(v)) cost = Math.min(cost, e.costs.get(v)!);
    else if (!mentioned && !earlier && state.topics[i]![0] === v && state.ages[i]! <= 1 && !constant) cost = Math.min(cost, 0.4);
    e.costs.set(v, cost);
  }
  e.known = true;
  e.rest = 1.6;
}

function measureEvidence(g: Grid, out: SlotEvidence[], p: Parsed, s: SentenceHits, index: number, state: State, units: readonly Unit[] | undefined): void {
  const i = g.of.measure[0]!;
  const e = out[i]!;
  e.empty = Infinity;
  const allowed = units && measuresIn(g, units).set;
  const within = (v: string): boolean => !allowed || allowed.has(v);
  if (e.named) {
    for (const v of e.costs.keys()) if (!within(v)) e.costs.delete(v);
    // "the quietest fan at this speed": the word of the ranking says what is ranked.
    const ranked = p.said[index]!.cue.op === 'rank' ? p.said[index]!.cue.of : undefined;
    if (ranked?.length) for (const v of e.costs.keys()) if (!ranked.some((d) => g.measureUnits.get(v)?.has(d))) e.costs.delete(v);
    if (e.costs.size) return;
    e.named = false;
  }
  const cue = p.said[index]!.cue;
  const fromWords = (list: readonly (readonly Dimension[])[]): string[] => list.length === 0 ? [] : [...g.measureUnits].filter(([, dims]) => list.some((d) => d.some((x) => dims.has(x)))).map(([m]) => m).filter(within);
  const compared = cue.of?.length ? fromWords([cue.of]) : [];
  const own = fromWords(s.dimensions.filter((d) => d.segment === index).map((d) => d.dimension));
  const earlier = fromWords(s.dimensions.filter((d) => d.segment < index).map((d) => d.dimension));
  const inherited = e.costs.keys().filter(within);
  e.costs.clear();
  const strong = compared.length ? compared : own.length ? own : inherited;
  for (const v of strong) e.costs.set(v, 0);
  for (const v of inherited) if (!e.costs.has(v)) e.costs.set(v, 0.4);
  for (const v of earlier) if (!e.costs.has(v)) e.costs.set(v, strong.length ? 0.6 : 0.1);
  if (!units && e.costs.size === 0) {
    // "from 22.4 to 61.4, a rise of 39 degrees": the unit comes with a later figure.
    const later = p.said.slice(index + 1).find((x) => x.mention.unit && x.mention.unit.id !== '%' && x.mention.unit.id !== 'points')?.mention.unit;
    if (later && p.said[index]!.mention.type === 'cardinal') for (const v of fromWords([[later.dimension, ...(later.dimension === 'temperature' ? ['temperature-difference' as const] : [])]])) e.costs.set(v, 0.15);
  }
  const none = e.costs.size === 0;
  // "it ends at 2,050, which makes 21 percent down": that figure's own quantity.
  const points = index > 0 && /^(?:which|that's)$/.test(p.low[p.said[index - 1]!.mention.to + (p.low[p.said[index - 1]!.mention.to] === ',' ? 1 : 0)] ?? '') ? 0.6 : 0;
  state.topics[i]!.forEach((v, k) => { if (within(v) && !e.costs.has(v)) e.costs.set(v, none ? 0.2 * k + (k > 0 ? points : 0) : 0.8 + 0.2 * k); });
  e.known = e.costs.size > 0 || allowed?.size === 1;
  e.rest = e.known ? 1.3 : 0.5;
  if (allowed) {
    for (const v of allowed) if (!e.costs.has(v)) e.costs.set(v, e.rest);
    e.rest = Infinity;
    if (allowed.size === 1) e.costs.set([...allowed][0]!, 0);
  }
  if (compared.length) e.rest = Infinity;
}

/** "For pictures, take the Stoat: 11.2 minutes": the render is its part as well, and no phase that this measure has. */
function dropPhase(g: Grid, out: SlotEvidence[], s: SentenceHits, index: number): void {
  const i = g.of.phase[0]!;
  const e = out[i]!;
  const m = out[g.of.measure[0]!]!;
  const own = s.bySlot[i]!.filter((h) => h.segment === index);
  // "my limit of 38", where what the speaker has on record is called a target: theirs is meant.
  const holder = s.hits.find((h) => g.of.setup.includes(h.slot) && g.holders.has(h.value) && own.some((o) => o.from === h.from));
  if (e.named && holder && !g.cells.some((x) => x.at[holder.slot] === holder.value && e.costs.has(x.at[i]!))) for (const x of g.cells) if (x.fixed && x.at[holder.slot] === holder.value) e.costs.set(x.at[i]!, 0);
  if (!e.named || m.rest !== Infinity || own.length === 0 || !own.every((h) => s.hits.some((o) => o.slot !== i && o.from === h.from && o.to === h.to))) return;
  if (m.costs.some((x) => e.costs.some((v) => g.valuesWith.get(x)?.[i]?.has(v) === true))) return;
  out[i] = { costs: new Few(), rest: 0, empty: 0, named: false, known: true };
}

/** A name that no reading of this measure has is about something else ("the meter showed 36.4 decibels"). */
function dropIncompatible(g: Grid, out: SlotEvidence[], setSaid: boolean): void {
  const m = out[g.of.measure[0]!]!;
  const e0 = out[g.of.phase[0]!]!;
  let measures: string[] | undefined;
  for (const field of ['part', 'setup', 'setting', 'workload'] as const) {
    for (const i of g.of[field]) {
      const e = out[i]!;
      if (!e.named) continue;
      measures ??= [...(m.rest === Infinity ? m.costs.keys() : g.measureUnits.keys())];
      // "The drives in the Garrow": a part for which there is only a limit, beside parts that are numbered, where no limit is spoken of, stands for what was measured of it.
      if (field === 'part' && !e0.named && !setSaid && measures.some((x) => onlySet(g, x, i, e.costs.keys()[0]!) && [...g.valuesWith.get(x)![i]!].some((v) => /[a-z]-?\d+$/.test(v))) && !measures.some((x) => e.costs.some((v) => wasMeasured(g, x, i, v)))) { out[i] = { costs: new Few(), rest: 0, empty: 0, named: false, known: true }; continue; }
      const fits = measures.some((x) => { const has = g.valuesWith.get(x)?.[i]; return has !== undefined && e.costs.some((v) => has.has(v)); });
      if (fits) continue;
      const part = field === 'part';
      out[i] = { costs: new Few(), rest: part ? 0.3 : 1, empty: 0, named: false, known: part };
    }
  }
}
