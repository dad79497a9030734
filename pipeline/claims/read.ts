// One mention: all its readings, weighed.
import { stretch } from '../script/index.js';
import type { Mention } from '../script/index.js';
import { anotherMeasure } from './another-measure.js';
import { arrivals } from './arrival.js';
import { offTheMark } from './beside-mark.js';
import { readCameFrom } from './came-from.js';
import { betweenChanges } from './between-changes.js';
import { betweenRanked } from './between-ranked.js';
import { betweenTwo } from './between-two.js';
import { type Candidate, type Context, sameCellExcept } from './context.js';
import { decide, type Decision, fit, readingOf } from './decide.js';
import { grounded, rightElsewhere, stepBefore, strange } from './doubt.js';
import { ofTheTwo, readEndsApart } from './ends-apart.js';
import { endsBehind } from './ends-behind.js';
import { exchanged } from './exchanged.js';
import { farOff } from './far-off.js';
import { figureOfOther } from './figure-of-other.js';
import { endBeside } from './read-change.js';
import { roomCorrectedTo } from './corrected.js';
import { countedBy, outOf, setSize, wonOf } from './counted.js';
import { failingVerbs, keepingVerbs } from './condition-words.js';
import { passingVerbs } from './change-words.js';
import { isCondition, isMark } from './read-condition.js';
import { isPrice } from './prices.js';
import { leftOut } from './left-out.js';
import { readTimeConstant } from './read-approach.js';
import { readContrast } from './read-contrast.js';
import { besideFigures, readMultiple } from './multiples.js';
import { listedBehind } from './counted-list.js';
import { readCount, readRuns } from './read-count.js';
import { decideFigure } from './read-figure.js';
import { isOfTemperature, ofTemperature } from './percent-of-heat.js';
import { possessed } from './possessed.js';
import { comparedWithUnknown, readPoints } from './read-points.js';
import { isMeasuredIn, readQuotient } from './read-quotient.js';
import { forEachWatt } from './for-each-watt.js';
import { readPair } from './read-pair.js';
import { isSelection, rangeAt, readRange } from './read-range.js';
import { readPlace } from './read-place.js';
import { insisted, oneNamed } from './insist.js';
import { isOfMeter } from './meter.js';
import { notItsOwn } from './its-own.js';
import { endsSwapped } from './ends-swapped.js';
import { percentForPoints, pointsForPercent } from './points-or-percent.js';
import { changeBefore, sameChange } from './same-change.js';
import { markBeside, measuredFrom } from './mark-beside.js';
import { allThereIs, outOfWhole } from './out-of.js';
import { asInRowBefore, asOfTheOneBefore } from './row-before.js';
import { readRunExtreme } from './run-extremes.js';
import { offsetSaid } from './offset-said.js';
import { ofUnknown } from './of-unknown.js';
import { fromOwnMark } from './own-mark.js';
import { overRoomAgain } from './over-room-again.js';
import { pairWith, push, readValue } from './read-value.js';
import { inUnitSaid } from './said-as.js';
import { excuses, withoutExcuse } from './said-outright.js';
import { setTo } from './set-to.js';
import { readSharesOfLimit } from './shares-of-limit.js';
import { likePairBefore } from './like-pair-before.js';
import { settled } from './settle.js';
import { noSlip } from './slip-sized.js';
import { tooLoose } from './loosely-told.js';
import { foreign, known, slippedUnit } from './slipped-unit.js';
import { saysAll, unsupported } from './support.js';
import { takenWith } from './taken-with.js';
import { headed, inTable } from './table-row.js';
import { valueOf } from './terms.js';
import { readWasThen } from './was-then.js';
import { readWhereItEnds } from './where-it-ends.js';
import { asOfAnother } from './same-of-another.js';

export interface Reading extends Decision {
  mention: Mention;
}

export function readMention(given: Context, index: number): Reading {
  const again = (c: Context): Reading => readAsSaid(c, index);
  return fromOwnMark(given, index, overRoomAgain(given, index, inUnitSaid(given, index, again(given), again), again));
}

function readAsSaid(given: Context, index: number): Reading {
  const c = takenWith(given, index);
  const r = asOfTheOneBefore(c, index, asOfAnother(c, index, likePairBefore(c, index, asInRowBefore(c, index, anotherMeasure(c, index, settled(c, index, judged(c, index)))))));
  const misread = noSlip(c, index, r) ?? tooLoose(c, index, r);
  return exchanged(c, index, ofTheTwo(c, index, misread ? { ...r, verdict: 'untied', why: misread } : r));
}

/** "below the mark at which it gave up": told by a clause of its own, and by no name. */
function relative(c: Context, index: number): boolean {
  const base = c.parsed.said[index]!.cue.base;
  return base !== undefined && c.parsed.low.slice(base.from, base.to + 1).some((w) => /^(?:which|what|where|whatever|everything|everyone|everybody|anything|else)$/.test(w));
}

function judged(c: Context, index: number): Reading {
  let r = arrivals(c, index, insisted(c, index, weigh(c, index)));
  if (r.why.startsWith('it goes ')) return r;
  r = withoutExcuse(c, index, r);
  if (r.verdict !== 'disagrees') return r;
  // "the loudest of all six runs", where those are six combinations that were run: as many as are ranked.
  if (r.chosen!.kind === 'count' && c.done.some((d) => d?.kind === 'rank' && r.mention.value.toNumber() === d.fact.keys.length)) return { ...r, verdict: 'untied', why: 'it counts what is ranked' };
  if (r.chosen!.kind !== 'count' && (outOf(c, index) || wonOf(c, index))) return { ...r, verdict: 'untied', why: 'it counts' };
  if (r.chosen!.why === 'over all' && !saysAll(c)) {
    const others = r.ranked.map((y) => y.candidate).filter((y) => y.kind !== 'range');
    if (!others.length) return { ...r, verdict: 'untied', why: 'no word says that it is of them all' };
    r = { ...decide(r.mention, others, {}), mention: r.mention };
    if (r.verdict !== 'disagrees') return r;
  }
  if (r.chosen!.kind === 'ratio' && ofUnknown(c, index)) return { ...r, verdict: 'untied', why: 'it is of nothing on record' };
  const { cue } = c.parsed.said[index]!;
  // "The one saves 47 watts, and the other throws 42 back in": which way it goes was said of the first alone.
  if (r.turned && cue.elided && !cue.way) return { ...r, verdict: 'agrees' };
  // "… climbs 33, the other 17. About half", where one of the two was not understood: nothing is known of their ratio.
  if (besideFigures(r.chosen!) && r.chosen!.term.args.some((a) => c.done.some((d, k) => d !== undefined && (d.term === a || (d.term.kind === 'mean' && d.term.args[0] === a)) && !fit(c.parsed.said[k]!.mention, d)))) return { ...r, verdict: 'untied', why: 'it is of a figure that was not understood' };
  if (besideFigures(r.chosen!) || r.chosen!.why === measuredFrom || r.chosen!.why === allThereIs) return r;
  const spoken = limitBeside(c, index, r);
  if (spoken) return spoken;
  const why = leftOut(c, r.chosen!) ? 'it is of all but what is named' : unsupported(c, index, r.chosen!, r.ranked);
  if (why) return { ...r, verdict: 'untied', why };
  if (r.insisted) return r;
  // "14 above the level at which the rest was done": it is said what it is compared with, in words that say nothing known.
  if (r.chosen!.base && !r.chosen!.firm && strange(c, index) && relative(c, index)) return { ...r, verdict: 'untied', why: 'what it is compared with is not understood' };
  // "2 behind a box making 5 decibels more": said of what is compared with.
  if (r.chosen!.base && !r.chosen!.firm && c.parsed.said.some((s, k) => k < index && s.cue.base && s.cue.base.from < r.mention.from && r.mention.to <= s.cue.base.to + 1) && c.parsed.low.slice(r.mention.from - 3, r.mention.from).some((w) => /ing$/.test(w))) return { ...r, verdict: 'untied', why: 'it is said of what is compared with' };
  // "5.5 kelvin, or twelve percent": just what was said before, said again in percent.
  if (r.chosen!.why === sameChange && changeBefore(c, index)?.right) return r;
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
  return d.verdict === 'agrees' ? readingOf(d, r.mention) : undefined;
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

/** Counts are few and fit by chance, multiples nearly so. */
const [wideDoubt, narrowDoubt, ratioDoubt] = [2.2, 0.6, 0.85];

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

/** Readings that leave no other where they are found. */
const otherwise = [setTo, figureOfOther, endsBehind, betweenTwo, betweenRanked, readWasThen, possessed, readCameFrom, readEndsApart, readWhereItEnds, readSharesOfLimit] as const;

function weigh(c: Context, index: number): Reading {
  const said = c.parsed.said[index]!;
  const m = said.mention;
  const as = (d: Decision, mention: Mention = m): Reading => readingOf(d, mention);
  if (said.named && !(inTable(c, index) && headed(c) && !m.unit)) return as(readNamed(c, index));
  if (m.type === 'superlative' || m.type === 'ordinal') return as(readPlace(c, index));
  const leaning = markBeside(c, index) ?? outOfWhole(c, index) ?? readRunExtreme(c, index);
  if (leaning) return leaning;
  const contrast = readContrast(c, index);
  if (contrast) return contrast;
  const room = roomCorrectedTo(c, index);
  if (room) return as(decide(m, [], { silent: room.right }));
  if (isPrice(c, index) || isOfMeter(c, index)) return as(decide(m, [], { silent: true }));
  const each = forEachWatt(c, index);
  if (each) return each;
  const quotient = m.unit?.parts && !isMeasuredIn(c, m.unit) ? readQuotient(c, index) : undefined;
  if (quotient) return quotient;
  if (isOfTemperature(c, index)) return as({ verdict: 'untied', why: ofTemperature, ranked: [] });
  const constant = readTimeConstant(c, index);
  if (constant) return constant;
  if (m.unit && !known(c, m.unit)) return as(foreign(c, index));
  if (isMark(c, index)) return as(decide(m, readValue(c, index).filter((x) => x.subject?.fixed && fit({ ...m, hedge: undefined } as Mention, x)), { silent: true }));
  const changes = betweenChanges(c, index);
  if (changes.length) return as(decide({ ...m, unit: m.unit ?? c.parsed.said[index - 1]!.mention.unit } as Mention, changes, {}));
  const offset = offsetSaid(c, index);
  if (offset.length) return as(decide(m, offset, { silent: true }));
  for (const told of otherwise) {
    const found = told(c, index);
    if (found.length) return as(decide(m, found, {}));
  }
  // "From slow to brisk it climbs from 31 to 38": two ends of that, and no range.
  const range = c.hits.course && c.hits.paired.has(index) ? undefined : rangeAt(c.parsed, index);
  const { cue } = said;
  if (cue.op === 'count') return as(decide(m, readRuns(c, index), { silent: true }));
  if (!m.unit && m.type === 'cardinal' && m.decimals <= 0 && (counting(c, index) || !cue.placed) && cue.op !== 'change') {
    const { candidates, sure } = readCount(c, index);
    if (candidates.length) return as(decide(m, candidates, { silent: !sure, margin: isCondition(c, index) ? 0.15 : 0.35, doubt: isCondition(c, index) ? 0.6 : 1.5 }));
    // "lamps, forty of them", "first two of them flare": so many of what was just named.
    if (!cue.placed || c.parsed.low[m.from - 1] !== 'all' && /^of (?:them|these|those|the same)$/.test(stretch(c.parsed.low, m.to, m.to + (c.parsed.low[m.to + 1] === 'the' ? 3 : 2))) || (c.parsed.low[m.to] === 'of' && c.parsed.said[index + 1] && setSize(c, index + 1))) return as(decide(m, [], { silent: true }));
  }
  if (range && isSelection(c.parsed, range)) return as(decide(m, [], { silent: true }));
  const out: Candidate[] = [];
  if (range) {
    out.push(...readRange(c, index, range));
    if (range.sure && out.length) return as(decide(m, out, {}));
  }
  const pair = pairWith(c, index);
  // "They went from 38.9 to 41.7": several of them, so that is how far they lie apart.
  const several = pair !== undefined && new Set(c.hits.hits.filter((h) => ['setup', 'setting'].includes(c.grid.slots[h.slot]!.field) && h.segment >= pair.first && h.segment <= pair.second).map((h) => h.value)).size === 1 && /\b(?:they|runs|passes|repeats|mounts|attempts|tries|results) (?:go|went|run|ran|ranged?)(?: all the way)? from$/.test(stretch(c.parsed.low, 0, c.parsed.said[pair.first]!.mention.from));
  if (pair) out.push(...readPair(c, index, pair).map((x) => (range ? { ...x, cost: x.cost + 0.3 } : several ? { ...x, cost: x.cost + 0.6 } : x)), ...(cue.overRoom ? [] : readRange(c, index, { ...pair, sure: false })).map((x) => ({ ...x, cost: x.cost + (several ? 0 : 1) })));
  // "I did the whole round twice": so many runs, where the words make it a multiple of nothing.
  const runs = cue.op === 'ratio' && cue.doubtful && /^(?:twice|thrice)$/.test(c.parsed.low[m.to - 1]!) ? readRuns(c, index).filter((x) => fit(m, x)) : [];
  if (runs.length) return as(decide(m, runs, { silent: true }));
  if (cue.op === 'ratio') return readMultiple(c, index);
  if (cue.op === 'points') { const found = readPoints(c, index); return pointsForPercent(c, index, as(decide(m, found, { soft: (comparedWithUnknown(c, index, found) && c.done.filter((x) => x?.kind === 'percent_of').length > 1) || !found.some((x) => x.firm || (x.cost <= 0.3 && x.term.args.every((a) => typeof a === 'string'))) && c.done.filter((x) => x?.kind === 'percent_of').length < 2 }))); }
  out.push(...offTheMark(c, index));
  const d = decideFigure(c, index, out, range !== undefined, pair !== undefined);
  if (m.unit?.id === '%') return percentForPoints(c, index, d);
  if (pair?.second === index) return endsSwapped(c, index, d);
  return d.verdict === 'agrees' ? d : slippedUnit(c, index, d);
}

function counting(c: Context, index: number): boolean {
  return isCondition(c, index) || listedBehind(c, index) !== undefined || countedBy(c, index) !== undefined || setSize(c, index) || outOf(c, index) || (c.parsed.low[c.parsed.said[index]!.mention.to] === 'of' && (c.parsed.low[c.parsed.said[index]!.mention.to + 1] === 'the' || (c.parsed.low[c.parsed.said[index]!.mention.from - 1] === ',' && /^(?:them|these|those)$/.test(c.parsed.low[c.parsed.said[index]!.mention.to + 1] ?? ''))));
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
