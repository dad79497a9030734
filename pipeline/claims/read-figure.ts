// A figure, with or without a unit, read as what its words allow: a value, a change, a percentage; and whether the words make it a figure at all.
import { type Unit, unit } from '../quantities/index.js';
import { changeVerbs, type Mention, phraseAt, stretch, WordClass } from '../script/index.js';
import { baseWords } from './bases.js';
import { type Candidate, type Context, withCue, withMention } from './context.js';
import { decide, type Decision, fit, margin, readingOf } from './decide.js';
import type { Reading } from './read.js';
import { readChange } from './read-change.js';
import { readShare } from './read-share.js';
import { ofNumberSaid, sameShare, shareSaid } from './share-said.js';
import { pairWith, push, readValue } from './read-value.js';
import { changeBefore, figureLast, restatesChange, sameChange, sameInPercent } from './same-change.js';
import { leading } from './support.js';
import { elapsed } from './elapsed.js';
import { keptOfTwo } from './kept-of-two.js';
import { known } from './slipped-unit.js';
import { endAfterChange } from './said-direction.js';
import { headed, inTable } from './table-row.js';
import { movedTo } from './grid.js';
import { firstCell, valueOf } from './terms.js';

/** Where the words say both sides, nothing further off need be looked for. */
const narrow = { margin: 0.35, doubt: 0.35 } as const;

const beating = new WordClass(/^(?:beats?|beating|trumps?|outweighs?)$/);
const points = new WordClass(/^(?:that's|that|there's|which|it's|makes|making)$/);

/** A figure with or without a unit: a value, a change, a percentage. */
export function decideFigure(c: Context, index: number, out: Candidate[], range: boolean, pair: boolean): Reading {
  const said = c.parsed.said[index]!;
  const { cue, mention: m } = said;
  const as = (d: Decision, mention: Mention = m): Reading => readingOf(d, mention);
  const again = cue.elided;
  if (m.unit?.id === '%') {
    const kept = keptOfTwo(c, index);
    if (kept.length) return as(decide(m, kept, narrow));
    const stated = shareSaid(c, index);
    if (stated.length) return as(decide(m, stated, narrow));
    const found = readPercent(c, index);
    if (again) out.push(...readPercent(withCue(c, index, { ...cue, op: again.op, way: again.way, ...(!cue.base && again.base && { base: again.base }) }), index));
    const restating = restatesChange(c, index);
    if (restating && !again) {
      // The change just said, and not the same two the other way round.
      const { subject, base } = changeBefore(c, index)!;
      return as(decide(m, found.filter((x) => x.kind === 'percent_change' && !(x.subject === base && x.base === subject)), narrow));
    }
    const on = cue.op === 'value' ? found.filter((x) => x.why === 'on what is named') : [];
    if (on.length) return as(decide(m, on, narrow));
    const stand = !again && cue.op === 'share' && sidesNamed(c, index, found);
    return as(decide(m, [...out, ...found.map((x) => (again ? { ...x, cost: x.cost + 0.4 } : x))], { ...(stand && { doubt: 0.6 }), soft: (cue.op === 'value' && !again && !percentNamed(c, index)) || (cue.op === 'share' && !stand && !shareSure(c, index)), silent: /^(?:first|last|top|bottom|next|other)$/.test(c.parsed.low[m.from - 1] ?? '') }));
  }
  // "86 percent of the one, where on slow it managed only 76", "…, and the other keeps 65": the same share of another.
  // "… and the other only 187, or 81 percent": the share is said after it.
  const shareAfter = c.parsed.said[index + 1]?.mention.unit?.id === '%' && /^, or\b/.test(stretch(c.parsed.low, m.to, c.parsed.said[index + 1]!.mention.from));
  // Nobody tells thousands of percent without the word.
  const fewEnough = Math.abs(m.value.toNumber()) < 1000;
  const goesOn = !m.unit && m.type === 'cardinal' && fewEnough && !shareAfter && !(!again && c.parsed.said[index + 1]?.cue.elided?.op === 'share' && c.parsed.said[index - 1]?.cue.op === 'share') ? sameShare(withMention(c, index, { ...m, unit: unit('%') }), index) : [];
  if (goesOn.length) {
    const d = decide({ ...m, unit: unit('%') }, goesOn, narrow);
    if (d.verdict === 'agrees' || again?.op === 'share') return as(d, { ...m, unit: unit('%') });
  }
  // "… 24 percent but the average only 19": the unit of the figure before.
  if (!m.unit && fewEnough && !shareAfter && (cue.op === 'change' || again || /^(?:against|versus|vs)$/.test(c.parsed.low[m.from - 1] ?? '') || /^percent/.test(c.now.said[0]?.kind ?? '')) && (lastUnit(c, index)?.id === '%' || goesOnInPercent(c, index))) {
    const elided = { ...m, unit: unit('%') };
    const shadow = withMention(again ? withCue(c, index, { ...cue, op: again.op, way: again.way, ...(!cue.base && again.base && { base: again.base }) }) : c, index, elided);
    const own = shareSaid(withMention(c, index, elided), index);
    const stated = own.length || again?.op !== 'share' ? own : shareSaid(shadow, index);
    if (stated.length) return as(decide(elided, stated, narrow), elided);
    const alike = c.done[index - 1]?.kind === 'mean' && c.done[index - 1]!.fact.unit.id === '%' ? readValue(shadow, index) : [];
    const first = decide(elided, [...alike, ...readPercent(shadow, index).map((x) => (alike.length ? { ...x, cost: x.cost + 0.4 } : x))], {});
    if (/^(?:against|versus|vs)$/.test(c.parsed.low[m.from - 1] ?? '')) return as(first.verdict === 'disagrees' ? { ...first, verdict: 'untied' } : first, elided);
    if (first.verdict === 'agrees') return as(first, elided);
    if ((cue.op === 'change' || again?.op === 'change') && first.verdict === 'disagrees') {
      // "up 5 percent, but the low only gains 2.9": or the unit is that of what is measured.
      const own = decide(m, readChange(again ? withCue(c, index, { ...cue, op: 'change', way: again.way, ...(!cue.base && again.base && { base: again.base }) }) : c, index), {});
      if (own.verdict === 'agrees') return as(own);
      // "6 percent cooler, and the hum only goes up 1.4": of something that is measured in a unit of its own.
      const last = c.done[index - 1]?.subject?.at[c.grid.of.measure[0]!];
      return last !== undefined && c.hits.hits.some((h) => h.segment === index && h.to <= m.from && (c.grid.of.measure.includes(h.slot) ? h.value !== last : c.grid.of.part.includes(h.slot) && !c.grid.valuesWith.get(last)?.[h.slot]?.has(h.value))) ? as({ ...first, verdict: 'untied', why: 'the words leave open in which unit it is' }, elided) : as(first, elided);
    }
  }
  // "Two more shelves take up the rest": things that are counted.
  if (!m.unit && m.form === 'words' && cue.op === 'change' && /^(?:more|fewer|extra|additional|further)$/.test(c.parsed.low[m.to] ?? '') && /\p{L}{2,}s$/u.test(c.parsed.low[m.to + 1] ?? '')) return as(decide(m, [], { silent: true }));
  if (cue.op === 'change' || again?.op === 'change') {
    const found = again ? readChange(withCue(c, index, { ...cue, op: 'change', way: again.way, ...(!cue.base && again.base && { base: again.base }) }), index) : readChange(c, index);
    const plain = readValue(c, index).map((x) => ({ ...x, cost: x.cost + (again ? 0.6 : /^(?:more|less|fewer|higher|lower)$| by$|er$/.test(cue.because) ? 2.6 : 1.2) }));
    return as(decide(m, [...out, ...found, ...plain], { silent: !supported(c, index) }));
  }
  // "1.9 degrees warmer, 40.1 after 38.2"
  const [was] = endAfterChange(c.parsed, index) === 'was' ? c.now.pair ?? [] : [];
  const before = was === undefined ? undefined : c.grid.byKey.get(was);
  if (before) push(out, c, valueOf(before.key), 'mean', 0.05, before, 'what it was');
  // Where just what the words say fits, nothing further off need be looked for.
  const nearest = pair || range ? [] : readValue(c, index, 1);
  if (nearest.some((x) => x.cost <= 0.3 && fit(m, x))) out.push(...nearest);
  else if (!pair) out.push(...readValue(c, index).map((x) => (range ? { ...x, cost: x.cost + 0.8 } : x)));
  const pointing = points.in(c.parsed.low, said.segment.from, m.from) && !c.hits.hits.some((h) => h.segment === index);
  const passing = elapsed(c, index);
  const aside = m.adjectival && !c.hits.roles.some((r) => r.from >= m.to && r.from <= m.to + 3);
  const second = pair && pairWith(c, index)?.second === index;
  // A comparison that is not said costs this much more; where a plain value is cheaper still and fits, none need be looked for.
  const unsaid = pointing ? 0.4 : 1.2;
  const least = Math.min(...out.map((x) => x.cost));
  const plain = out.some((x) => x.cost <= Math.min(unsaid, least + (second ? 0.45 : margin)) && fit(m, x));
  const soft = plain ? [] : readChange(c, index).filter((x) => !x.subject?.fixed).map((x) => ({ ...x, cost: x.cost + unsaid }));
  const open = openMeasure(c, index);
  // "… by four percent, from 94.2 to 90.4": ends of a step, and no percentages; nor is what is over a hundred.
  const inPercent = Math.abs(m.value.toNumber()) <= 100 && !(second && c.done[index - 1]?.kind === 'mean');
  // "65.5 on the one beats 97.1 on paper": a figure of something else, whatever that is.
  const beaten = beating.has(c.parsed.low[m.from - 1] ?? '');
  const d = decide(m, [...out, ...soft], { ...(second && { margin: 0.45 }), soft: open || beaten || labelLike(c, index) || !m.unit && inPercent && lastUnit(c, index)?.id === '%' && !c.hits.roles.some((r) => r.segment === index && /^(?:limit|target|rated)$/.test(r.role)) && !c.hits.hits.some((h) => h.segment === index && [...c.grid.of.measure, ...c.grid.of.part].includes(h.slot)), silent: passing || aside || cue.doubtful || !supported(c, index) });
  return as(open && d.verdict === 'untied' ? { ...d, unsaid: true } : d);
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

/** A row told before says what it is a figure of. */
function pairedQuantity(c: Context, index: number): boolean {
  return c.hits.paired.get(index)?.some((x) => x.slot === c.grid.of.measure[0]) ?? false;
}

/** A bare number counts as a figure only where the words around it speak of a measure, or have just done so. */
function supported(c: Context, index: number): boolean {
  const m = c.parsed.said[index]!.mention;
  if (m.unit || (inTable(c, index) && headed(c)) || pairedQuantity(c, index)) return true;
  // "breaks two", "all three": small whole numbers in words are counts of something, unless a change is said.
  if (m.form === 'words' && m.decimals === 0 && m.value.toNumber() <= 12 && c.parsed.said[index]!.cue.op !== 'change' && !c.parsed.said[index]!.cue.elided) return false;
  if (leading(c, index)) return true;
  const g = c.grid;
  for (let k = index - 1; k >= 0; k--) {
    const u = c.parsed.said[k]!.mention.unit;
    if (u) { if (!known(c, u)) return false; break; }
  }
  if (/^(?:first|next|last|other|top|bottom)$/.test(c.parsed.low[m.from - 1] ?? '')) return false;
  const slots = [...g.of.measure, ...g.of.part];
  if (c.hits.hits.some((h) => slots.includes(h.slot) && h.segment <= index) || c.hits.dimensions.some((d) => d.segment <= index)) return true;
  if (c.done.slice(0, index).some((x) => x !== undefined)) return true;
  const slot = g.of.measure[0]!;
  return c.now.ages[slot]! <= 2 || c.now.figureAge <= 1 || c.now.ages[g.of.part[0]!]! <= 1 || c.now.said.length > 0 && m.decimals > 0;
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
  if ((inTable(c, index) && headed(c)) || pairedQuantity(c, index)) return false;
  if (c.parsed.said[index]!.mention.unit || c.now.ages[g.of.measure[0]!]! <= 1 || c.now.figureAge <= 1 || leading(c, index) || c.done.slice(0, index).some((x) => x !== undefined)) return false;
  return !c.hits.hits.some((h) => h.slot === g.of.measure[0] || h.slot === g.of.part[0]) && c.hits.dimensions.length === 0;
}

/** "Slow to brisk gains 50 percent. Brisk to flat gains 23.": a step like that of the sentence before, and no other unit said since. */
function goesOnInPercent(c: Context, index: number): boolean {
  const last = c.now.said[0];
  return index === 0 && c.hits.course !== undefined && c.parsed.said[index]!.cue.op === 'change' && c.now.figureAge <= 1 && last?.kind === 'percent_change' && c.now.pair !== undefined && (c.now.since ?? 0) <= 1;
}

/** The unit of the figure before, in this sentence or as the last thing said. */
function lastUnit(c: Context, index: number): Unit | undefined {
  for (let i = index - 1; i >= 0; i--) { const u = c.parsed.said[i]!.named ? undefined : c.parsed.said[i]!.mention.unit; if (u) return u; }
  return undefined;
}

function readPercent(c: Context, index: number): Candidate[] {
  const { cue } = c.parsed.said[index]!;
  if (cue.op === 'share') return [...takenOfBase(c, index), ...readShare(c, index), ...readValue(c, index).map((x) => ({ ...x, cost: x.cost + 0.3 }))];
  const slots = [...c.grid.of.measure, ...c.grid.of.part];
  const own = cue.op === 'change' && c.parsed.low[c.parsed.said[index]!.mention.to] === 'of' && c.hits.hits.some((h) => h.segment === index && slots.includes(h.slot)) ? readValue(c, index).map((x) => ({ ...x, cost: x.cost + 0.8 })) : [];
  if (cue.op === 'change') return [...own, ...sameInPercent(c, index), ...readChange(c, index), ...(c.parsed.low[c.parsed.said[index]!.mention.to] === 'of' ? readShare(c, index).map((x) => ({ ...x, cost: x.cost + 0.9 })) : [])];
  const out: Candidate[] = onNamed(c, index);
  const last = c.now.said[0];
  out.push(...sameInPercent(c, index));
  if (last && last.kind === 'percent_change') out.push(...readChange(c, index).map((x) => ({ ...x, cost: x.cost + 0.2 })));
  else out.push(...readChange(c, index).map((x) => ({ ...x, cost: x.cost + 1.2 })));
  out.push(...readShare(c, index).map((x) => ({ ...x, cost: x.cost + (last?.kind === 'percent_of' ? 0.1 : 0.4) })));
  out.push(...readValue(c, index));
  return out;
}

/** "Then the brisk one: 151.8. That's 9 percent on the slow one and 7 on the flat one": how much more than what is named. */
function onNamed(c: Context, index: number): Candidate[] {
  const out: Candidate[] = [];
  const { mention, segment } = c.parsed.said[index]!;
  const { low } = c.parsed;
  const last = c.now.said[0];
  const subject = last && (last.kind === 'mean' || last.kind === 'percent_change') ? firstCell(c.grid, last) : undefined;
  const opens = low.slice(0, c.parsed.said[0]!.mention.from).some((w) => /^(?:that's|that|it's|which)$/.test(w));
  const named = c.hits.hits.find((h) => h.from > mention.to - 1 && h.from <= mention.to + 2 && h.from < segment.to && ['setup', 'setting'].includes(c.grid.slots[h.slot]!.field));
  if (!subject || subject.fixed || subject.unit.id === '%' || !opens || low[mention.to] !== 'on' || !named || subject.at[named.slot] === named.value) return out;
  const base = movedTo(c.grid, subject, named.slot, named.value);
  if (base) push(out, c, { kind: 'percent_change', args: [subject.key, base.key] }, 'percent_change', 0, subject, 'on what is named', { base, firm: true, change: [[named.slot, named.value]] });
  return out;
}

/** "That took 47 watts off, which is 17 percent of stock": the change just said, of what it set out from. */
function takenOfBase(c: Context, index: number): Candidate[] {
  const out: Candidate[] = [];
  const again = c.done[figureLast(c, index)];
  const { mention, segment } = c.parsed.said[index]!;
  if (!again?.base || !again.subject || (again.kind !== 'difference' && again.kind !== 'rise') || !c.parsed.low.slice(segment.from, mention.from).some((w) => /^(?:that|that's|which|or)$/.test(w))) return out;
  const { base, subject } = again;
  // … or of "its time": of what it had of that before.
  const own = /^of (?:its|their|his|her)$/.test(stretch(c.parsed.low, mention.to, mention.to + 2)) && c.parsed.low.slice(mention.to + 2, segment.to).filter((w) => /\w/.test(w)).length <= 3 && c.hits.hits.every((h) => h.from <= mention.to || h.from > mention.to + 5 || subject.at[h.slot] === h.value);
  if (!own && !c.hits.hits.some((h) => h.from > mention.to && h.from <= mention.to + 3 && base.at[h.slot] === h.value && subject.at[h.slot] !== h.value)) return out;
  push(out, c, { kind: 'percent_change', args: [subject.key, base.key] }, 'percent_change', 0, subject, sameChange, { base, sign: again.sign, firm: true });
  return out;
}

/** "the one gets 72 percent of what the other does": thing and base both stand in the clause. */
function sidesNamed(c: Context, index: number, found: readonly Candidate[]): boolean {
  const best = [...found].sort((a, b) => a.cost - b.cost)[0];
  if (!best?.firm || best.cost > 0.2 || !best.subject || !best.base) return false;
  const differing = c.grid.slots.flatMap((_, i) => (best.subject!.at[i] !== best.base!.at[i] ? [i] : []));
  return differing.some((i) => c.hits.hits.some((h) => h.segment === index && h.baseOf !== index && h.slot === i && h.value === best.subject!.at[i]));
}

function shareSure(c: Context, index: number): boolean {
  const words = baseWords(c, index);
  return ofNumberSaid(c, index).length > 0 || words.roles.length > 0 || words.leader || (words.pronoun && words.low.length === 1) || [...words.overrides.keys()].some((i) => c.grid.slots[i]!.field !== 'part');
}
