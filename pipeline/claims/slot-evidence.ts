// How well each value of one slot goes with what is said and what was said before. What few sentences need is a function of its
// own: this is asked of each slot for each number.
import { drawing } from './change-words.js';
import type { Hit, SentenceHits, SlotEvidence } from './evidence.js';
import { Few } from './few.js';
import { givenFor } from './goes-together.js';
import type { Grid } from './grid.js';
import { markOfAnother, setBeside } from './lies-by.js';
import { passedOver } from './oblique.js';
import type { Parsed, Said } from './parse.js';
import { apposed } from './placed.js';
import { constantRoles } from './roles.js';
import { sectionFirst } from './section-first.js';
import { sharedByBoth } from './shared-by-both.js';
import type { State } from './state.js';
import { firstCell } from './terms.js';
import { whereTested } from './where-tested.js';

export interface EvidenceOptions { ahead?: boolean; ignoreBase?: boolean; ownPart?: boolean; measured?: boolean }

/** The number that evidence is looked for, and the words around it. */
export interface Asked {
  g: Grid;
  p: Parsed;
  s: SentenceHits;
  index: number;
  said: Said;
  state: State;
  /** Measures that are given in the number's unit; undefined where it has none. */
  measures: readonly string[] | undefined;
  /** The other end, where this number is the second: "from 38.2 at idle to 84.6". */
  from: Said | undefined;
  options: EvidenceOptions;
}

export const unlisted = 2;
const none: readonly Hit[] = [];

export function slotEvidence(a: Asked, i: number): SlotEvidence {
  const { field } = a.g.slots[i]!;
  const e: SlotEvidence = { costs: new Few(), rest: 1, empty: 0, named: false, known: false };
  const pair = a.s.paired.size === 0 ? undefined : pairedWith(a, i);
  if (pair !== undefined) {
    e.costs.set(pair, 0);
    return outright(e, 0.5);
  }
  const hits = a.s.bySlot[i]!;
  const own = hits.length === 0 ? none : ownHits(a, i, hits);
  if (own.length > 0) {
    if (field === 'part' && calledLikeWork(a, own)) return openPart(a, i, e, own);
    distinct(own, a.said.mention.from).forEach((v, k) => e.costs.set(v, k === 0 ? 0 : 0.6));
    for (const h of own) if (h.or !== undefined && !e.costs.has(h.or)) e.costs.set(h.or, 0.3);
    return outright(e, field === 'phase' ? 0.3 : field === 'setup' ? 1 : 0.4);
  }
  const near = hits.length === 0 ? none : nearHits(a, i, hits);
  if (near.length > 0) giveNear(e, near);
  if (field === 'phase' || field === 'measure') return e;
  giveTopics(a, i, e, near, hits);
  if (!e.known) e.rest = 1;
  return e;
}

/** The words name the value. */
const outright = (e: SlotEvidence, empty: number): SlotEvidence => {
  e.rest = Infinity;
  e.empty = empty;
  e.named = true;
  e.known = true;
  return e;
};

function pairedWith({ s, index }: Asked, i: number): string | undefined {
  return s.paired.get(index)?.find((x) => x.slot === i)?.value;
}

/** What no reading in this unit has cannot be what is spoken of. */
function possible({ g, measures }: Asked, i: number, v: string): boolean {
  return !measures || measures.some((m) => g.valuesWith.get(m)![i]!.has(v));
}

/** Names in the number's own stretch that may say what it is of. */
function ownHits(a: Asked, i: number, hits: readonly Hit[]): readonly Hit[] {
  const { g, p, s, index, said, options } = a;
  const { field } = g.slots[i]!;
  const own = hits.filter((h) => !h.departs && (h.segment === index || (h.segment === index - 1 && apposed(p, index, h.from))) && !setBeside(g, p, h, index) && !(field === 'setup' && whereTested(g, p, h, index)) && (h.baseOf !== index || options.ignoreBase || (options.ownPart && field === 'part') || (field === 'measure' && said.cue.op === 'ratio')));
  // "get the small one for a render: 18.9 minutes", where a phase of other readings is called so too: the work is meant.
  if (field === 'phase') return own.filter((h) => possible(a, i, h.value) || !s.hits.some((o) => o.slot !== i && o.from === h.from));
  if (field !== 'measure' || (said.mention.unit?.id !== '%' && said.mention.type !== 'fraction')) return own;
  return ofShare(a, own, hits);
}

/** Names of quantities beside a share: what it is a share of tells the quantity, the unit does not. */
function ofShare({ p, said }: Asked, named: readonly Hit[], hits: readonly Hit[]): readonly Hit[] {
  const { mention, cue } = said;
  const ofSomething = p.low[mention.to] === 'of';
  // "69 per cent of its time", where something else is measured "in per cent": the unit names nothing there.
  const own = mention.unit?.id === '%' && (cue.op === 'share' || ofSomething) ? named.filter((h) => h.from < mention.from || h.to > mention.to) : named;
  // "8 percent of its rated flow"
  const shared = ofSomething ? hits.filter((h) => h.from > mention.to && h.from <= mention.to + 4) : none;
  if (!shared.length) return own;
  if (own.length === 0) return cue.op === 'share' ? shared : own;
  return own.some((h) => !shared.includes(h)) && own.every((h) => shared.includes(h) || (h.from >= mention.from && h.to <= mention.to)) ? shared : own;
}

/** "you start the wash and it goes up by 31", where the time of a wash is called so as well. */
function calledLikeWork({ g, s }: Asked, own: readonly Hit[]): boolean {
  return own.every((h) => s.hits.some((o) => o.from === h.from && o.to === h.to && g.slots[o.slot]!.field === 'workload'));
}

/** … other parts stay open. */
function openPart({ said, state }: Asked, i: number, e: SlotEvidence, own: readonly Hit[]): SlotEvidence {
  for (const v of distinct(own, said.mention.from)) e.costs.set(v, 0);
  state.topics[i]!.forEach((v, k) => { if (!e.costs.has(v)) e.costs.set(v, 0.1 + 0.2 * k); });
  e.rest = 0.5;
  e.known = true;
  return e;
}

/** Names elsewhere in the sentence that may say it. */
function nearHits(a: Asked, i: number, hits: readonly Hit[]): readonly Hit[] {
  const { g, p, s, index, from, options } = a;
  const { field } = g.slots[i]!;
  // A test plan is no thing tested: its name says nothing about the figures that follow.
  const thing = (v: string): boolean => field !== 'setup' || !g.holders.has(v);
  // "The limit is 15 watts, and it draws 14.1": what is drawn was measured, and not set.
  const drawn = field === 'phase' && drawing.in(p.low, a.said.segment.from, a.said.mention.from);
  const set = (v: string): boolean => constantRoles.includes(g.roles.get(v)!);
  const earlier = hits.filter((h) => h.segment < index && h.baseOf < 0 && !(field === 'phase' && (markOfAnother(g, p, h, index) || (drawn && set(h.value)))) && possible(a, i, h.value) && thing(h.value) && !(field === 'setup' && passedOver(p, index, hits, h)));
  const later = options.ahead ? hits.filter((h) => h.segment > index && h.segment <= index + 1 && h.baseOf < 0 && possible(a, i, h.value) && thing(h.value)) : none;
  // "The Larch has 9 more than the Rowan on peat": both are, where it was not said otherwise.
  const both = !later.length && !earlier.length && (field === 'setting' || field === 'workload') ? sharedByBoth(g, p, s, hits, index) : none;
  return [...both, ...later, ...earlier.reverse()].filter((h) => !(from && h.segment === index - 1 && h.from >= from.mention.to));
}

function giveNear(e: SlotEvidence, near: readonly Hit[]): void {
  let cost = 0;
  for (const h of near) {
    if (e.costs.has(h.value) || near.some((o) => o.value !== h.value && contains(o.value, h.value))) continue;
    e.costs.set(h.value, cost);
    cost = cost === 0 ? 0.7 : cost + 0.3;
  }
  e.known = true;
  e.rest = unlisted;
}

/** What the sentences before were about. */
function giveTopics(a: Asked, i: number, e: SlotEvidence, near: readonly Hit[], hits: readonly Hit[]): void {
  const { g, p, s, index, state, from, said } = a;
  const { field } = g.slots[i]!;
  const fresh = near.length === 0;
  const section = sectionOf(state, i);
  const topics: string[] = [];
  for (const v of state.topics[i]!) if (possible(a, i, v) && !(from && hits.some((h) => h.value === v && h.segment === index - 1 && h.from >= from.mention.to))) topics.push(v);
  sectionFirst(topics, section, state, i, field === 'setting' && fresh);
  const usual = fresh && field === 'part' && state.ages[i]! > 2 ? usualPart(g, a.measures ?? measureNamed(g, s, index)) : undefined;
  if (usual !== undefined && topics[0] !== usual) topics.splice(0, topics.length, usual, ...topics.filter((v) => v !== usual));
  // "the Stoat may stay, with its eleven watts": what is its own is no other's.
  const owned = field === 'setup' && near.length > 0 && e.costs.size === 1 && /^(?:its|their|his|her)$/.test(p.low[said.mention.from - 1] ?? '') ? 0.7 : 0;
  // The work that the last figure was about, where that was never given for what was named before.
  const work = fresh && field === 'workload' && state.ages[i]! > 2 && state.said[0] ? firstCell(g, state.said[0])?.at[i] : undefined;
  if (work && possible(a, i, work) && !topics.includes(work) && !e.costs.has(work) && !givenFor(g, state.said[0]!, i, topics[0] ?? work)) e.costs.set(work, 0.1);
  for (let k = 0; k < topics.length; k++) {
    const v = topics[k]!;
    if (e.costs.has(v)) continue;
    // "… and the Stoat gained twice that. It hums at 31 now": the section's own is gone back to without a word.
    e.costs.set(v, fresh ? (k < state.together[i]! ? 0.2 * k : v === section && (field === 'setup' || field === 'setting') ? 0.2 : Math.min(1.4, 0.5 + 0.4 * k)) : 1 + owned + 0.3 * k);
  }
  if (!fresh || !e.costs.size) return;
  e.known = true;
  e.rest = field === 'part' ? 1.1 : unlisted;
}

function sectionOf(state: State, slot: number): string | undefined {
  for (const [k, v] of state.heading) if (k === slot) return v;
  return undefined;
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
