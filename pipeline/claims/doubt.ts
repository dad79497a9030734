// What keeps an alarm back although the words' best reading is wrong. An alarm about a comparison rests on knowing both sides.
// Where one of them was not said, every comparison that the words leave open is tried; if the number is right for one of
// them, which one is meant cannot be told, and nothing is said to be wrong.
//   "and it draws 4.8 watts less"          than what, and who is "it"? right for one of the two
//   "31.2 degrees for 2.7 decibels"        the price of a change that was not named
import { stretch } from '../script/index.js';
import { convert, Exact } from '../quantities/index.js';
import { isFact, withValue } from '../facts/index.js';
import { baseWords } from './bases.js';
import { siblingsOf } from './siblings.js';
import { becoming } from './becoming.js';
import { type Candidate, type Context, oddlySized, sameCellExcept, signOf } from './context.js';
import { fit } from './decide.js';
import { givesJust } from './gives-just.js';
import { pairedSurely } from './pairing.js';
import { endBeside } from './read-change.js';
import { significant } from './insist.js';
import { firstCell } from './terms.js';
import { type Cell, constantOf, type Grid, movedTo } from './grid.js';
import { nowhereNear } from './nowhere-near.js';

const compared = new Set(['difference', 'rise', 'percent_change', 'percent_of', 'ratio']);

/** More pairs than this are not tried. */
const most = 20000;

/** The comparison, of those left open, of which the number is true. */
export function rightElsewhere(c: Context, index: number, x: Candidate, anyPart = false): string | undefined {
  if (x.kind === 'mean' && x.term.kind === 'mean') return valueElsewhere(c, index, x);
  if (!compared.has(x.kind) || !x.subject || !x.base || x.firm || (x.base !== x.subject && endsSaid(c, x))) return undefined;
  const g = c.grid;
  const m = c.parsed.said[index]!.mention;
  const before = c.done[index - 1];
  if (c.parsed.said[index]!.cue.elided && !(before && fit(c.parsed.said[index - 1]!.mention, before))) return 'it goes on from a figure that was not understood';
  const turnable = !grounded(c, index, x);
  const unread = strange(c, index);
  const wanted = g.slots.map((slot, i) => (unread && slot.field === 'setting' ? new Set<string>() : spokenOf(c, index, i, x.subject!, anyPart)));
  const { course } = c.hits;
  const open = (a: Cell, b: Cell): boolean => (!course || (a.at[course.slot] === course.to && b.at[course.slot] === course.from)) && wanted.every((values, i) => !values.size || !a.at[i] || values.has(a.at[i]!) || values.has(b.at[i]!));
  const itself = becoming(c, index);
  const { cue } = c.parsed.said[index]!;
  const end = endBeside(c, index);
  const named = c.hits.hits.filter((h) => h.segment === index && g.slots[h.slot]!.field !== 'measure');
  const apart = /between|apart|field|end to end/.test(cue.because);
  const across = x.subject.role !== x.base.role || itself;
  const off = nowhereNear(c.facts, m, x.kind, { in: x.fact.unit, of: x.subject.unit });
  let tried = 0;
  for (const a of g.byMeasure.get(x.subject.at[g.of.measure[0]!]!) ?? []) {
    if (a.fixed || (end && a !== end)) continue;
    if (/^(?:over|under|above|below|past|beyond|from|off|up to)$/.test(cue.because) && significant(m) > 2 && named.every((h) => a.at[h.slot] === h.value) && givesJust(c.facts, a, m, x)) return a.key;
    for (const b of others(g, a, itself, apart)) {
      if (tried++ > most) return undefined;
      if ((a === x.base && b === x.subject && !turnable) || !open(a, b) || (!across && !b.fixed && a.role !== b.role) || off?.(a, b)) continue;
      const fact = factOf(c, x, a, b);
      const sign = (b.fixed && cue.way !== 'up' && cue.way !== 'down') || x.kind === 'ratio' || x.kind === 'percent_of' ? 0 : signOf(c, cue.way ?? cue.elided?.way, a);
      if (fact && fit(m, { ...x, fact, sign })) return `${a.key} against ${b.key}`;
    }
  }
  return undefined;
}

/** A plain value of a thing that was only carried over from before, and is that of another. */
function valueElsewhere(c: Context, index: number, x: Candidate): string | undefined {
  const g = c.grid;
  const m = c.parsed.said[index]!.mention;
  if (!x.subject) return undefined;
  if (oddlySized(c, index, x.subject)) {
    // "that leaves 11 watts": of a size that only what lies between two readings has.
    if (!m.unit && !goesOn(c, index, x.subject) && !c.hits.hits.some((h) => h.segment === index && [...g.of.measure, ...g.of.part].includes(h.slot))) return 'it is of a size that no reading has';
    const between = rightElsewhere(c, index, { ...x, kind: 'difference', base: x.subject });
    if (between) return between;
  }
  if (bareAmount(c, index)) {
    const between = rightElsewhere(c, index, { ...x, kind: 'difference', base: x.subject }, true);
    if (between) return between;
  }
  // "1,620 as it comes, 1,380, 1,110": what has been given rightly in the sentence is not given again; the next is of another thing.
  const given = c.done.some((d, k) => d !== undefined && d.subject === x.subject && d.term.kind === 'mean' && fit(c.parsed.said[k]!.mention, d));
  const wanted = g.slots.map((_, i) => (given && !c.hits.hits.some((h) => h.slot === i && h.segment === index) && !c.hits.paired.has(index) ? new Set<string>() : spokenOf(c, index, i, x.subject!, true)));
  for (const a of g.byMeasure.get(x.subject.at[g.of.measure[0]!]!) ?? []) {
    if (a.fixed || a === x.subject || !wanted.every((values, i) => !values.size || !a.at[i] || values.has(a.at[i]!))) continue;
    const fact = c.facts.value(a.key);
    if (isFact(fact) && fit(m, { ...x, fact })) return a.key;
  }
  return undefined;
}

/** "61 degrees in the one, 64 in the other": named beside it, and the same quantity was given rightly for another just before. */
function goesOn(c: Context, index: number, subject: Cell): boolean {
  const g = c.grid;
  const measure = g.of.measure[0]!;
  if (!c.hits.hits.some((h) => h.segment === index && h.baseOf < 0 && ['setup', 'setting', 'workload'].includes(g.slots[h.slot]!.field))) return false;
  const before = c.done[index - 1];
  if (before) return before.term.kind === 'mean' && before.subject?.at[measure] === subject.at[measure] && fit(c.parsed.said[index - 1]!.mention, before);
  const last = c.now.said[0];
  return c.parsed.low.length <= 8 && last?.kind === 'mean' && firstCell(g, last)?.at[measure] === subject.at[measure];
}

/** "3 decibels are a lot", "because 12 watts matter": an amount that the clause says something about is more often what lies between two readings. */
function bareAmount(c: Context, index: number): boolean {
  const { segment, mention } = c.parsed.said[index]!;
  const clause = c.parsed.low.slice(segment.from, mention.from);
  const opening = clause.slice(clause.lastIndexOf(',') + 1);
  return opening.every((w) => /^(?:and|but|so|because|since|though|although|if|then|for|those|these|that|the|about|around|almost|nearly|another|even|,|:|—|–)$/.test(w)) && c.parsed.tokens[mention.to]?.kind === 'word';
}

/** Both ends stand in the sentence as figures: "from 46 to 52, so 6 more". */
export function endsSaid(c: Context, x: Candidate): boolean {
  return [x.subject!, x.base!].every((cell) => c.done.some((d) => d?.subject === cell && d.term.kind === 'mean'));
}

/** Values of a slot that one of the two must have: named beside the number, in the sentence, or in the heading. */
export function spokenOf(c: Context, index: number, slot: number, subject: Cell, plain = false): ReadonlySet<string> {
  const { field } = c.grid.slots[slot]!;
  if (field === 'measure') return new Set();
  const paired = c.hits.paired.get(index)?.find((x) => x.slot === slot);
  if (paired) return new Set(pairedSurely(c, index) ? [paired.value] : []);
  // "under load … 38": the phase that stands beside a plain value is meant, and the figure of another is the slip looked for.
  if (field === 'phase') return new Set(plain ? c.hits.hits.filter((h) => h.slot === slot && h.segment === index && h.baseOf < 0).map((h) => h.value) : []);
  const unit = c.parsed.said[index]!.mention.unit;
  if (field === 'part' && !c.hits.hits.some((h) => h.slot === slot && (!plain || h.segment <= index)) && (plain || (unit && unit.dimension !== 'share'))) return new Set();
  if (field === 'part') return new Set([subject.at[slot]!]);
  const held = (v: string): boolean => field === 'setup' && c.grid.holders.has(v);
  const here = c.hits.hits.filter((h) => h.slot === slot && !held(h.value));
  const own = here.filter((h) => h.segment === index);
  if (here.length) return new Set((own.length ? own : here).map((h) => h.value));
  const heading = c.now.heading.filter(([i, v]) => i === slot && !held(v)).map(([, v]) => v);
  // What is only carried over from the sentences before may have changed without a word.
  if (heading.length) return new Set(heading);
  return new Set();
}

const beside = new WeakMap<Cell, (readonly Cell[] | undefined)[]>();

/** What a reading may be compared with, found once for each reading. */
function others(g: Grid, a: Cell, itself: boolean, apart: boolean): readonly Cell[] {
  let known = beside.get(a);
  if (!known) beside.set(a, (known = []));
  return (known[(itself ? 2 : 0) + (apart ? 1 : 0)] ??= findOthers(g, a, itself, apart));
}

function findOthers(g: Grid, a: Cell, itself: boolean, apart: boolean): Cell[] {
  const out: Cell[] = [];
  for (const field of itself ? ['setting', 'workload'] as const : ['setup', 'setting', 'workload'] as const) for (const b of siblingsOf(g, a, g.of[field])) if (b !== a && !b.fixed) out.push(b);
  if (apart) for (const b of siblingsOf(g, a, [...g.of.setup, ...g.of.setting])) if (b !== a && !b.fixed) out.push(b);
  const phase = g.of.phase[0]!;
  for (const v of g.values[phase]!.keys()) { const b = v === a.at[phase] ? undefined : movedTo(g, a, phase, v); if (b && b !== a && !b.fixed) out.push(b); }
  for (const role of ['limit', 'target', 'rated'] as const) { const b = constantOf(g, a, role); if (b) out.push(b); }
  return out;
}

/** The comparison of two cells in the form that the candidate has. */
export function factOf(c: Context, x: Candidate, a: Cell, b: Cell): Candidate['fact'] | undefined {
  const [p, q] = [c.facts.value(a.key), c.facts.value(b.key)];
  if (!isFact(p) || !isFact(q)) return undefined;
  const own = (f: typeof p): Exact | undefined => (f.unit === p.unit ? f.value : convert(f.value, f.unit, p.unit));
  const [s, t] = [p.value, own(q)];
  if (!t) return undefined;
  if (x.kind === 'difference' || x.kind === 'rise') {
    const unit = c.facts.value(x.subject!.key);
    const scaled = isFact(unit) && unit.unit !== p.unit ? convert(s, p.unit, unit.unit)?.minus(convert(t, p.unit, unit.unit) ?? t) : s.minus(t);
    return scaled && withValue(x.fact, scaled);
  }
  if (t.sign() === 0) return undefined;
  const share = s.over(t);
  return withValue(x.fact, x.kind === 'ratio' ? share : (x.kind === 'percent_change' ? share.minus(Exact.of(1)) : share).times(Exact.of(100)));
}

/** "It ran 12 minutes longer … It hummed 3.1 decibels less too": it goes on from the same step, the same way round. */
export function stepBefore(c: Context, x: Candidate): boolean {
  const [from, to] = (c.now.pair ?? []).map((k) => c.grid.byKey.get(k));
  // "It costs 5 watts": that they differ says no way round.
  const step = c.done.findLast((d) => d?.change?.length);
  if (step && step.sign === 0 && !step.firm) return false;
  return from !== undefined && to !== undefined && (c.now.since ?? 0) <= 2 && sameCellExcept(c.grid, x.subject!, x.base!).every((i) => to.at[i] === x.subject!.at[i] && from.at[i] === x.base!.at[i]);
}

/** Which of the two is spoken of was said: named beside the number, in the heading, or alone in the sentence before. */
export function grounded(c: Context, index: number, x: Candidate): boolean {
  if (!x.subject || !x.base) return false;
  if (c.hits.course || endBeside(c, index) === x.subject || stepBefore(c, x)) return true;
  // "levels off at 35, which lies 30 percent below …": of that figure.
  const figure = c.parsed.said[index - 1]?.mention;
  if (figure && /^(?:, )?(?:which|that's)\b/.test(stretch(c.parsed.low, figure.to, figure.to + 2)) && c.done[index - 1]?.term.kind === 'mean' && c.done[index - 1]!.subject === x.subject && fit(figure, c.done[index - 1]!)) return true;
  const g = c.grid;
  return sameCellExcept(g, x.subject, x.base).some((i) => {
    const [v, w] = [x.subject!.at[i]!, x.base!.at[i]!];
    const here = c.hits.hits.filter((h) => h.slot === i && h.baseOf < 0 && h.segment <= index);
    const own = here.filter((h) => h.segment === index);
    if (own.length) return own.some((h) => h.value === v) && !own.some((h) => h.value === w);
    const pair = c.now.pair !== c.before.pair ? c.now.pair : undefined;
    if (here.length) return pair ? g.byKey.get(pair[1])?.at[i] === v : here.at(-1)!.value === v;
    if (c.now.heading.some(([slot, value]) => slot === i && value === v)) return true;
    return c.now.topics[i]![0] === v && c.now.together[i] === 1 && c.now.ages[i]! <= 1;
  });
}

/** "fourteen more than at sixty": words of a comparison none of which say anything that is known. */
export function strange(c: Context, index: number): boolean {
  const words = baseWords(c, index);
  if (!words.any || words.overrides.size || words.roles.length || words.median || words.leader || words.other || words.pronoun || c.parsed.said[index]!.cue.op !== 'change') return false;
  return words.low.some((w) => /^\p{L}{3,}|\d/u.test(w) && !plainWords.test(w));
}

const plainWords = /^(?:the|what|when|where|here|there|with|and|but|you|our|your|their|then|now|was|were|had|have|has|did|does|been|all|usual|just|only|ever|even|one|ones|said|saw|see|gets?|got)$/;
