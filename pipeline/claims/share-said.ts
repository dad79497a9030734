// Shares that the words state outright, so that no other reading is asked for.
//   "180 watts, 60 percent of the cap"                        of the figure just said, and what it is a share of is named
//   "The cap is 250, and it reaches 94 percent of that"         of the two figures said last
//   "makes 95 percent of its 2,000", "… of the 90 on the label"  what it is a share of is said as a number
//   "the box says 40, so that is 92 percent of what we were promised"
//   "was worn down to 70 percent of its thickness"              of itself, before
//   "81 percent of that on the one, and the other 73"           the same share of another thing
//   "costs the one 35 percent of its air, so it keeps 65"       what is left after the loss just said
import { keeps } from './keeping.js';
import { basesFor, type BaseWords, baseWords } from './bases.js';
import { type Candidate, type Context, sameCellExcept, subjectCells } from './context.js';
import { fit } from './decide.js';
import { isFact } from '../facts/index.js';
import type { Dimension } from '../quantities/index.js';
import { fits } from '../wording/index.js';
import { type Cell, constantOf, moved } from './grid.js';
import { ofItsRating, ratedSides } from './of-rating.js';
import { markedSides, ofTheMark } from './share-of-mark.js';
import { constantRoles, type Role } from './roles.js';
import { push } from './read-value.js';
import { firstCell, substitute, type Term } from './terms.js';

/** Readings of a share of which both sides are said; none where the words leave one of them open. */
export function shareSaid(c: Context, index: number): Candidate[] {
  const number = ofNumberSaid(c, index);
  if (number.length) return number;
  if (c.parsed.said[index]!.cue.op === 'share') {
    const rated = ratedSides(c, index);
    if (rated.length) return rated.flatMap(({ subject, base, cost }) => share(c, subject, base, ofItsRating).map((x) => ({ ...x, cost })));
    const kept = keptOf(c, index);
    if (kept.length) return kept;
    const figure = ofFigureSaid(c, index);
    if (figure.length) return figure;
    const promise = ofPromiseSaid(c, index);
    if (promise.length) return promise;
    const held = ofMarkHeld(c, index);
    if (held.length) return held;
    const marked = markedSides(c, index);
    if (marked.length) return marked.flatMap(({ subject, base, cost }) => share(c, subject, base, ofTheMark).map((x) => ({ ...x, cost })));
    const itself = ofItself(c, index);
    if (itself.length) return itself;
    const part = ofOtherPart(c, index);
    return part.length ? part : ofOtherQuantity(c, index);
  }
  return sameShare(c, index);
}

/** What is named beside the number, and not in what it is compared with. */
function namedBeside(c: Context, index: number, wide = false): Map<number, string> {
  const out = new Map<number, string>();
  // "where on fast it came to just 70": a name that is a number has a stretch of its own.
  const at = wide ? -1 : c.parsed.said[index - 1]?.named ? index - 1 : index;
  const since = wide ? Math.max(0, ...c.parsed.said.slice(0, index).flatMap((s) => (s.mention.unit?.id === '%' ? [s.cue.base?.to ?? s.mention.to] : []))) : 0;
  for (const h of c.hits.hits) if (h.segment >= at && h.segment <= index && h.from >= since && !h.departs && h.baseOf !== index && ['setup', 'setting', 'workload'].includes(c.grid.slots[h.slot]!.field) && !c.grid.holders.has(h.value)) out.set(h.slot, h.value);
  for (const { slot, value } of c.hits.paired.get(index) ?? []) out.set(slot, value);
  return out;
}

function speaksOf(cell: Cell, named: ReadonlyMap<number, string>): boolean {
  return [...named].every(([slot, value]) => !cell.at[slot] || cell.at[slot] === value);
}

function share(c: Context, subject: Cell, base: Cell, why: string): Candidate[] {
  const out: Candidate[] = [];
  push(out, c, { kind: 'percent_of', args: [subject.key, base.key] }, 'percent_of', 0, subject, why, { firm: true, base, change: sameCellExcept(c.grid, subject, base).map((i) => [i, base.at[i]!] as const) });
  return out;
}

/** "198 watts, or 66 percent of the 300 it is built for", "95 percent of its 2,000": of what the record sets to just that, and of what was said last in its unit, or of the thing named beside it. */
export function ofNumberSaid(c: Context, index: number): Candidate[] {
  const g = c.grid;
  const m = c.parsed.said[index]!.mention;
  const of = c.parsed.said[index + 1]?.mention;
  const { low } = c.parsed;
  if (!of || of.type !== 'cardinal' || of.unit?.id === '%' || of.from !== m.to + 2 || low[m.to] !== 'of' || !/^(?:the|its|my|our|their|a)$/.test(low[m.to + 1]!)) return [];
  const named = namedBeside(c, index);
  const last = c.now.said.find((t) => t.kind === 'mean');
  const spoken = last && firstCell(g, last);
  const said = { ...of, hedge: undefined } as typeof of;
  const is = (k: Cell): boolean => { const fact = c.facts.value(k.key); return k.fixed && isFact(fact) && (!of.unit || of.unit.dimension === k.unit.dimension) && fits(said, fact, { size: false, exact: true }); };
  // "The limit was 200 watts, 80 percent of the 250 allowed at stock": one that is set, of another.
  const behind = (slot: number, v: string): boolean => c.hits.hits.some((h) => h.slot === slot && h.value === v && h.from >= of.to);
  if (spoken?.fixed && [...named].every(([slot, v]) => behind(slot, v))) {
    const own = (g.byMeasure.get(spoken.at[g.of.measure[0]!]!) ?? []).filter((k) => k !== spoken && is(k) && g.of.part.every((i) => k.at[i] === spoken.at[i]));
    if (own.length) return own.flatMap((k) => share(c, spoken, k, 'of the number said'));
  }
  if (spoken && !spoken.fixed && speaksOf(spoken, named)) {
    const own = (g.byMeasure.get(spoken.at[g.of.measure[0]!]!) ?? []).filter((k) => is(k) && [...g.of.setup, ...g.of.setting].every((i) => !k.at[i] || k.at[i] === spoken.at[i] || g.holders.has(k.at[i]!)));
    if (own.length) return own.flatMap((k) => share(c, spoken, k, 'of the number said'));
    // "24.8 watts, 65 percent of the 38.4 it needs with four": or of what was measured elsewhere, where that is named with it.
    const end = c.parsed.said[index + 2]?.segment.from ?? low.length;
    const there = c.hits.hits.filter((h) => h.from >= of.to && h.from < end && ['setup', 'setting', 'workload'].includes(g.slots[h.slot]!.field) && !g.holders.has(h.value));
    const measured = there.length ? moved(g, spoken, new Map(there.map((h) => [h.slot, h.value] as const))) : undefined;
    const fact = measured && c.facts.value(measured.key);
    if (measured && measured !== spoken && isFact(fact) && fits(said, fact, { size: false, exact: false })) return share(c, spoken, measured, 'of the number said');
  }
  if (!named.size) return [];
  const set = g.cells.filter(is);
  if (!set.length) return [];
  const { cells } = subjectCells(c, index, [...new Set(set.map((k) => k.unit))], { ownPart: true });
  return cells.flatMap(({ cell, cost }) => cell.fixed || cost > 1 || !speaksOf(cell, named) ? [] : constantRoles.flatMap((role) => { const k = constantOf(g, cell, role); return k && set.includes(k) ? share(c, cell, k, 'of the number said').map((x) => ({ ...x, cost })) : []; }));
}

/** Words that may stand between a figure and the share that says it again. */
const between = /^(?:,|or|and|so|just|only|exactly|precisely|about|around|roughly|nearly|almost|some|still|even|that's|that|which|is|it's|makes|making|being|i\.e|ie|a|good|mere|full|hardly|barely)$/;

/** What the share is of, where it says the figure just said again: in this sentence, or as "that is" at the head of the next. */
function figureMeant(c: Context, index: number): Cell | undefined {
  const g = c.grid;
  const { low, said } = c.parsed;
  const { mention } = said[index]!;
  const previous = said[index - 1];
  if (!previous) {
    const head = low.slice(0, mention.from).filter((w) => !/^(?:so|and|but|now|only|just|still|about|exactly|almost|nearly|roughly|even|well|,)$/.test(w)).join(' ');
    const last = c.now.said[0];
    return /^(?:that's|that is|that was|this is|which is|that makes)$/.test(head) && last?.kind === 'mean' ? firstCell(g, last) : undefined;
  }
  const before = c.done[index - 1];
  // "at a thousand rpm": the name of a setting, whatever it was set to.
  if (previous.named) return undefined;
  if (!before?.subject || before.term.kind !== 'mean' || !fit(previous.mention, before)) return undefined;
  const gap = low.slice(previous.mention.to, mention.from);
  // "the pump runs at 1,900, 44 percent of …"; names may stand between that say where the figure was read.
  return gap.length <= 8 && gap.some((w) => /^(?:,|or|that's|which|:)$/.test(w)) && gap.slice(gap.findLastIndex((w) => w === ',') + 1).every((w) => between.test(w)) ? before.subject : undefined;
}

function ofFigureSaid(c: Context, index: number): Candidate[] {
  const subject = figureMeant(c, index);
  if (!subject || !speaksOf(subject, namedBeside(c, index))) return [];
  const words = baseWords(c, index);
  const out: Candidate[] = [];
  for (const base of basesSaid(c, subject, index, words)) out.push(...share(c, subject, base.cell, base.why));
  return out;
}

/** What it is a share of, where the words say it: a limit or a promise, another thing, another part, the figure said before. */
function basesSaid(c: Context, subject: Cell, index: number, words: BaseWords): { cell: Cell; why: string }[] {
  const g = c.grid;
  const roles = [...words.roles.filter((r) => constantRoles.includes(r)), ...promisedIn(words.low)];
  for (const role of roles) { const cell = constantOf(g, subject, role); if (cell && cell !== subject) return [{ cell, why: `the ${role}` }]; }
  if (roles.length) return [];
  const part = [...words.overrides].filter(([i]) => g.slots[i]!.field === 'part');
  if (part.length && part.length === words.overrides.size) {
    const other = part.flatMap(([i, values]) => values.flatMap((v) => (subject.at[i] && subject.at[i] !== v ? [moved(g, subject, new Map([[i, v]]))] : [])));
    return other.flatMap((cell) => (cell && cell !== subject ? [{ cell, why: 'the same elsewhere' }] : []));
  }
  if (words.overrides.size) return basesFor(c, subject, index, words, undefined).filter((b) => b.firm && b.cost === 0);
  if (words.low.filter((w) => !/^(?:\.|,|;|now|there|here|then|already)$/.test(w)).join(' ') === 'that') {
    const figures = c.done.slice(0, index).flatMap((x) => (x?.subject && x.term.kind === 'mean' && x.subject !== subject && x.subject.at[g.of.measure[0]!] === subject.at[g.of.measure[0]!] ? [x.subject] : []));
    if (new Set(figures).size === 1) return [{ cell: figures[0]!, why: 'the figure before' }];
  }
  return [];
}

/** "what it is good for", "what we were promised", "what it should do". */
export function promisedIn(low: readonly string[]): readonly Role[] {
  return /\b(?:(?:good|built|made|meant|designed|specified) for|(?:supposed|meant|allowed|said|able) to|should|promised?|promises|claim(?:s|ed)|advertised|says|capable of|can (?:do|give|take|deliver|supply|handle))\b/.test(low.join(' ')) ? ['rated', 'limit', 'target'] : [];
}

/** "The box promises 1,000, so we get 91 percent of what it says": of what was just said to be promised. */
function ofPromiseSaid(c: Context, index: number): Candidate[] {
  // "of its rating of 2,000": the promise is said as a number there.
  const scope = c.parsed.said[index]!.cue.base;
  if (scope && c.parsed.said.some((s, k) => k !== index && s.mention.from >= scope.from && s.mention.from < scope.to)) return [];
  const g = c.grid;
  const before = c.done[index - 1];
  const words = baseWords(c, index);
  const set = before?.subject;
  if (!set?.fixed || before!.term.kind !== 'mean' || !fit(c.parsed.said[index - 1]!.mention, before!)) return [];
  if (!promisedIn(words.low).length && !words.roles.some((r) => constantRoles.includes(r)) && !/^(?:that|it)$/.test(words.low.filter((w) => w !== '.' && w !== ',').join(' '))) return [];
  const named = namedBeside(c, index);
  const { cells } = subjectCells(c, index, [set.unit]);
  return cells.flatMap(({ cell, cost }) => (cell.fixed || cost > 1 || !speaksOf(cell, named) || cell.at[g.of.measure[0]!] !== set.at[g.of.measure[0]!] || constantOf(g, cell, set.role) !== set ? [] : share(c, cell, set, 'what was promised').map((x) => ({ ...x, cost }))));
}

/** "The rule allows 120, and the one keeps to half. The other uses 31 percent of it": of the mark that was told before. */
function ofMarkHeld(c: Context, index: number): Candidate[] {
  const g = c.grid;
  if (!/^(?:it|that|this)$/.test(baseWords(c, index).low.filter((w) => /\w/.test(w)).join(' '))) return [];
  const told = c.now.said.flatMap((t) => { const x = t.kind === 'mean' ? firstCell(g, t) : undefined; return x ? [x] : []; });
  const mark = told.find((x) => x.fixed);
  // What was measured and told since may be meant as well.
  if (!mark || told.indexOf(mark) > 0 || c.done.slice(0, index).some((d) => d?.subject && !d.subject.fixed)) return [];
  const named = namedBeside(c, index);
  const { cells } = subjectCells(c, index, [mark.unit]);
  return cells.flatMap(({ cell, cost }) => (cell.fixed || cost > 1 || !speaksOf(cell, named) || constantOf(g, cell, mark.role) !== mark ? [] : share(c, cell, mark, 'of the mark told before').map((x) => ({ ...x, cost }))));
}

/** "was worn down to 70 percent of its thickness": of the same thing in the one other phase in which it was measured. */
function ofItself(c: Context, index: number): Candidate[] {
  const g = c.grid;
  const { base } = c.parsed.said[index]!.cue;
  const named = namedBeside(c, index);
  if (!base || !named.size || !/^(?:its|their|his|her)$/.test(c.parsed.low[base.from] ?? '')) return [];
  const inside = c.hits.hits.filter((h) => h.from >= base.from && h.from < base.to);
  const of = inside.find((h) => h.slot === g.of.measure[0]);
  if (!of || inside.some((h) => !g.of.measure.includes(h.slot) && !g.of.part.includes(h.slot))) return [];
  const own = (g.byMeasure.get(of.value) ?? []).filter((x) => !x.fixed && [...named].every(([slot, value]) => x.at[slot] === value) && inside.every((h) => h.slot === of.slot || x.at[h.slot] === h.value));
  const [a, b] = own;
  if (own.length !== 2 || !a || !b || !sameCellExcept(g, a, b).every((i) => g.of.phase.includes(i))) return [];
  return [...share(c, b, a, 'of itself before'), ...share(c, a, b, 'of itself before').map((x) => ({ ...x, cost: 0.2 }))];
}

/** "of what came from the wall, 82 percent got into the battery": of the figure of another part that was said before. */
function ofOtherPart(c: Context, index: number): Candidate[] {
  const g = c.grid;
  const words = baseWords(c, index);
  const [slot, ...more] = [...words.overrides.keys()];
  if (slot === undefined || more.length || !g.of.part.includes(slot)) return [];
  const whole = words.overrides.get(slot)!;
  const own = c.hits.hits.filter((h) => h.slot === slot && h.segment === index && h.baseOf !== index && !whole.includes(h.value)).map((h) => h.value);
  const said = c.now.said.flatMap((t) => { const x = t.kind === 'mean' ? firstCell(g, t) : undefined; return x && whole.includes(x.at[slot]!) ? [x] : []; });
  return said.flatMap((base) => (g.byMeasure.get(base.at[g.of.measure[0]!]!) ?? []).filter((x) => own.includes(x.at[slot]!) && g.slots.every(({ field }, i) => field === 'part' || field === 'phase' || !x.at[i] || x.at[i] === base.at[i])).flatMap((x) => share(c, x, base, 'of another part')));
}

/** Why a share is read so whose quantity its own words name. */
export const otherQuantity = 'of the other quantity';

/** Words for what comes out of it, whatever that is measured in. */
const outcome = /^(?:the|its|their) (?:full )?(?:work|performance|speed|output|result|results)$/;
const ofOutcome: ReadonlySet<Dimension> = new Set(['score', 'frame-rate', 'data-rate', 'flow', 'air-flow']);

/** "on 60 percent of the draw it gets 85 percent done": the comparison just made, in another quantity. */
function ofOtherQuantity(c: Context, index: number): Candidate[] {
  const g = c.grid;
  const { base } = c.parsed.said[index]!.cue;
  const before = c.done[index - 1];
  if (!base || !before?.subject || !before.base || before.kind !== 'percent_of' || namedBeside(c, index).size || !fit(c.parsed.said[index - 1]!.mention, before)) return [];
  const inside = c.hits.hits.filter((h) => h.from >= base.from && h.from < base.to);
  const own = [...g.of.measure, ...g.of.part];
  if (inside.some((h) => !own.includes(h.slot))) return [];
  const general = !inside.length && outcome.test(c.parsed.low.slice(base.from, base.to).filter((w) => /\w/.test(w)).join(' '));
  if (!inside.length && !general) return [];
  const alike = (x: Cell, as: Cell): boolean => g.slots.every((_, i) => own.includes(i) || x.at[i] === as.at[i]);
  const meant = (x: Cell): boolean => (general ? ofOutcome.has(x.unit.dimension) : inside.every((h) => x.at[h.slot] === h.value));
  const pairs = g.cells.filter((x) => !x.fixed && alike(x, before.subject!) && meant(x)).flatMap((x) => { const other = g.cells.find((y) => alike(y, before.base!) && own.every((i) => y.at[i] === x.at[i])); return other ? [[x, other] as const] : []; });
  return pairs.length === 1 && pairs[0]![0] !== before.subject ? share(c, pairs[0]![0], pairs[0]![1], otherQuantity) : [];
}

/** "… 81 percent of that and the Larch 73", "The Maple: 93 percent": the same share of another thing. */
export function sameShare(c: Context, index: number): Candidate[] {
  const g = c.grid;
  const { cue, mention, segment } = c.parsed.said[index]!;
  const kept = keeps(c.parsed.low, mention, segment);
  if (c.parsed.said.some((o, k) => k < index && o.cue.op === 'share' && o.cue.base && mention.from >= o.cue.base.from && mention.from < o.cue.base.to)) return [];
  if ((cue.op !== 'value' && !kept) || mention.type !== 'cardinal' || (cue.base && cue.base.from > mention.from)) return [];
  const out: Candidate[] = [];
  for (const last of sharesBefore(c, index, kept)) {
    const subject = firstCell(g, last);
    const named = namedBeside(c, index, kept);
    if (!subject || !named.size || [...named].every(([slot, value]) => subject.at[slot] === value)) continue;
    // A quantity of its own named beside it is another matter.
    if (c.hits.hits.some((h) => h.segment === index && (h.from < mention.from || h.from >= mention.to) && [...g.of.measure, ...g.of.part].includes(h.slot) && subject.at[h.slot] !== h.value)) continue;
    if (c.parsed.low.slice(Math.max(segment.from, mention.from - 2), mention.from).some((w) => /^(?:by|load|level)$/.test(w))) continue;
    const term = substitute(g, last, named);
    const own = term && firstCell(g, term);
    const base = term && typeof term.args[1] === 'string' ? g.byKey.get(term.args[1]) : undefined;
    // What it was a share of was its own, and that of the other is not on record: no share of the first one's.
    if (base && [...named].some(([slot, value]) => base.at[slot] === subject.at[slot] && base.at[slot] !== value)) continue;
    if (term && own && own !== base && speaksOf(own, named)) push(out, c, term, 'percent_of', 0, own, 'the same share of another', { firm: true, ...(base && { base, change: sameCellExcept(g, own, base).map((i) => [i, base.at[i]!] as const) }) });
  }
  return out;
}

/** The share just said, in this sentence or the one before; what is said to be kept goes back further than a figure beside it. */
function sharesBefore(c: Context, index: number, kept: boolean): readonly Term[] {
  // "86 percent of its 500 watts, now 93": what the first is a share of is no figure that stands between.
  const inside = (k: number): boolean => { const m = c.parsed.said[k]!.mention; return c.parsed.said.some(({ cue }, i) => i < k && cue.op === 'share' && cue.base !== undefined && m.from >= cue.base.from && m.from < cue.base.to); };
  const at = c.done.findLastIndex((x, k) => x !== undefined && !c.parsed.said[k]!.named && !inside(k) && !(kept && x.term.kind === 'mean'));
  const before = c.done[at];
  if (before) return before.kind === 'percent_of' && fit(c.parsed.said[at]!.mention, before) && c.parsed.said.slice(0, index).some((s) => s.mention.unit?.id === '%') ? [before.term] : [];
  if (kept) return c.now.shares.slice(0, 1);
  // Of two that were said side by side, either.
  return c.parsed.said[index]!.mention.unit?.id === '%' ? c.now.said.slice(0, c.now.said[1]?.kind === 'percent_of' ? 2 : 1).filter((t) => t.kind === 'percent_of') : [];
}

/** "… costs it 35 percent of its air, so it keeps 65 percent": what is left after the loss said before, of the same thing. */
function keptOf(c: Context, index: number): Candidate[] {
  const g = c.grid;
  if (c.parsed.said[index]!.cue.because !== 'keeps') return [];
  const named = namedBeside(c, index);
  for (const x of [...c.done].reverse()) {
    if (!x || x.kind !== 'percent_change' || !x.subject || !x.base) continue;
    const change = new Map([...named].filter(([slot, value]) => x.subject!.at[slot] !== value));
    const subject = change.size ? moved(g, x.subject, change) : x.subject;
    const base = change.size ? moved(g, x.base, new Map([...change].filter(([slot]) => x.base!.at[slot] === x.subject!.at[slot]))) ?? x.base : x.base;
    if (subject && base && subject !== base) return share(c, subject, base, 'what is left of it');
  }
  return [];
}
