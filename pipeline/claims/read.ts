// One mention: all its readings, weighed.
import type { Mention } from '../script/index.js';
import { arrivals } from './arrival.js';
import { basesFor, baseWords } from './bases.js';
import { type Candidate, type Context, sameCellExcept } from './context.js';
import { decide, type Decision, fit } from './decide.js';
import { grounded, rightElsewhere, stepBefore } from './doubt.js';
import { farOff } from './far-off.js';
import { endBeside } from './read-change.js';
import { roomCorrectedTo } from './corrected.js';
import { countedBy, outOf, setSize } from './counted.js';
import { failingVerbs, keepingVerbs } from './condition-words.js';
import { passingVerbs } from './cues.js';
import { isCondition, isMark } from './read-condition.js';
import { isPrice } from './prices.js';
import { readTimeConstant } from './read-approach.js';
import { readContrast } from './read-contrast.js';
import { besideFigures, readMultiple } from './multiples.js';
import { readCount, readRuns } from './read-count.js';
import { decideFigure, sameChange } from './read-figure.js';
import { readPoints } from './read-points.js';
import { isMeasuredIn, readQuotient } from './read-quotient.js';
import { rangeAt, readRange } from './read-range.js';
import { figureBeside, readRank, sizeSaid } from './read-rank.js';
import { insisted, oneNamed } from './insist.js';
import { notItsOwn } from './its-own.js';
import { endsSwapped } from './ends-swapped.js';
import { percentForPoints, pointsForPercent } from './points-or-percent.js';
import { pairWith, push, readValue } from './read-value.js';
import { excuses, withoutExcuse } from './said-outright.js';
import { settled } from './settle.js';
import { foreign, known, slippedUnit } from './slipped-unit.js';
import { saysAll, unsupported } from './support.js';
import { firstCell, substitute, valueOf } from './terms.js';

export interface Reading extends Decision {
  mention: Mention;
}

export function readMention(c: Context, index: number): Reading {
  return settled(c, index, judged(c, index));
}

function judged(c: Context, index: number): Reading {
  let r = arrivals(c, index, insisted(c, index, weigh(c, index)));
  if (r.why.startsWith('it goes ')) return r;
  r = withoutExcuse(c, index, r);
  if (r.verdict !== 'disagrees') return r;
  if (r.chosen!.kind !== 'count' && outOf(c, index)) return { ...r, verdict: 'untied', why: 'it counts' };
  if (r.chosen!.why === 'over all' && !saysAll(c)) {
    const others = r.ranked.map((y) => y.candidate).filter((y) => y.kind !== 'range');
    if (!others.length) return { ...r, verdict: 'untied', why: 'no word says that it is of them all' };
    r = { ...decide(r.mention, others, {}), mention: r.mention };
    if (r.verdict !== 'disagrees') return r;
  }
  const elided = c.parsed.said[index]!.cue;
  // "The one saves 47 watts, and the other throws 42 back in": which way it goes was said of the first alone.
  if (r.turned && elided.elided && !elided.way) return { ...r, verdict: 'agrees' };
  if (besideFigures(r.chosen!)) return r;
  const spoken = limitBeside(c, index, r);
  if (spoken) return spoken;
  const why = unsupported(c, index, r.chosen!, r.ranked);
  if (why) return { ...r, verdict: 'untied', why };
  if (r.insisted) return r;
  // "5.5 kelvin, or twelve percent": just what was said before, said again in percent.
  if (r.chosen!.why === sameChange && c.done[index - 1] && fit(c.parsed.said[index - 1]!.mention, c.done[index - 1]!)) return r;
  // Which way it lies from the median: both are named.
  if (r.turned && r.chosen!.firm && !r.chosen!.base) return r;
  const open = r.turned && grounded(c, index, r.chosen!) ? undefined : rightElsewhere(c, index, r.chosen!);
  if (r.turned && !open && oneNamed(c, index, r.chosen!)) return r;
  const turned = turnedRound(c, index, r);
  if (turned) return { ...r, verdict: 'agrees', chosen: turned, why: turned.why };
  const elsewhere = open ?? (r.turned ? undefined : farOff(c, index, r.chosen!));
  if (elsewhere) return { ...r, verdict: 'untied', why: `would be right for another reading (${elsewhere})` };
  if (standsFirm(c, index, r)) return r;
  // Nothing in the sentence names the thing or the setting: an alarm needs that no reading of that kind at all would fit.
  const best = r.ranked[0]!;
  const possible = excuses(c, index, best.candidate);
  const other = r.ranked.find((x) => x.fits && possible(x.candidate) && !notItsOwn(c, index, best.candidate, x.candidate) && x.candidate.cost <= best.candidate.cost + (best.candidate.kind === 'count' ? narrowDoubt : best.candidate.kind === 'ratio' ? ratioDoubt : wideDoubt));
  if (other && other.candidate.base && other.candidate.base === best.candidate.subject && other.candidate.subject === best.candidate.base) return { ...r, verdict: 'agrees', chosen: other.candidate, why: other.candidate.why };
  return other ? { ...r, verdict: 'untied', why: `would be right for another reading (${other.candidate.fact.id})` } : r;
}

/** "At 45.2 decibels it is over my ceiling of 40": what is set is the other number; this one was measured, and rightly. */
function limitBeside(c: Context, index: number, r: Reading): Reading | undefined {
  const x = r.chosen!;
  if (x.kind !== 'constant' || !x.subject?.fixed || !(c.parsed.said.some((s, k) => k !== index && s.mention.type === 'cardinal' && fit(s.mention, x)) || keptOrBroken(c, index))) return undefined;
  const measured = (h: { slot: number; value: string }): boolean => h.value !== x.subject!.at[h.slot] || !c.grid.holders.has(h.value);
  const unset = { ...c, hits: { ...c.hits, hits: c.hits.hits.filter(measured), bySlot: c.hits.bySlot.map((list) => list.filter(measured)), roles: c.hits.roles.filter((y) => y.role !== x.subject!.role) } };
  const d = decide(r.mention, readValue(unset, index).filter((y) => !y.subject?.fixed), {});
  return d.verdict === 'agrees' ? { ...d, mention: r.mention } : undefined;
}

/** "at 58.7 degrees it breaks every rule": the mark stands behind what is done to it. */
function keptOrBroken(c: Context, index: number): boolean {
  const { to } = c.parsed.said[index]!.mention;
  return c.hits.hits.some((h) => h.from > to && c.grid.holders.has(h.value) && c.parsed.low.slice(to, h.from).some((w) => keepingVerbs.has(w) || failingVerbs.has(w) || passingVerbs.test(w)));
}

/** "2.6 degrees cooler", with neither of the two named in the sentence: which is compared with which is open. */
function turnedRound(c: Context, index: number, r: Reading): Candidate | undefined {
  const best = r.chosen!;
  if (!best.base || !best.subject || best.firm) return undefined;
  const differing = sameCellExcept(c.grid, best.subject, best.base);
  if (c.hits.hits.some((h) => differing.includes(h.slot))) return undefined;
  // The section, or the figure beside it, says which one is spoken of.
  if (c.now.heading.some(([i, v]) => differing.includes(i) && best.subject!.at[i] === v)) return undefined;
  if (index > 0 && c.done[index - 1]?.subject === best.subject) return undefined;
  if (endBeside(c, index) === best.subject || stepBefore(c, best)) return undefined;
  return r.ranked.find((x) => x.fits && x.candidate.subject === best.base && x.candidate.base === best.subject)?.candidate;
}

const wideDoubt = 2.2;
/** Counts are few and fit by chance, multiples nearly so. */
const narrowDoubt = 0.6;
const ratioDoubt = 0.85;

/** The sentence itself names the setup or the setting that the reading taken has, or the record has but one. */
function standsFirm(c: Context, index: number, r: Decision): boolean {
  const at = r.chosen?.subject?.at;
  if (!at || r.chosen!.kind === 'rank') return true;
  if (r.chosen!.kind === 'count') return !/^count\.(?:above|below|at-)/.test(r.chosen!.fact.id);
  const g = c.grid;
  const measure = at[g.of.measure[0]!]!;
  const known = (i: number): boolean => c.hits.hits.some((h) => (h.baseOf < 0 || (h.baseOf === index && r.chosen!.base?.at[i] === h.value)) && h.segment <= index && h.slot === i && at[i] === h.value) || (c.now.ages[i]! <= 8 && c.now.together[i] === 1 && c.now.topics[i]![0] === at[i]);
  if (c.hits.paired.has(index)) return true;
  return [...g.of.setup, ...g.of.setting, ...g.of.workload, ...g.of.part].filter((i) => g.valuesWith.get(measure)![i]!.size > 1).every(known);
}

function weigh(c: Context, index: number): Reading {
  const said = c.parsed.said[index]!;
  const m = said.mention;
  const as = (d: Decision, mention: Mention = m): Reading => ({ ...d, mention });
  if (said.named) return as(readNamed(c, index));
  if (m.type === 'superlative' || m.type === 'ordinal') return as(readPlace(c, index));
  const contrast = readContrast(c, index);
  if (contrast) return contrast;
  const room = roomCorrectedTo(c, index);
  if (room) return as(decide(m, [], { silent: room.right }));
  if (isPrice(c, index)) return as(decide(m, [], { silent: true }));
  const quotient = m.unit?.parts && !isMeasuredIn(c, m.unit) ? readQuotient(c, index) : undefined;
  if (quotient) return quotient;
  const constant = readTimeConstant(c, index);
  if (constant) return constant;
  if (m.unit && !known(c, m.unit)) return as(foreign(c, index));
  if (isMark(c, index)) return as(decide(m, readValue(c, index).filter((x) => x.subject?.fixed && fit({ ...m, hedge: undefined } as Mention, x)), { silent: true }));
  const range = rangeAt(c.parsed, index);
  const { cue } = said;
  if (cue.op === 'count') return as(decide(m, readRuns(c, index), { silent: true }));
  if (!m.unit && m.type === 'cardinal' && m.decimals <= 0 && (counting(c, index) || !cue.placed) && cue.op !== 'change') {
    const { candidates, sure } = readCount(c, index);
    if (candidates.length) return as(decide(m, candidates, { silent: !sure, margin: isCondition(c, index) ? 0.15 : 0.35, doubt: isCondition(c, index) ? 0.6 : 1.5 }));
    if (!cue.placed || (c.parsed.low[m.to] === 'of' && c.parsed.said[index + 1] && setSize(c, index + 1))) return as(decide(m, [], { silent: true }));
  }
  const out: Candidate[] = [];
  if (range) {
    out.push(...readRange(c, index, range));
    if (range.sure && out.length) return as(decide(m, out, {}));
  }
  const pair = pairWith(c, index);
  // "They went from 38.9 to 41.7": several of them, so that is how far they lie apart.
  const several = pair !== undefined && new Set(c.hits.hits.filter((h) => ['setup', 'setting'].includes(c.grid.slots[h.slot]!.field) && h.segment >= pair.first && h.segment <= pair.second).map((h) => h.value)).size === 1 && /\b(?:they|runs|passes|repeats|mounts|attempts|tries|results) (?:go|went|run|ran|ranged?)(?: all the way)? from$/.test(c.parsed.low.slice(0, c.parsed.said[pair.first]!.mention.from).join(' '));
  if (pair) out.push(...readPair(c, index, pair).map((x) => (range ? { ...x, cost: x.cost + 0.3 } : several ? { ...x, cost: x.cost + 0.6 } : x)), ...readRange(c, index, { ...pair, sure: false }).map((x) => ({ ...x, cost: x.cost + (several ? 0 : 1) })));
  if (cue.op === 'ratio') return readMultiple(c, index);
  if (cue.op === 'points') { const found = readPoints(c, index); return pointsForPercent(c, index, as(decide(m, found, { soft: !found.some((x) => x.firm || (x.cost <= 0.3 && x.term.args.every((a) => typeof a === 'string'))) && c.done.filter((x) => x?.kind === 'percent_of').length < 2 }))); }
  const d = decideFigure(c, index, out, range !== undefined, pair !== undefined);
  if (m.unit?.id === '%') return percentForPoints(c, index, d);
  if (pair?.second === index) return endsSwapped(c, index, d);
  return d.verdict === 'agrees' ? d : slippedUnit(c, index, d);
}

/** The ends of "from … to …": the second is the subject, the first what it is compared with. */
function readPair(c: Context, index: number, pair: { first: number; second: number; way?: 'up' | 'down' }): Candidate[] {
  if (index === pair.second) {
    const found = readValue(c, index);
    return pair.way ? checkWay(c, pair, found) : found;
  }
  const out: Candidate[] = readValue(c, index).map((x) => ({ ...x, cost: x.cost + (namedBeside(c, index) ? 0 : 0.7) }));
  const second = c.parsed.said[pair.second]!.mention;
  const targets = readValue(c, pair.second);
  const good = targets.filter((x) => fit(second, x));
  for (const t of (good.length ? good : targets).slice(0, 3)) {
    if (!t.subject) continue;
    for (const b of basesFor(c, t.subject, pair.second, baseWords(c, pair.second), undefined)) {
      if (b.cell.fixed) continue;
      const change = new Map(sameCellExcept(c.grid, t.subject, b.cell).map((i) => [i, b.cell.at[i]!] as const));
      const term = t.term.kind === 'mean' ? valueOf(b.cell.key) : substitute(c.grid, t.term, change);
      if (term) push(out, c, term, t.kind, t.cost + b.cost * 0.8, b.cell, b.why);
    }
  }
  return out;
}

function namedBeside(c: Context, index: number): boolean {
  return c.hits.hits.some((h) => h.segment === index && ['setup', 'setting', 'workload', 'phase'].includes(c.grid.slots[h.slot]!.field)) || c.hits.roles.some((r) => r.segment === index && r.firm) || c.hits.paired.has(index);
}

/** "12.11 up to 11.86" cannot be. */
function checkWay(c: Context, pair: { first: number; second: number; way?: 'up' | 'down' }, found: Candidate[]): Candidate[] {
  const a = c.parsed.said[pair.first]!.mention.value;
  const b = c.parsed.said[pair.second]!.mention.value;
  const rises = b.compare(a);
  if ((pair.way === 'up' && rises < 0) || (pair.way === 'down' && rises > 0)) return found.map((x) => ({ ...x, sign: (x.fact.value.sign() > 0 ? -1 : 1) as -1 | 1 }));
  return found;
}

function counting(c: Context, index: number): boolean {
  return isCondition(c, index) || countedBy(c, index) !== undefined || setSize(c, index) || outOf(c, index) || (c.parsed.low[c.parsed.said[index]!.mention.to] === 'of' && c.parsed.low[c.parsed.said[index]!.mention.to + 1] === 'the');
}

/** A number that is itself the name of a load or a setting ("205 watts"): the constant that it was set to, else nothing. */
function readNamed(c: Context, index: number): Decision {
  const { named, mention } = c.parsed.said[index]!;
  const out: Candidate[] = [];
  for (const meaning of named!.meanings) {
    for (const s of meaning.slots) {
      for (const cell of c.grid.cells) {
        if (!cell.constant || cell.at[s.slot] !== s.value) continue;
        push(out, c, valueOf(cell.key), 'constant', 0, cell, 'the value it is named for');
      }
    }
  }
  const right = out.filter((x) => fit(mention, x));
  return decide(mention, right, { silent: true });
}

function readPlace(c: Context, index: number): Decision {
  const said = c.parsed.said[index]!;
  const m = said.mention;
  const { low, tokens } = c.parsed;
  if (m.type === 'ordinal') {
    const next = tokens[m.to];
    const follows = !next || next.kind === 'mark' || /^(?:place|and|with|at|in|by|is|comes|goes|on|again|overall|here|there|now|the|of|behind|ahead|but|while|so|then|for)$/.test(next.low);
    const preceded = /^(?:the|a|an|this|that|our|my|its|every|each)$/.test(low[m.from - 1] ?? '');
    const copula = /^(?:is|comes|came|finishes|finished|takes|took|holds|held|in|lands|landed|are|to|'s|it's|placed|ranks|ranked|only|still|be)$/.test(low[m.from - 1] ?? '');
    if ((!follows && !(copula && !/s$/.test(next?.low ?? ''))) || (preceded && next?.low !== 'place') || m.form === 'digits' && preceded) return decide(m, [], { silent: true });
  }
  if (m.superlative) {
    // "from coolest to hottest" states an order; "most of you", "at best" state nothing.
    const beside = [low[m.to], low[m.to + 1], low[m.from - 1], low[m.from - 2]];
    if ((low[m.to] === 'to' && c.parsed.said[index + 1]?.mention.superlative) || (low[m.from - 1] === 'to' && c.parsed.said[index - 1]?.mention.superlative)) return decide(m, [], { silent: true });
    // "9.5 more than the quietest" compares with it; "at its best" ranks nothing.
    if (/^(?:its|their|his|her|my|our|your)$/.test(low[m.from - 1] ?? '') || c.parsed.said.some((s, k) => k !== index && s.cue.base && m.from >= s.cue.base.from && m.from < s.cue.base.to)) return decide(m, [], { silent: true });
    if (low.slice(m.to, m.to + 5).includes(':') && m.value.toNumber() === 1) return decide(m, [], { silent: true });
    if (low[m.to] === 'first' || /^(?:most|least)$/.test(low[m.from]!) && !(low[m.from - 1] === 'the' && sizeSaid(c, index) !== undefined) && (beside[0] === 'of' || !/^(?:efficient|power|noise|heat|frames)$/.test(beside[0] ?? ''))) return decide(m, [], { silent: true });
  }
  const candidates = readRank(c, index);
  const d = decide(m, candidates, { silent: true, margin: 0.35 });
  if (d.verdict === 'agrees') return d;
  const subjectSaid = c.hits.hits.some((h) => ['setup', 'setting', 'workload'].includes(c.grid.slots[h.slot]!.field) && (h.segment === index || h.segment === index + 1));
  const best0 = d.ranked[0]?.candidate;
  const measureSaid = (m.superlative?.of.length ?? 0) > 0 || c.hits.dimensions.length > 0 || c.hits.hits.some((h) => c.grid.slots[h.slot]!.field === 'measure' || c.grid.slots[h.slot]!.field === 'part') || m.type === 'ordinal' || (sizeSaid(c, index) !== undefined && best0 !== undefined && spokenLast(c, best0));
  const best = d.ranked[0];
  // "the biggest heat sink": what is ranked is nothing that was measured.
  const noun = tokens[m.to];
  const foreignNoun = m.superlative !== undefined && m.superlative.of.length === 0 && noun?.kind === 'word' && !rankTrailers.test(noun.low) && !c.parsed.names.some((n) => n.from <= m.to + 1 && m.to < n.to && n.meanings.some((x) => x.own));
  const standing = !foreignNoun && (subjectSaid || sizeSaid(c, index) !== undefined || low.slice(said.segment.from, m.from).some((w) => /^(?:this|that|it|which|it's|that's)$/.test(w)));
  if (best && best.candidate.cost <= 0.8 && standing && measureSaid && !besideOther(c, index, best.candidate) && !d.ranked.some((r) => r.fits && r.candidate.cost <= best.candidate.cost + (m.superlative ? (m.value.toNumber() === 1 && sizeSaid(c, index) === undefined ? 0.9 : m.value.toNumber() === 1 ? 0.5 : 0.35) : 0.5)) && (m.type !== 'ordinal' || (ranking(c, index) && measureSpoken(c, index, best.candidate)))) return { ...d, verdict: 'disagrees', chosen: best.candidate, why: best.candidate.why };
  return d;
}

/** A place by itself says nothing about what is ranked: its measure is named with it, or that of the figure beside it or said last. */
function measureSpoken(c: Context, index: number, x: Candidate): boolean {
  const g = c.grid;
  const measure = g.of.measure[0]!;
  const of = x.subject?.at[measure];
  if (c.parsed.said.some((s) => s.mention.unit?.parts && s.mention.unit.id !== x.fact.unit.id) || /\b(?:per|for each|for every) watt\b/.test(c.parsed.low.join(' '))) return false;
  const before = c.done[index - 1];
  const figure = c.parsed.said[index - 1]?.mention;
  if (figure?.type === 'cardinal' && figure.unit && (before?.subject?.at[measure] !== of || before?.kind === 'per_watt')) return figureBeside(c, index)?.at[measure] === of;
  const dims = g.measureUnits.get(of ?? '');
  if (c.hits.hits.some((h) => h.segment <= index && h.slot === measure && h.value === of) || c.hits.dimensions.some((d) => d.segment <= index && d.dimension.some((y) => dims?.has(y)))) return true;
  const last = c.now.said[0] && firstCell(g, c.now.said[0]);
  return figureBeside(c, index)?.at[measure] === of || last?.at[measure] === of || c.now.placed.some((k) => g.byKey.get(k)?.at[measure] === of) || c.done.slice(0, index).some((d) => d?.subject?.at[measure] === of);
}

/** It is of the quantity that was said last. */
function spokenLast(c: Context, x: Candidate): boolean {
  const y = c.now.said[0] && firstCell(c.grid, c.now.said[0]);
  return y !== undefined && [...c.grid.of.measure, ...c.grid.of.part].every((i) => y.at[i] === x.subject?.at[i]);
}

/** Words after a superlative that are no noun. */
const rankTrailers = /^(?:of|in|on|at|with|here|there|by|and|or|but|is|was|are|were|to|for|the|overall|too|again|now|so|while|as|from|under|than|that|which|it|one|ones|among|ever|yet|when|only|also|this|between|across|all|still|both|not|with|because|though|although|we|i|you)$/;

/** Places are being given: several in the sentence, one before, or "place" itself. */
function ranking(c: Context, index: number): boolean {
  const { said, low } = c.parsed;
  // "The coolest of all six is the one, and second is the other"
  if (said.some((s, k) => k < index && s.mention.superlative && sizeSaid(c, k) !== undefined)) return true;
  return said.filter((s) => s.mention.type === 'ordinal').length > 1 || low.includes('place') || low.slice(said[index]!.mention.to, said[index]!.mention.to + 4).some((w) => /^(?:table|list|ranking|field|order)$/.test(w)) || (figureBeside(c, index) !== undefined && /^(?:with|at|,|\.)?$/.test(low[said[index]!.mention.to] ?? '')) || (c.now.placed.length > 0 && low.length <= 6);
}

/** "It heats up quickest, in 16 minutes": what is ranked is the figure beside it, and not what the reading taken is of. */
function besideOther(c: Context, index: number, x: Candidate): boolean {
  const m = c.parsed.said[index]!.mention;
  const next = c.parsed.said[index + 1]?.mention;
  const of = x.subject && c.grid.measureUnits.get(x.subject.at[c.grid.of.measure[0]!]!);
  if (!of || !next?.unit || next.unit.id === '%' || next.unit.id === 'points' || next.from - m.to > 4) return false;
  return !of.has(next.unit.dimension) && !(next.unit.dimension.startsWith('temperature') && (of.has('temperature') || of.has('temperature-difference')));
}
