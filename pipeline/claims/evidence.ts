// For each slot of a key: how well each value goes with what is said and what was said before. Costs: 0 is what the words
// say; below 1 a reading about as good; from 1 on a reading that asks for something unsaid. No cost depends on a value.
import type { Dimension, Unit } from '../quantities/index.js';
import { Few } from './few.js';
import type { Grid } from './grid.js';
import { yieldToNamed } from './goes-together.js';
import { liesBy } from './lies-by.js';
import { markPhases } from './mark-phases.js';
import { measuresIn, onlySet, wasMeasured } from './measured.js';
import type { Parsed } from './parse.js';
import { isArrival } from './arrived-at.js';
import { type Asked, type EvidenceOptions, slotEvidence } from './slot-evidence.js';
import type { State } from './state.js';
import { defaultPhases, phasesOf } from './usual-phases.js';
import type { Role } from './roles.js';

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

export function evidenceFor(g: Grid, p: Parsed, s: SentenceHits, index: number, state: State, units: readonly Unit[] | undefined, options: EvidenceOptions = {}): SlotEvidence[] {
  const said = p.said[index]!;
  const measures = units && measuresIn(g, units).list;
  // "from 38.2 at idle to 84.6": what stands by the first end is just what the second is not.
  // … but "from 38.2 at idle the Larch climbs to 84.6" names what climbs.
  const from = isArrival(p, index) ? p.said[index - 1]! : undefined;
  const asked: Asked = { g, p, s, index, said, state, measures, from, options };
  const out: SlotEvidence[] = [];
  for (let i = 0; i < g.slots.length; i++) out.push(slotEvidence(asked, i));
  phaseEvidence(g, out, p, from ? { ...s, roles: s.roles.filter((r) => !(r.segment === index - 1 && r.from >= from.mention.to)) } : s, index, state, options.ignoreBase ?? false, said.cue.op === 'change' || options.measured === true);
  measureEvidence(g, out, p, s, index, state, units);
  dropIncompatible(g, out, s.roles.some((r) => /^(?:limit|target|rated)$/.test(r.role)));
  dropPhase(g, out, s, index);
  if (said.cue.op !== 'rank') yieldToNamed(g, out, s, index, measures ?? [...g.measureUnits.keys()], /than|at (?:most|least)/.test(said.mention.hedge?.name ?? ''));
  return out;
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
