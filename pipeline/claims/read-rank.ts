// A mention read as a place in a ranking: a superlative, "second loudest", "First, …", "in sixth place", "last".
import { stretch } from '../script/index.js';
import { Exact, type Unit } from '../quantities/index.js';
import { siblings } from './siblings.js';
import { type Candidate, type Context, polarity, subjectCells, unitsOf } from './context.js';
import { evidenceFor } from './evidence.js';
import { type Cell, firstTime, type Grid, kindOf, movedTo } from './grid.js';
import { fit } from './decide.js';
import { relative, saidToBe } from './said-to-be.js';
import { placedSubject, subjectUnknown } from './placed-subject.js';
import { paceWay } from './pace.js';
import { push, readValue } from './read-value.js';
import { firstCell } from './terms.js';

/** How many they are says which set is ranked, whatever the names beside it would say. */
const counted = 0.3;

export function readRank(c: Context, index: number): Candidate[] {
  const said = c.parsed.said[index]!;
  const { mention, cue } = said;
  const ahead = namedAhead(c, index);
  const beside = figureBeside(c, index);
  const { cells } = subjectCells(c, index, unitBeside(c, index), { ahead, ignoreBase: true, measured: true });
  // "Second, the Corvane, with 59.7": the figure beside it tells what is ranked.
  if (beside) {
    for (const x of cells) x.cost = x.cell === beside ? 0 : x.cost + 0.5;
    if (!cells.some((x) => x.cell === beside)) cells.push({ cell: beside, cost: 0 });
    cells.sort((x, y) => x.cost - y.cost);
  }
  // "92.8 percent efficient. Lowest of the three": of what was said last, where no quantity is named.
  const last = c.now.said[0] && firstCell(c.grid, c.now.said[0]);
  const { measure, part } = c.grid.of;
  if (last && !beside && !cue.of?.length && c.hits.dimensions.length === 0 && !c.hits.hits.some((h) => [...measure, ...part].includes(h.slot))) {
    for (const x of cells) if ([...measure, ...part].some((i) => x.cell.at[i] !== last.at[i])) x.cost += 0.4;
    cells.sort((x, y) => x.cost - y.cost);
  }
  // "… levels off at 74.6, up 3.3. That's only the third warmest.": of what the figure was given for, where nothing is named.
  const given = beside || !pointsBack(c, index) ? undefined : c.now.said.find((t) => t.kind !== 'count');
  const pointed = given && firstCell(c.grid, given);
  if (pointed && !pointed.fixed) {
    const { setup, setting, workload } = c.grid.of;
    const same = cells.filter((x) => [...setup, ...setting, ...workload].every((i) => x.cell.at[i] === pointed.at[i]));
    const least = Math.min(...same.map((x) => x.cost));
    for (const x of cells) x.cost += same.includes(x) ? -least : 0.6;
    cells.sort((x, y) => x.cost - y.cost);
  }
  // "3.7 above the Pavett, which is the coolest", "The quietest of the three is the 280"
  for (const meant of [...relative(c, index), ...saidToBe(c, index)]) {
    for (const x of cells) if (x.cell.at[meant.slot] !== meant.value) x.cost += 0.9;
    for (const x of cells.slice(0, 3).filter((w) => w.cell.at[meant.slot] !== meant.value)) { const y = movedTo(c.grid, x.cell, meant.slot, meant.value); if (y && !cells.some((z) => z.cell === y)) cells.push({ cell: y, cost: Math.max(0, x.cost - 0.9) }); else { const z = cells.find((w) => w.cell === y); if (z) z.cost = Math.min(z.cost, Math.max(0, x.cost - 0.9)); } }
    cells.sort((x, y) => x.cost - y.cost);
  }
  const out: Candidate[] = [];
  const size = sizeSaid(c, index);
  const sets = rankSets(c, index);
  // "The one was the hottest, and the other came second": second from the same end.
  // … but not "from quietest to loudest", which starts at the other.
  const first = c.parsed.said[index - 1]?.mention;
  const lead = mention.type === 'ordinal' && first && c.parsed.low[first.from - 1] !== 'to' ? first.superlative : undefined;
  const side = lead?.way === 'up' ? 'highest' : lead?.way === 'down' ? 'lowest' : undefined;
  for (const { cell, cost } of cells) {
    if ((cell.fixed && !c.grid.onlyConstant.has(cell.at[c.grid.of.measure[0]!]!)) || out.length > 80) continue;
    // "the coolest", where nothing named is of heat: of no weight.
    if (cue.of?.length && !cue.of.includes(cell.unit.dimension) && cue.of.some((d) => c.grid.dimensions.has(d))) continue;
    const good = polarity(c, cell);
    const variants: [string, number][] = [];
    const way = paceWay(mention.superlative ? c.parsed.low[mention.to - 1]! : '', cell.unit) ?? cue.way;
    if (way === 'up') variants.push(['highest', 0]);
    else if (way === 'down') variants.push(['lowest', 0]);
    else if (cue.way === 'better' || cue.way === 'worse') { if (good) variants.push([(good > 0) === (cue.way === 'better') ? 'highest' : 'lowest', 0]); else continue; }
    else if (!good && finishedIn(c, index, cell)) variants.push(['lowest', 0]);
    else if (c.now.order) variants.push([c.now.order, 0]);
    else if (side) variants.push([side, 0]);
    // "The one is the hungriest of all. The other comes second": from the same end, whichever is better.
    else if (mention.value.equals(Exact.of(2)) && rightBehind(c, cell)) variants.push([c.now.leads!.variant, 0], [c.now.leads!.variant === 'highest' ? 'lowest' : 'highest', 1.4]);
    else if (!good && c.now.leads?.of === [...measure, ...part].map((i) => cell.at[i]).join('/')) variants.push([c.now.leads.variant, 0.1]);
    else variants.push([good < 0 ? 'lowest' : 'highest', good ? 0 : 0.3], [good < 0 ? 'highest' : 'lowest', good ? 1.4 : 0.5]);
    for (const { slots, cost: extra } of sets) {
      const all = siblings(c.grid, cell, slots);
      const set = cell.at.some((v) => c.grid.repeats.has(v)) ? all : firstTime(c.grid, all);
      if (set.length < 2 || (mention.value.sign() > 0 && mention.value.compare(Exact.of(set.length)) > 0)) continue;
      // Of two, one is not the loudest but the louder; unless "in the closed case, …" leaves no more than two.
      const within = /^(?:in|on|with|at|for)$/.test(c.parsed.low[0] ?? '') && c.hits.hits.some((h) => h.to <= mention.from && h.baseOf < 0 && !slots.includes(h.slot) && ['setup', 'setting'].includes(c.grid.slots[h.slot]!.field) && cell.at[h.slot] === h.value);
      const pair = set.length === 2 && size !== 2 && mention.superlative && !within && sets.some((o) => siblings(c.grid, cell, o.slots).length > 2) ? 0.8 : 0;
      // "the quietest of the eight combinations": in whichever of them that were not named.
      const open = mention.superlative && mention.value.equals(Exact.of(1)) && set.length === size && slots.length > 1 ? slots.filter((i) => !c.hits.hits.some((h) => h.slot === i && h.baseOf < 0)) : [];
      const own = open.length ? Math.min(...cells.filter((x) => c.grid.slots.every((_, i) => open.includes(i) || x.cell.at[i] === cell.at[i])).map((x) => x.cost)) : cost;
      const sizeCost = size === undefined ? 0 : set.length === size ? 0 : 1.4;
      for (const [variant, more] of variants) {
        push(out, c, { kind: 'rank', variant, args: [cell.key, ...set.filter((x) => x !== cell).map((x) => x.key)] }, 'rank', own + (set.length === size ? counted * extra : extra) + sizeCost + pair + more, cell, `${variant} of ${set.length}`, { exact: true });
      }
    }
  }
  return out;
}

/** "That is", "it was": nothing else in the sentence says what is placed. */
function pointsBack(c: Context, index: number): boolean {
  const { mention } = c.parsed.said[index]!;
  const { low } = c.parsed;
  if (c.hits.hits.some((h) => h.from < mention.from + 6 && ['setup', 'setting', 'workload'].includes(c.grid.slots[h.slot]!.field))) return false;
  const words = low.slice(Math.max(0, mention.from - 5), mention.from).filter((w) => !/^(?:the|a|an|only|just|still|now|even|then|also|by|far|and|but|so|,)$/.test(w));
  return /^(?:that's|it's|this's)$/.test(words.at(-1) ?? '') || (/^(?:is|was|makes|'s)$/.test(words.at(-1) ?? '') && /^(?:that|this|it|which)$/.test(words.at(-2) ?? ''));
}

/** "comes second in 41 seconds": whoever takes the least time is first. */
function finishedIn(c: Context, index: number, cell: Cell): boolean {
  const next = c.parsed.said[index + 1]?.mention;
  const { to } = c.parsed.said[index]!.mention;
  return cell.unit.dimension === 'duration' && next !== undefined && c.parsed.low[next.from - 1] === 'in' && next.from - to <= 3 && (!next.unit || next.unit.dimension === 'duration');
}

/** "Hottest of all is the Dunmarrow", "First, the Ashmere": the thing placed comes after. */
function namedAhead(c: Context, index: number): boolean {
  const { mention, segment } = c.parsed.said[index]!;
  // "It was the thirstiest then, and the thriftiest, the Larch, …": of what was spoken of, and not of what comes.
  if (placedSubject(c, index) === 'pronoun') return false;
  const things = c.hits.hits.filter((h) => ['setup', 'setting'].includes(c.grid.slots[h.slot]!.field) && h.baseOf < 0);
  if (things.some((h) => h.segment === index)) return true;
  const after = things.find((h) => h.from >= mention.to);
  if (!after || subjectSaid(c, index, after.from) || subjectUnknown(c, index)) return false;
  const before = things.some((h) => h.from < segment.from + 1 && h.from < mention.from);
  return !before || c.parsed.low.slice(mention.to, after.from).some((w) => /^(?:is|was|are|remains|stays|belongs|goes|comes|came|go)$/.test(w)) || (mention.type === 'ordinal' && c.parsed.low[mention.to] === ',');
}

/** "It is still in third place, but it lies far behind the Larch": a pronoun has said whose place it is, and another clause names the other. */
function subjectSaid(c: Context, index: number, next: number): boolean {
  const { mention, segment } = c.parsed.said[index]!;
  const { low } = c.parsed;
  return low.slice(segment.from, mention.from).some((w) => /^(?:it|he|she|they)(?:'s|'re)?$/.test(w)) && low.slice(mention.to, next).some((w) => /^(?:,|;|but|and|while|though|although|because|since|yet)$/.test(w));
}

/** The reading that the figure next to it, in the same sentence, was or will be tied to. */
export function figureBeside(c: Context, index: number): Cell | undefined {
  const { said } = c.parsed;
  const own: { slot: number; value: string }[] = [...c.hits.hits.filter((h) => h.segment === index && h.baseOf < 0), ...(c.hits.paired.get(index) ?? [])];
  const agrees = (cell: Cell): boolean => own.every((h) => ['measure', 'part', 'phase'].includes(c.grid.slots[h.slot]!.field) || cell.at[h.slot] === h.value || own.some((o) => o.slot === h.slot && cell.at[o.slot] === o.value));
  const order = said[index]!.cue.of?.length ? [index - 1, index + 1] : [index + 1, index - 1];
  for (const k of order) {
    const s = said[k];
    if (!s || s.mention.type !== 'cardinal' || s.cue.op !== 'value' || s.named || (!s.mention.unit && s.mention.decimals === 0 && !/^(?:with|at|on|:)$/.test(c.parsed.low[s.mention.from - 1] ?? ''))) continue;
    const known = k < index ? c.done[k] : undefined;
    const cell = known?.term.kind === 'mean' ? known.subject : k > index ? readValue(c, k).filter((x) => x.cost <= 0.9 && fit(s.mention, x) && x.term.kind === 'mean').sort((x, y) => x.cost - y.cost)[0]?.subject : undefined;
    // "49.2 decibels, the loudest": the figure stands right before it.
    const touching = k < index && said[index]!.mention.from - s.mention.to <= 2 && c.parsed.low[said[index]!.mention.from - 1] === 'the';
    if (!cell || cell.fixed || (!touching && !agrees(cell))) continue;
    const of = said[index]!.cue.of;
    if (of?.length && !of.includes(cell.unit.dimension)) continue;
    return cell;
  }
  return undefined;
}

/** A place in a ranking is about what the figure beside it is about: "second, with 47 millivolts". */
function unitBeside(c: Context, index: number): readonly Unit[] | undefined {
  const { said } = c.parsed;
  if (said[index]!.cue.of?.length) return undefined;
  for (const k of [index + 1, index - 1]) {
    const m = said[k]?.mention;
    if (!m?.unit || m.unit.id === 'points' || said[k]!.cue.op !== 'value' || said[k]!.named) continue;
    const units = unitsOf(said[k]!, false);
    if (units && units.some((u) => [...c.grid.measureUnits.values()].some((d) => d.has(kindOf(u))))) return units;
  }
  return undefined;
}

/** "of the five", "of all eight combinations". */
export function sizeSaid(c: Context, index: number): number | undefined {
  const said = c.parsed.said[index]!;
  const next = c.parsed.said[index + 1];
  const { low } = c.parsed;
  if (next && next.mention.type === 'cardinal' && !next.mention.unit) {
    const gap = low.slice(said.mention.to, next.mention.from);
    if (gap.includes('of') && gap.length <= 5) return next.mention.value.toNumber();
  }
  // "Of the eight boxes, it is the lightest": how many they are opens the sentence.
  const first = c.parsed.said[0]!.mention;
  return index > 0 && first.type === 'cardinal' && !first.unit && first.decimals <= 0 && /^(?:(?:and|but|so) )?(?:out )?of(?: (?:all|the|our|my|these|those|all the|all these|all of the))?$/.test(stretch(low, 0, first.from)) ? first.value.toNumber() : undefined;
}

/** Which slots vary in the set ranked, by what is named and what the words count. */
export function rankSets(c: Context, index: number): { slots: readonly number[]; cost: number }[] {
  const g: Grid = c.grid;
  const said = c.parsed.said[index]!;
  const e = evidenceFor(g, c.parsed, c.hits, index, c.now, undefined, { ahead: true, ignoreBase: true });
  const named = (field: 'setup' | 'setting' | 'workload'): boolean => g.of[field].some((i) => e[i]!.named || c.hits.hits.some((h) => h.slot === i && h.segment <= index + 1 && h.segment >= index));
  const after = c.parsed.low.slice(said.mention.to, said.mention.to + 6);
  const all = c.parsed.low.some((w) => /^(?:combinations?|ever|overall|anywhere|configurations?)$/.test(w));
  // "second quickest in the coarse setting": where it is, and nothing that is ranked.
  const where = (k: number): boolean => c.hits.hits.some((h) => h.from <= k && k <= h.to && g.slots[h.slot]!.field === 'setting');
  const bySetting = after.some((w, k) => !where(said.mention.to + k) && !c.parsed.names.some((n) => n.from <= said.mention.to + k && said.mention.to + k < n.to && n.meanings.some((x) => x.own && x.fields.some((f) => f === 'measure' || f === 'part'))) && /^(?:settings?|modes?|profiles?|speeds?|steps?|levels?|curves?)$/.test(w));
  const setup = named('setup');
  const setting = named('setting');
  const both = [...g.of.setup, ...g.of.setting];
  // "The loudest is the long loop on high": told by both, so among all of them, unless one of the two was spoken of before.
  const told = setup && setting && said.mention.superlative !== undefined && toldByBoth(c, index);
  const rows: { slots: readonly number[]; cost: number }[] = [
    { slots: g.of.setup, cost: all ? 1 : bySetting ? 1.2 : setup && setting ? 0.5 : setup ? 0 : setting ? 0.7 : 0.2 },
    { slots: g.of.setting, cost: all ? 1 : bySetting ? 0 : setup && setting ? 0.6 : setting ? (setup ? 0.6 : 0) : 0.7 },
    { slots: both, cost: all ? 0 : setup && setting ? 0.3 : 1 },
    { slots: g.of.workload, cost: named('workload') && !setup && !setting ? 0.3 : 1.5 },
    { slots: [...both, ...g.of.workload], cost: all ? (sizeSaid(c, index) === undefined ? 0.4 : 0.1) : 1.4 },
  ];
  // "the quietest of the four", where settings are made of two choices: of one choice, the other kept.
  if (sizeSaid(c, index) !== undefined && g.of.setting.length > 1) for (const i of g.of.setting) rows.push({ slots: [i], cost: c.hits.hits.some((h) => h.slot === i && h.segment >= index && h.segment <= index + 1) ? 0.2 : 0.9 });
  // "it is second on battery", "…, is now third": what is named beside the place is where it has it, and not what has it.
  if (!bySetting && !setup && setting && /^(?:pronoun|thing)$/.test(placedSubject(c, index) ?? '')) for (const row of rows) row.cost = row.slots === g.of.setup ? 0.1 : row.slots === g.of.setting ? 0.8 : row.cost;
  // "the Ashlar is dear, and second quickest in the coarse setting": it is known of which of several, but of which settings not.
  const held = c.hits.hits.some((h) => g.slots[h.slot]!.field === 'setting' && h.from > said.mention.to && h.from <= said.mention.to + 2 && /^(?:in|at|on|with|under)$/.test(c.parsed.low[said.mention.to] ?? ''));
  if (!bySetting && held && !said.mention.value.equals(Exact.of(1)) && setting && !setup) for (const row of rows) row.cost = row.slots === g.of.setup ? 0.1 : row.slots === g.of.setting ? 0.8 : row.cost;
  // "The Osk is loudest in the shed": where it is, of all the places that it was in.
  const own = said.mention.superlative && said.mention.value.equals(Exact.of(1)) && setup && /^(?:is|was|gets|runs|got|ran)$/.test(c.parsed.low[said.mention.from - 1] ?? '') && c.hits.hits.some((h) => g.slots[h.slot]!.field === 'setting' && h.baseOf < 0 && h.from >= said.mention.to && h.from <= said.mention.to + 3);
  if (own && sizeSaid(c, index) === undefined) for (const row of rows) row.cost = row.slots === g.of.setting ? 0 : row.cost + 0.7;
  if (told) for (const row of rows) if (row.slots !== both && row.slots.length < both.length) row.cost += 0.7;
  // "At the slow step the loudest combination is …": what is said first is the same for all that are ranked.
  const kept = heldFirst(c, index);
  if (kept.size) for (const row of [...rows]) {
    const rest = row.slots.filter((i) => !kept.has(i));
    if (!rest.length || rest.length === row.slots.length) continue;
    rows.push({ slots: rest, cost: row.cost });
    row.cost += 1;
  }
  return rows.sort((a, b) => a.cost - b.cost);
}

/** Right after "is", a thing and its setting are named, and neither of them in the words before. */
function toldByBoth(c: Context, index: number): boolean {
  const { mention } = c.parsed.said[index]!;
  const is = c.parsed.low.findIndex((w, k) => k >= mention.to && k < mention.to + 6 && /^(?:is|was)$/.test(w));
  if (is < 0) return false;
  const { setup, setting } = c.grid.of;
  // "first comes the Cobble at dusk; second is the Garth at noon": each of a row has a clause of its own.
  const opens = c.parsed.low.lastIndexOf(';', mention.from);
  const named = (slots: readonly number[], after: boolean): boolean => c.hits.hits.some((h) => slots.includes(h.slot) && (after ? h.from > is && h.from <= is + 8 : h.from < is && h.from > opens) && h.baseOf < 0);
  return named(setup, true) && named(setting, true) && !named(setup, false) && !named(setting, false) && !c.now.heading.some(([i]) => setup.includes(i) || setting.includes(i));
}

/** Slots of what an opening "at …", "in …" names before the superlative, or what stands between it and its verb: "the hottest one on battery is …". */
function heldFirst(c: Context, index: number): ReadonlySet<number> {
  const { mention } = c.parsed.said[index]!;
  const verb = mention.superlative ? c.parsed.low.findIndex((w, k) => k >= mention.to && k < mention.to + 7 && /^(?:is|was|belongs|goes)$/.test(w)) : -1;
  const between = c.hits.hits.filter((h) => verb > 0 && h.from > mention.to && h.to <= verb && h.baseOf < 0 && c.grid.slots[h.slot]!.field === 'setting' && /^(?:on|in|at|with|without|under)$/.test(c.parsed.low[h.from] === undefined ? '' : [c.parsed.low[h.from]!, c.parsed.low[h.from - 1] ?? ''].find((w) => /^(?:on|in|at|with|without|under)$/.test(w)) ?? ''));
  if (between.length) return new Set(between.map((h) => h.slot));
  // "Filed, the Ashlar is third": in that setting.
  const opening = c.hits.hits.filter((h) => h.from <= 1 && h.to < mention.from && c.parsed.low[h.to] === ',' && c.grid.slots[h.slot]!.field === 'setting');
  if (opening.length && !c.parsed.low.some((w) => /^(?:all|combinations?|overall|ever)$/.test(w))) return new Set(opening.map((h) => h.slot));
  if (!mention.superlative || !/^(?:at|in|on|with|for)$/.test(c.parsed.low[0] ?? '')) return new Set();
  // "At 31 decibels the Ashlar is the quietest": what it opens with is a figure, and who has it is ranked.
  const figure = c.parsed.said.find((s) => s.mention.type === 'cardinal')?.mention.from ?? mention.from;
  return new Set(c.hits.hits.filter((h) => h.to <= mention.from && h.from < figure && h.baseOf < 0 && ['setup', 'setting'].includes(c.grid.slots[h.slot]!.field)).map((h) => h.slot));
}

export type { Cell };

/** Whoever was placed last came first in what is ranked here. */
function rightBehind(c: Context, cell: Cell): boolean {
  const last = c.grid.byKey.get(c.now.placed.at(-1) ?? '');
  return last !== undefined && c.now.leads?.of === [...c.grid.of.measure, ...c.grid.of.part].map((i) => cell.at[i]).join('/') && [...c.grid.of.measure, ...c.grid.of.part].every((i) => last.at[i] === cell.at[i]);
}
