// What a sentence leaves behind for those that follow.
import { leadBy } from './leads.js';
import { roomParts } from '../facts/index.js';
import type { Candidate, Context } from './context.js';
import { fit, margin } from './decide.js';
import type { Cell, Grid } from './grid.js';
import type { Hit, SentenceHits } from './evidence.js';
import { nameLists } from './name-lists.js';
import { orderSaid } from './order-said.js';
import { leavesUnit } from './said-as.js';
import { significant } from './insist.js';
import type { Parsed } from './parse.js';
import type { Reading } from './read.js';
import { pairWith } from './read-value.js';
import { remember, type State } from './state.js';
import { sameTerm } from './terms.js';

/** Beyond this it makes no difference how long ago a name was said; bounded, so that after an edit the states soon are as they were. */
const longAgo = 10;

function older(ages: readonly number[], by: number): number[] {
  return ages.map((a) => Math.min(a + by, longAgo));
}

/** A comparison that was made this many sentences ago is no longer what "than that" goes back to. */
const forgotten = 25;

function lessCompared(s: State): State {
  if (!s.base && !s.pair) return s;
  const since = (s.since ?? 0) + 1;
  if (since <= forgotten) return { ...s, since };
  return { ...s, base: undefined, pair: undefined, since: undefined };
}

/** Names of a heading or a sentence become topics; what is only compared with does not, nor do measures and parts of a comparison. */
export function afterNames(g: Grid, s: State, { hits, dimensions }: SentenceHits, options: { heading: boolean; open: boolean }): State {
  const topics = [...s.topics];
  const ages = older(s.ages, 1);
  // "How hot does it get?": a kind of quantity that only one measure has becomes the topic as well.
  const measure = g.of.measure[0]!;
  if (options.open && !hits.some((h) => h.slot === measure)) for (const d of dimensions) {
    const fitting = [...g.measureUnits].filter(([, dims]) => d.dimension.some((x) => dims.has(x)));
    if (fitting.length === 1) { topics[measure] = remember(topics[measure]!, fitting[0]![0]); ages[measure] = 0; }
  }
  const together = [...s.together];
  const seen: string[][] = [];
  // Read backwards, the first name of the last stretch ends up on top.
  for (const h of hits) {
    if (g.slots[h.slot]!.field === 'setup' && g.holders.has(h.value)) continue;
    if (h.baseOf >= 0 || (h.depends && topics[h.slot]!.length > 0 && (g.slots[h.slot]!.field === 'setup' || g.slots[h.slot]!.field === 'setting'))) {
      const field = g.slots[h.slot]!.field;
      // What was compared with stays at hand behind the topic.
      if (field !== 'measure' && field !== 'part' && topics[h.slot]!.length > 0 && !topics[h.slot]!.includes(h.value)) topics[h.slot] = [...topics[h.slot]!.slice(0, 1), h.value, ...topics[h.slot]!.slice(1)].slice(0, 5);
      continue;
    }
    const field = g.slots[h.slot]!.field;
    if (options.heading && (field === 'measure' || field === 'part') && g.values[h.slot]!.size < 2) continue;
    topics[h.slot] = remember(topics[h.slot]!, h.value);
    ages[h.slot] = 0;
    const values = (seen[h.slot] ??= []);
    if (!values.includes(h.value)) values.push(h.value);
    together[h.slot] = values.length;
  }
  const heading = options.heading ? hits.map((h) => [h.slot, h.value] as const) : s.heading;
  return { ...lessCompared(s), topics, ages, together, heading, figureAge: Math.min(s.figureAge + 1, longAgo) };
}

/** A new section: figures and comparisons of the last one are no longer at hand; topics stay until others are named. */
export function newSection(g: Grid, s: State): State {
  const out: State = { ...s, said: [], placed: [], shares: [], ages: older(s.ages, 8), figureAge: longAgo, pair: undefined, order: undefined };
  const phase = g.of.phase[0]!;
  return { ...out, topics: s.topics.map((t, i) => (i === phase ? [] : t)) };
}

/** After a mention was read: the figure, the pair, the comparison it leaves. */
export function afterMention(c: Context, index: number, r: Reading): State {
  const now = c.now;
  const chosen = r.verdict === 'not-a-claim' || r.unsaid ? undefined : r.chosen;
  if (!chosen) return now;
  const g = c.grid;
  const next: { -readonly [K in keyof State]: State[K] } = { ...now };
  const kind = chosen.term.kind;
  if (kind !== 'count') next.figureAge = 0;
  if (kind === 'mean' && r.mention.unit) next.unit = leavesUnit(r);
  if (kind !== 'rank' && kind !== 'count' && kind !== 'range') next.said = [chosen.term, ...now.said.filter((t) => !sameTerm(t, chosen.term))].slice(0, 4);
  if (kind === 'percent_of') next.shares = [chosen.term, ...now.shares.filter((t) => !sameTerm(t, chosen.term))].slice(0, 4);
  // Whoever comes first says which way the table runs.
  if (kind === 'rank' && chosen.fact.value.toNumber() === 1 && (chosen.term.variant === 'lowest' || chosen.term.variant === 'highest')) next.leads = { variant: chosen.term.variant, of: chosen.subject ? [...g.of.measure, ...g.of.part].map((i) => chosen.subject!.at[i]).join('/') : '' };
  const lead = leadBy(c, index, chosen);
  if (lead) next.leads = { variant: lead, of: [...g.of.measure, ...g.of.part].map((i) => chosen.subject!.at[i]).join('/') };
  if (kind === 'rank' && chosen.subject) next.placed = [...now.placed.filter((k) => k !== chosen.subject!.key), chosen.subject.key].slice(-8);
  if (chosen.change?.length && chosen.subject && chosen.base && !chosen.base.fixed) Object.assign(next, stepOf(g, now, chosen, chosen.subject, chosen.base), { since: 0 });
  // "at 93 percent of the limit, … six degrees away from it"
  if (chosen.base?.fixed && r.verdict === 'agrees') next.constant = chosen.base.key;
  const cell = chosen.subject;
  if (cell && chosen.term.kind === 'mean') {
    if (cell.fixed) next.constant = cell.key;
    const previous = index > 0 ? c.done[index - 1] : undefined;
    const low = c.parsed.low.slice(index > 0 ? c.parsed.said[index - 1]!.mention.to : 0, c.parsed.said[index]!.mention.from);
    // "The Cobble needs 44 to the Garth's 51": set against each other, and told of the first.
    // "It's 88 against 97. So it is short by 9.": told of the first.
    if (previous?.subject && previous.term.kind === 'mean' && previous.subject !== cell && /(?:^| )(?:against|versus|vs|compared (?:with|to))(?: (?:the|a|its))?(?: \p{L}+(?:'s)?)?$/u.test(low.slice(-5).join(' '))) next.said = [previous.term, chosen.term, ...now.said.filter((t) => !sameTerm(t, chosen.term) && !sameTerm(t, previous.term))].slice(0, 4);
    const set = c.hits.hits.some((h) => h.segment === index && h.to === c.parsed.said[index]!.mention.from && g.slots[h.slot]!.field === 'setup' && c.parsed.low[h.to - 1]!.endsWith("'s")) && !c.parsed.low.slice(0, c.parsed.said[index]!.mention.from).includes('from');
    if (previous?.subject && previous.term.kind === 'mean' && low.includes('to') && previous.subject !== cell) Object.assign(next, { pair: set ? [cell.key, previous.subject.key] : [previous.subject.key, cell.key], since: 0 });
  }
  if (cell && (kind === 'mean' || kind === 'difference' || kind === 'rise' || kind === 'percent_change')) {
    // The measure and part of a figure read carry on, as do things that the words left open.
    const topics = [...next.topics];
    for (const field of ['measure', 'part'] as const) for (const i of g.of[field]) if (cell.at[i]) topics[i] = remember(topics[i]!, cell.at[i]!);
    // "With the doors off it takes 71.2, the other gets into second at 69.4": where the figure was found is where the sentence is.
    if (chosen.settled && kind === 'mean') for (const field of ['setting', 'workload', 'phase'] as const) for (const i of g.of[field]) if (cell.at[i]) topics[i] = remember(topics[i]!, cell.at[i]!);
    const shown = shownBy(c, index, r, chosen, cell);
    for (const i of shown) topics[i] = remember(topics[i]!, cell.at[i]!);
    if (shown.length) next.together = now.together.map((n, i) => (shown.includes(i) ? 1 : n));
    next.topics = topics;
  }
  return next;
}

/** "Out comes the filter. It draws 41.3 watts": in which setting was never named; a figure that fits but one tells it, and those that follow are of the same. */
function shownBy(c: Context, index: number, r: Reading, chosen: Candidate, cell: Cell): number[] {
  const g = c.grid;
  const unnamed = g.of.setting.filter((i) => cell.at[i] && cell.at[i] !== c.now.topics[i]![0] && c.now.topics[i]!.length > 0 && !c.hits.bySlot[i]!.length && !c.now.heading.some(([k]) => k === i));
  if (!unnamed.length) return [];
  const { mention } = c.parsed.said[index]!;
  const before = c.parsed.low[mention.from - 1] === 'the' ? c.parsed.low[mention.from - 2] : c.parsed.low[mention.from - 1];
  if (chosen.term.kind !== 'mean' || cell.fixed || mention.type !== 'cardinal' || mention.hedge || significant(mention) < 3 || lookingBack.test(before ?? '') || g.of.part.some((i) => roomParts.includes(cell.at[i]!)) || pairWith(c, index) || !fit(mention, chosen)) return [];
  if (r.ranked.some((x) => x.candidate.subject !== cell && x.candidate.term.kind === 'mean' && x.candidate.cost <= chosen.cost + margin && x.fits)) return [];
  return unnamed;
}

/** What stands before a figure that something was, and no longer is. */
const lookingBack = /^(?:from|against|versus|vs|than|of|after|had|where|was|were|been)$/;

/** What was compared with what. "They are 1.1 apart" says no way round: the one of the comparison before stays. */
function stepOf(g: Grid, now: State, chosen: Candidate, subject: Cell, base: Cell): Pick<State, 'base' | 'pair'> {
  const [from, to] = (now.pair ?? []).map((k) => g.byKey.get(k));
  const slots = chosen.change!.map(([i]) => i);
  const turned = chosen.sign === 0 && !chosen.firm && from !== undefined && to !== undefined && slots.every((i) => from.at[i] === subject.at[i] && to.at[i] === base.at[i]);
  return turned ? { base: slots.map((i) => [i, subject.at[i]!] as const), pair: [subject.key, base.key] } : { base: chosen.change!, pair: [base.key, subject.key] };
}

/** The first things of one kind that are named and not only compared with. */
function spread(g: Grid, bySlot: readonly (readonly Hit[])[]): { slot: number; values: readonly string[] } | undefined {
  for (const [slot, own] of bySlot.entries()) {
    if (own.length < 2 || !listed.has(g.slots[slot]!.field)) continue;
    const values = [...new Set(own.filter((h) => h.baseOf < 0 && !(g.slots[slot]!.field === 'setup' && g.holders.has(h.value))).map((h) => h.value))];
    if (values.length > 1) return { slot, values };
  }
  return undefined;
}

const listed: ReadonlySet<string> = new Set(['setup', 'setting', 'part', 'workload']);

export function afterSentence(g: Grid, p: Parsed, s: State, { hits, bySlot }: SentenceHits): State {
  let out = s.mark ? { ...s, mark: s.mark.left > 0 ? { ...s.mark, left: s.mark.left - 1 } : undefined } : s;
  if (hits.length === 0 && !p.low.includes('to')) return out;
  const told = nameLists(g, p, bySlot).at(-1);
  const named = spread(g, bySlot);
  const list = told ?? named;
  // "The one and the other need 5 volts, the third 6 and the fourth 9. They weigh … respectively": as many as were named.
  if (told && named && named.slot === told.slot && ['setup', 'setting'].includes(g.slots[named.slot]!.field) && named.values.length > told.values.length) out = { ...out, table: { slot: named.slot, values: named.values } };
  if (list) out = { ...out, list: { slot: list.slot, values: list.values, ...(!told && { scattered: true }) }, ...(list.values.length > 2 && { table: { slot: list.slot, values: list.values } }) };
  // "The one draws 41, the other 35 and the third 30": as good as a list, where each has its figure.
  if (!told && named && named.values.length > 2 && p.said.length >= named.values.length) out = { ...out, table: { slot: named.slot, values: named.values } };
  const order = orderSaid(g, p, out);
  return order ? { ...out, order } : out;
}
