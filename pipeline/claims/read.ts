// One mention: all its readings, weighed.
import { type Unit, unit } from '../quantities/index.js';
import { changeVerbs, type Mention, phraseAt } from '../script/index.js';
import { basesFor, baseWords } from './bases.js';
import { type Candidate, type Context, sameCellExcept } from './context.js';
import { kindOf } from './grid.js';
import { decide, type Decision, fit, margin } from './decide.js';
import { endBeside, readChange } from './read-change.js';
import { countedBy, isCondition, isThreshold, readCount, readRuns, setSize } from './read-count.js';
import { readPoints, readRatio, readShare } from './read-proportion.js';
import { rangeAt, readRange } from './read-range.js';
import { figureBeside, readRank, sizeSaid } from './read-rank.js';
import { insisted, oneNamed, significant } from './insist.js';
import { endsSwapped } from './ends-swapped.js';
import { percentForPoints, pointsForPercent } from './points-or-percent.js';
import { pairWith, push, readValue } from './read-value.js';
import { ofChanges, ratioSure, unsupported } from './support.js';
import { firstCell, substitute, valueOf } from './terms.js';

export interface Reading extends Decision {
  mention: Mention;
}

export function readMention(c: Context, index: number): Reading {
  const r = insisted(c, index, weigh(c, index));
  if (r.verdict !== 'disagrees') return r;
  const why = unsupported(c, index, r.chosen!, r.ranked);
  if (why) return { ...r, verdict: 'untied', why };
  if (r.insisted || (r.turned && oneNamed(c, index, r.chosen!))) return r;
  const turned = turnedRound(c, index, r);
  if (turned) return { ...r, verdict: 'agrees', chosen: turned, why: turned.why };
  if (standsFirm(c, index, r)) return r;
  // Nothing in the sentence names the thing or the setting: an alarm needs that no reading of that kind at all would fit.
  const best = r.ranked[0]!;
  const other = r.ranked.find((x) => x.fits && x.candidate.cost <= best.candidate.cost + wideDoubt);
  if (other && other.candidate.base && other.candidate.base === best.candidate.subject && other.candidate.subject === best.candidate.base) return { ...r, verdict: 'agrees', chosen: other.candidate, why: other.candidate.why };
  return other ? { ...r, verdict: 'untied', why: `would be right for another reading (${other.candidate.fact.id})` } : r;
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
  if (endBeside(c, index) === best.subject) return undefined;
  return r.ranked.find((x) => x.fits && x.candidate.subject === best.base && x.candidate.base === best.subject)?.candidate;
}

const wideDoubt = 2.2;

/** The sentence itself names the setup or the setting that the reading taken has, or the record has but one. */
function standsFirm(c: Context, index: number, r: Decision): boolean {
  const at = r.chosen?.subject?.at;
  if (!at || r.chosen!.kind === 'rank') return true;
  if (r.chosen!.kind === 'count') return !/^count\.(?:above|below|at-)/.test(r.chosen!.fact.id);
  const g = c.grid;
  const measure = at[g.of.measure[0]!]!;
  const known = (i: number): boolean => c.hits.hits.some((h) => h.baseOf < 0 && h.segment <= index && h.slot === i && at[i] === h.value) || (c.now.ages[i]! <= 8 && c.now.together[i] === 1 && c.now.topics[i]![0] === at[i]);
  if (c.hits.paired.has(index)) return true;
  return [...g.of.setup, ...g.of.setting, ...g.of.workload, ...g.of.part].filter((i) => g.valuesWith.get(measure)![i]!.size > 1).every(known);
}

function weigh(c: Context, index: number): Reading {
  const said = c.parsed.said[index]!;
  const m = said.mention;
  const as = (d: Decision, mention: Mention = m): Reading => ({ ...d, mention });
  if (said.named) return as(readNamed(c, index));
  if (m.type === 'superlative' || m.type === 'ordinal') return as(readPlace(c, index));
  if (m.unit && !known(c, m.unit)) return as(foreign(c, index));
  if (isThreshold(c, index)) return as(decide(m, readValue(c, index).filter((x) => x.subject?.fixed && fit({ ...m, hedge: undefined } as Mention, x)), { silent: true }));
  const range = rangeAt(c.parsed, index);
  const { cue } = said;
  if (cue.op === 'count') return as(decide(m, readRuns(c, index), { silent: true }));
  if (!m.unit && m.type === 'cardinal' && (counting(c, index) || !cue.placed) && cue.op !== 'change') {
    const { candidates, sure } = readCount(c, index);
    if (candidates.length) return as(decide(m, candidates, { silent: !sure, margin: isCondition(c, index) ? 0.15 : 0.35, doubt: isCondition(c, index) ? 1 : 1.5 }));
    if (!cue.placed) return as(decide(m, [], { silent: true }));
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
  if (cue.op === 'ratio') return as(decide(m, readRatio(c, index), { soft: !ratioSure(c, index) || ofChanges(c, index), silent: (m.type === 'fraction' && !cue.base) || cue.doubtful }));
  if (cue.op === 'points') { const found = readPoints(c, index); return pointsForPercent(c, index, as(decide(m, found, { soft: !found.some((x) => x.firm || (x.cost <= 0.3 && x.term.args.every((a) => typeof a === 'string'))) && c.done.filter((x) => x?.kind === 'percent_of').length < 2 }))); }
  const d = decideFigure(c, index, out, range !== undefined, pair !== undefined);
  if (m.unit?.id === '%') return percentForPoints(c, index, d);
  if (pair?.second === index) return endsSwapped(c, index, d);
  return d.verdict === 'agrees' ? d : slippedUnit(c, index, d);
}

/** A figure with or without a unit: a value, a change, a percentage. */
function decideFigure(c: Context, index: number, out: Candidate[], range: boolean, pair: boolean): Reading {
  const said = c.parsed.said[index]!;
  const { cue, mention: m } = said;
  const as = (d: Decision, mention: Mention = m): Reading => ({ ...d, mention });
  const again = cue.elided;
  if (m.unit?.id === '%') {
    const found = readPercent(c, index);
    if (again) out.push(...readPercent(withCue(c, index, { ...cue, op: again.op, way: again.way, ...(!cue.base && again.base && { base: again.base }) }), index));
    const restating = restatesChange(c, index);
    if (restating && !again) return as(decide(m, found.filter((x) => x.kind === 'percent_change'), { margin: 0.35, doubt: 0.35 }));
    return as(decide(m, [...out, ...found.map((x) => (again ? { ...x, cost: x.cost + 0.4 } : x))], { soft: (cue.op === 'value' && !again && !percentNamed(c, index)) || (cue.op === 'share' && !shareSure(c, index)), silent: /^(?:first|last|top|bottom|next|other)$/.test(c.parsed.low[m.from - 1] ?? '') }));
  }
  // "… 24 percent but the average only 19": the unit of the figure before.
  if (!m.unit && (cue.op === 'change' || again || /^(?:against|versus|vs)$/.test(c.parsed.low[m.from - 1] ?? '') || /^percent/.test(c.now.said[0]?.kind ?? '')) && lastUnit(c, index)?.id === '%') {
    const elided = { ...m, unit: unit('%') };
    const shadow = withMention(again ? withCue(c, index, { ...cue, op: again.op, way: again.way, ...(!cue.base && again.base && { base: again.base }) }) : c, index, elided);
    const alike = c.done[index - 1]?.kind === 'mean' && c.done[index - 1]!.fact.unit.id === '%' ? readValue(shadow, index) : [];
    const first = decide(elided, [...alike, ...readPercent(shadow, index).map((x) => (alike.length ? { ...x, cost: x.cost + 0.4 } : x))], {});
    if (/^(?:against|versus|vs)$/.test(c.parsed.low[m.from - 1] ?? '')) return as(first.verdict === 'disagrees' ? { ...first, verdict: 'untied' } : first, elided);
    if (first.verdict === 'agrees' || ((cue.op === 'change' || again?.op === 'change') && first.verdict === 'disagrees')) return as(first, elided);
  }
  if (cue.op === 'change' || again?.op === 'change') {
    const found = again ? readChange(withCue(c, index, { ...cue, op: 'change', way: again.way, ...(!cue.base && again.base && { base: again.base }) }), index) : readChange(c, index);
    const plain = readValue(c, index).map((x) => ({ ...x, cost: x.cost + (again ? 0.6 : /^(?:more|less|fewer|higher|lower)$| by$|er$/.test(cue.because) ? 2.6 : 1.2) }));
    return as(decide(m, [...out, ...found, ...plain], { silent: !supported(c, index) }));
  }
  // Where just what the words say fits, nothing further off need be looked for.
  const nearest = pair || range ? [] : readValue(c, index, 1);
  if (nearest.some((x) => x.cost <= 0.3 && fit(m, x))) out.push(...nearest);
  else if (!pair) out.push(...readValue(c, index).map((x) => (range ? { ...x, cost: x.cost + 0.8 } : x)));
  const opens = c.parsed.low.slice(said.segment.from, m.from);
  const pointing = opens.some((w) => /^(?:that's|that|there's|which|it's|makes|making)$/.test(w)) && !c.hits.hits.some((h) => h.segment === index);
  const { low } = c.parsed;
  const elapsed = m.unit?.dimension === 'duration' && !((m.composed || m.decimals > 0) && timed(c, index)) && (/^(?:after|for|in|within|every|over|another|last|first|next|per|past|until)$/.test(low[m.from - 1] ?? '') || /^(?:in|later|into|long|of|after|before|ago)$/.test(low[m.to] ?? '') || !timed(c, index));
  const aside = m.adjectival && !c.hits.roles.some((r) => r.from >= m.to && r.from <= m.to + 3);
  const second = pair && pairWith(c, index)?.second === index;
  // A comparison that is not said costs this much more; where a plain value is cheaper still and fits, none need be looked for.
  const unsaid = pointing ? 0.4 : 1.2;
  const least = Math.min(...out.map((x) => x.cost));
  const plain = out.some((x) => x.cost <= Math.min(unsaid, least + (second ? 0.45 : margin)) && fit(m, x));
  const soft = plain ? [] : readChange(c, index).filter((x) => !x.subject?.fixed).map((x) => ({ ...x, cost: x.cost + unsaid }));
  return as(decide(m, [...out, ...soft], { ...(second && { margin: 0.45 }), soft: openMeasure(c, index) || labelLike(c, index) || !m.unit && lastUnit(c, index)?.id === '%' && !c.hits.hits.some((h) => h.segment === index && [...c.grid.of.measure, ...c.grid.of.part].includes(h.slot)), silent: elapsed || aside || cue.doubtful || !supported(c, index) }));
}

/** "1.9 watts more, which makes 40 percent": nothing but the change just said, and rightly, in percent. */
function restatesChange(c: Context, index: number): boolean {
  const before = c.done[index - 1];
  if (!before || !fit(c.parsed.said[index - 1]!.mention, before) || !sameInPercent(c, index).length) return false;
  const gap = c.parsed.low.slice(c.parsed.said[index - 1]!.mention.to, c.parsed.said[index]!.mention.from);
  return gap.length <= 9 && /^(?:or|makes|is|that's|i\.e|ie|so)$/.test(gap.filter((w) => !/^(?:about|roughly|nearly|almost|around|just|a|good|some|,)$/.test(w)).at(-1) ?? '');
}

/** The words speak of something that is measured in percent, or a share of one was just said. */
function percentNamed(c: Context, index: number): boolean {
  const g = c.grid;
  const share = (m: string): boolean => g.measureUnits.get(m)?.has('share') ?? false;
  const measure = g.of.measure[0]!;
  const part = g.of.part[0]!;
  const parts = new Set(g.cells.filter((x) => share(x.at[measure]!)).map((x) => x.at[part]!));
  if (c.hits.hits.some((h) => h.segment <= index && ((h.slot === measure && share(h.value)) || (h.slot === part && parts.has(h.value))))) return true;
  if (c.now.ages[measure]! <= 1 && share(c.now.topics[measure]![0] ?? '')) return true;
  return c.now.said[0]?.kind === 'percent_of' || c.done[index - 1]?.fact.unit.id === '%';
}

/** The sentence, or the one before, speaks of a measured time. */
function timed(c: Context, index: number): boolean {
  const g = c.grid;
  const of = (m: string): boolean => g.measureUnits.get(m)?.has('duration') ?? false;
  const slot = g.of.measure[0]!;
  return c.hits.hits.some((h) => h.slot === slot && of(h.value)) || c.hits.dimensions.some((d) => d.dimension.includes('duration')) || (c.now.ages[slot]! <= 2 && of(c.now.topics[slot]![0] ?? '')) || c.done.slice(0, index).some((x) => x?.subject && of(x.subject.at[slot]!));
}

/** A bare number counts as a figure only where the words around it speak of a measure, or have just done so. */
function supported(c: Context, index: number): boolean {
  const m = c.parsed.said[index]!.mention;
  if (m.unit) return true;
  // "breaks two", "all three": small whole numbers in words are counts of something, unless a change is said.
  if (m.form === 'words' && m.decimals === 0 && m.value.toNumber() <= 12 && c.parsed.said[index]!.cue.op !== 'change' && !c.parsed.said[index]!.cue.elided) return false;
  const g = c.grid;
  for (let k = index - 1; k >= 0; k--) {
    const u = c.parsed.said[k]!.mention.unit;
    if (u) { if (!known(c, u)) return false; break; }
  }
  if (/^(?:first|next|last|other)$/.test(c.parsed.low[m.from - 1] ?? '')) return false;
  const slots = [...g.of.measure, ...g.of.part];
  if (c.hits.hits.some((h) => slots.includes(h.slot) && h.segment <= index) || c.hits.dimensions.some((d) => d.segment <= index)) return true;
  if (c.done.slice(0, index).some((x) => x !== undefined)) return true;
  const slot = g.of.measure[0]!;
  return c.now.ages[slot]! <= 2 || c.now.ages[g.of.part[0]!]! <= 1 || c.now.said.length > 0 && m.decimals > 0;
}

const figureBefore = /^(?:to|at|is|are|was|were|reads?|with|as|from|in|on|for|be|shows?|showed|reach(?:es|ed)?|hits?|settle[sd]?|average[sd]?|draws?|drew|pulls?|pulled|measured|measures|lands?|landed|sits?|sat|of|it's|that's|than|and|but|so|which|or|by|gets?|got|has|have|had|does|do|did|makes?|made|needs?|takes?|took|runs?|ran|turns?|moves?|manages?|keeps?|kept|holds?|held|gives?|gave|adds?|another|only|just|still|even|about|around|roughly|nearly|almost|under|over|below|above|the|a|its|my|weighs|stays?|costs?|see|saw|touch(?:es|ed)?|came|comes|went|goes|ends?|ended|peaks?|peaked|starts?|started|then|now|also|some|well|wants?|both|all|says?|said|claims?|pushes|push|does)$/;

/** "platform 6": a bare number right after a word that neither leads to a figure nor is a name is more likely a label. */
function labelLike(c: Context, index: number): boolean {
  const m = c.parsed.said[index]!.mention;
  const before = c.parsed.tokens[m.from - 1];
  if (m.unit || m.decimals > 0 || !before || before.kind === 'mark') return false;
  if (figureBefore.test(before.low)) return false;
  if (c.parsed.names.some((n) => n.from <= m.from - 1 && m.from - 1 < n.to)) return false;
  return phraseAt(changeVerbs, c.parsed.low, m.from - 1) === undefined && phraseAt(changeVerbs, c.parsed.low, m.from - 2) === undefined;
}

/** A bare number in a sentence that names no quantity, some way from the last that did. */
function openMeasure(c: Context, index: number): boolean {
  const g = c.grid;
  if (c.parsed.said[index]!.mention.unit || c.now.ages[g.of.measure[0]!]! <= 1 || c.done.slice(0, index).some((x) => x !== undefined)) return false;
  return !c.hits.hits.some((h) => h.slot === g.of.measure[0] || h.slot === g.of.part[0]) && c.hits.dimensions.length === 0;
}

function withCue(c: Context, index: number, cue: Context['parsed']['said'][number]['cue']): Context {
  return { ...c, parsed: { ...c.parsed, said: c.parsed.said.map((s, i) => (i === index ? { ...s, cue } : s)) } };
}

/** "78 hours" where it is 78 minutes. */
function slippedTime(c: Context, index: number, d: Reading): Reading {
  const m = c.parsed.said[index]!.mention;
  if (m.composed || m.hedge || (m.decimals === 0 && m.value.toNumber() < 10)) return d;
  for (const id of ['ms', 's', 'min', 'h']) {
    if (id === m.unit!.id) continue;
    const other: Mention = { ...m, unit: unit(id) };
    const right = readValue(withMention(c, index, other), index).filter((x) => x.cost <= 0.5 && (measureNamed(c, index, x) || (x.cost <= 0.3 && (m.decimals > 0 || significant(m) > 2)))).find((x) => fit(other, x));
    if (right) return { verdict: 'disagrees', chosen: right, why: `the record gives it in ${right.fact.unit.many}`, ranked: [{ candidate: right, fits: false }], mention: m };
  }
  return d;
}

/** The words name a quantity, the number is just its value, and the unit is another one's. */
function slippedUnit(c: Context, index: number, d: Reading): Reading {
  const m = c.parsed.said[index]!.mention;
  if (!m.unit || m.unit.id === '%' || d.verdict === 'disagrees') return d;
  if (m.unit.dimension === 'duration') return slippedTime(c, index, d);
  const other = foreign(c, index);
  return other.verdict === 'disagrees' ? { ...other, mention: m } : d;
}

function known(c: Context, u: Unit): boolean {
  if (u.id === '%' || u.id === 'points' || u.id === 'x') return true;
  return c.grid.dimensions.has(kindOf(u)) || (u.dimension === 'temperature' && c.grid.dimensions.has('temperature-difference')) || (u.dimension === 'temperature-difference' && c.grid.dimensions.has('temperature'));
}

/** A unit that nothing in the record has: no claim, unless the number is just what the words' own quantity gives. */
function foreign(c: Context, index: number): Decision {
  const m = c.parsed.said[index]!.mention;
  const bare: Mention = { ...m, loose: false };
  delete bare.unit;
  const shadow = withMention(c, index, bare);
  const found = [...readValue(shadow, index)].filter((x) => x.cost <= 0.9 && (measureNamed(c, index, x) || (m.decimals > 0 && c.now.ages[c.grid.of.measure[0]!]! <= 3 && c.now.topics[c.grid.of.measure[0]!]![0] === x.subject?.at[c.grid.of.measure[0]!])));
  const right = found.filter((x) => fit(bare, x) && !x.fact.value.equals(x.fact.value.round(-1)));
  if (right.length && m.unit!.dimension !== 'money' && m.unit!.dimension !== 'duration') return { verdict: 'disagrees', chosen: right[0]!, why: `the record gives it in ${right[0]!.fact.unit.symbol}`, ranked: right.map((candidate) => ({ candidate, fits: false })) };
  return { verdict: 'not-a-claim', why: `nothing in the record is in ${m.unit!.many || m.unit!.id}`, ranked: [] };
}

function measureNamed(c: Context, index: number, x: Candidate): boolean {
  const at = x.subject?.at;
  if (!at) return false;
  const slots = [...c.grid.of.measure, ...c.grid.of.part];
  const dims = c.grid.measureUnits.get(at[c.grid.of.measure[0]!]!);
  return c.hits.hits.some((h) => h.segment === index && slots.includes(h.slot) && at[h.slot] === h.value) || c.hits.dimensions.some((d) => d.segment === index && d.dimension.some((y) => dims?.has(y)));
}

export function withMention(c: Context, index: number, mention: Mention): Context {
  const said = c.parsed.said.map((s, i) => (i === index ? { ...s, mention } : s));
  return { ...c, parsed: { ...c.parsed, said } };
}

/** The unit of the figure before, in this sentence or as the last thing said. */
function lastUnit(c: Context, index: number): Unit | undefined {
  for (let i = index - 1; i >= 0; i--) { const u = c.parsed.said[i]!.named ? undefined : c.parsed.said[i]!.mention.unit; if (u) return u; }
  return undefined;
}

function readPercent(c: Context, index: number): Candidate[] {
  const { cue } = c.parsed.said[index]!;
  if (cue.op === 'share') return [...readShare(c, index), ...readValue(c, index).map((x) => ({ ...x, cost: x.cost + 0.3 }))];
  const slots = [...c.grid.of.measure, ...c.grid.of.part];
  const own = cue.op === 'change' && c.parsed.low[c.parsed.said[index]!.mention.to] === 'of' && c.hits.hits.some((h) => h.segment === index && slots.includes(h.slot)) ? readValue(c, index).map((x) => ({ ...x, cost: x.cost + 0.8 })) : [];
  if (cue.op === 'change') return [...own, ...sameInPercent(c, index), ...readChange(c, index), ...(c.parsed.low[c.parsed.said[index]!.mention.to] === 'of' ? readShare(c, index).map((x) => ({ ...x, cost: x.cost + 0.9 })) : [])];
  const out: Candidate[] = [];
  const last = c.now.said[0];
  out.push(...sameInPercent(c, index));
  if (last && last.kind === 'percent_change') out.push(...readChange(c, index).map((x) => ({ ...x, cost: x.cost + 0.2 })));
  else out.push(...readChange(c, index).map((x) => ({ ...x, cost: x.cost + 1.2 })));
  out.push(...readShare(c, index).map((x) => ({ ...x, cost: x.cost + (last?.kind === 'percent_of' ? 0.1 : 0.4) })));
  out.push(...readValue(c, index));
  return out;
}

/** "17 less, or 45 percent": the change just said, as a percentage. */
function sameInPercent(c: Context, index: number): Candidate[] {
  const out: Candidate[] = [];
  const again = index > 0 ? c.done[index - 1] : undefined;
  const m = c.parsed.said[index]!.mention;
  const own = c.hits.hits.some((h) => h.segment === index && h.from < m.to + 3 && c.grid.slots[h.slot]!.field !== 'measure');
  if (!own && again?.base && again.subject && (again.kind === 'difference' || again.kind === 'rise')) push(out, c, { kind: 'percent_change', args: [again.subject.key, again.base.key] }, 'percent_change', 0, again.subject, 'the same change in percent', { base: again.base, sign: again.sign });
  return out;
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
  return countedBy(c, index) !== undefined || setSize(c, index) || (c.parsed.low[c.parsed.said[index]!.mention.to] === 'of' && c.parsed.low[c.parsed.said[index]!.mention.to + 1] === 'the');
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
    if (low[m.to] === 'first' || /^(?:most|least)$/.test(low[m.from]!) && (beside[0] === 'of' || !/^(?:efficient|power|noise|heat|frames)$/.test(beside[0] ?? ''))) return decide(m, [], { silent: true });
  }
  const candidates = readRank(c, index);
  const d = decide(m, candidates, { silent: true, margin: 0.35 });
  if (d.verdict === 'agrees') return d;
  const subjectSaid = c.hits.hits.some((h) => ['setup', 'setting', 'workload'].includes(c.grid.slots[h.slot]!.field) && (h.segment === index || h.segment === index + 1));
  const measureSaid = (m.superlative?.of.length ?? 0) > 0 || c.hits.dimensions.length > 0 || c.hits.hits.some((h) => c.grid.slots[h.slot]!.field === 'measure' || c.grid.slots[h.slot]!.field === 'part') || m.type === 'ordinal';
  const best = d.ranked[0];
  const standing = subjectSaid || sizeSaid(c, index) !== undefined || low.slice(said.segment.from, m.from).some((w) => /^(?:this|that|it|which|it's|that's)$/.test(w));
  if (best && best.candidate.cost <= 0.8 && standing && measureSaid && !d.ranked.some((r) => r.fits && r.candidate.cost <= best.candidate.cost + (m.superlative ? (m.value.toNumber() === 1 ? 0.9 : 0.35) : 0.5)) && (m.type !== 'ordinal' || ranking(c, index))) return { ...d, verdict: 'disagrees', chosen: best.candidate, why: best.candidate.why };
  return d;
}

function shareSure(c: Context, index: number): boolean {
  const words = baseWords(c, index);
  return words.roles.length > 0 || words.leader || (words.pronoun && words.low.length === 1) || [...words.overrides.keys()].some((i) => c.grid.slots[i]!.field !== 'part');
}

/** Places are being given: several in the sentence, one before, or "place" itself. */
function ranking(c: Context, index: number): boolean {
  const { said, low } = c.parsed;
  return said.filter((s) => s.mention.type === 'ordinal').length > 1 || low.includes('place') || low.slice(said[index]!.mention.to, said[index]!.mention.to + 4).some((w) => /^(?:table|list|ranking|field|order)$/.test(w)) || (figureBeside(c, index) !== undefined && /^(?:with|at|,|\.)?$/.test(low[said[index]!.mention.to] ?? '')) || (c.now.placed.length > 0 && low.length <= 6);
}

export { firstCell };
