// Percentage points between two percentages that the words state outright, so that no other reading is asked for.
//   "won 21 percent and the other 26, so they are 5 points apart"       the two said last, shares or changes
//   "a loss of 18 percent, six points worse than that of the mean"        the one said last, and the same of what is named
//   "49 percent of the limit, although on slow it is 4 points lower"       the same share elsewhere, and the one said last
import { isFact } from '../facts/index.js';
import { baseWords, changesOf } from './bases.js';
import { siblings } from './siblings.js';
import { type Candidate, type Context, polarity, signOf } from './context.js';
import { fit } from './decide.js';
import type { Cell } from './grid.js';
import { push } from './read-value.js';
import { evaluate, firstCell, substitute, type Term, valueOf } from './terms.js';

export function points(a: Term, b: Term): Term {
  return { kind: 'points', args: [a, b] };
}

/** Kinds of what is said in percent beside plain readings. */
const inPercent = new Set(['percent_of', 'percent_change']);

export function pointsSaid(c: Context, index: number): Candidate[] {
  const g = c.grid;
  const said = c.parsed.said[index]!;
  const ends = endToEnd(c, index);
  if (ends.length) return ends;
  const at = c.done.findLastIndex((x, k) => x !== undefined && !passing(c, k));
  const last = c.done[at];
  if (!c.done.some((x) => x?.fact.unit.id === '%')) return betweenSettings(c, index);
  if (!last || last.fact.unit.id !== '%' || !fit(c.parsed.said[at]!.mention, last)) return [];
  const subject = firstCell(g, last.term);
  const out: Candidate[] = [];
  if (!subject) return out;
  // "31 percent less than then, and its valve closes by nine points": of what is itself told in percent, and named.
  if (c.hits.hits.some((h) => h.slot === g.of.measure[0] && h.segment === index && h.baseOf < 0 && h.value !== subject.at[h.slot] && g.measureUnits.get(h.value)?.has('share'))) return out;
  const { way, because } = said.cue;
  // More of a share is better only where more of what it is of is.
  const sign = (cell: Cell): -1 | 0 | 1 => (last.kind === 'percent_change' || !/^(?:more|less|fewer|higher|lower|better|worse)$/.test(because) || ((way === 'better' || way === 'worse') && polarity(c, cell) <= 0) ? 0 : signOf(c, way, cell));
  // Than what is named: the same of that.
  if (said.cue.base) {
    if (!inPercent.has(last.kind)) return out;
    for (const change of changesOf(baseWords(c, index))) {
      const other = substitute(g, last.term, change);
      if (other) push(out, c, points(last.term, other), 'difference', 0, subject, 'between two percentages', { sign: sign(subject), firm: true });
    }
    const back = c.now.base && /^(?:before|earlier|last time|previously|then)$/.test(baseWords(c, index).low.join(' ')) ? substitute(g, last.term, new Map(c.now.base)) : undefined;
    if (back && !out.length) push(out, c, points(last.term, back), 'difference', 0.1, subject, 'as it was before', { sign: sign(subject) });
    return out;
  }
  // "… on slow that share is 4 points lower": elsewhere, against what was said.
  const named = new Map(c.hits.hits.filter((h) => h.segment === index && h.baseOf < 0 && ['setup', 'setting', 'workload'].includes(g.slots[h.slot]!.field) && subject.at[h.slot] && subject.at[h.slot] !== h.value).map((h) => [h.slot, h.value]));
  if (named.size && inPercent.has(last.kind)) {
    const other = substitute(g, last.term, named);
    const own = other && firstCell(g, other);
    if (other && own) push(out, c, points(other, last.term), 'difference', 0, own, 'between two percentages', { sign: sign(own), firm: true });
    return out;
  }
  const prior = priorTo(c, at, last);
  // "71 percent, where the one before had 84, so thirteen points less": the last said is what is compared with.
  const opens = c.parsed.low.slice(c.parsed.said[at]!.segment.from, c.parsed.said[at]!.mention.from).filter((w) => w !== ',').slice(0, 2).join(' ');
  const aside = /^(?:where|whereas|although|though|after|from|against|instead|compared|(?:up|down|coming) from)\b/.test(opens);
  if (prior) push(out, c, points(last.term, prior), 'difference', 0.05, subject, 'between the two said last', { sign: aside ? 0 : sign(subject), firm: true });
  return out;
}

/** "First to last, that's 3.1 points": between the two ends of what was said last. */
function endToEnd(c: Context, index: number): Candidate[] {
  const g = c.grid;
  const last = c.now.said[0];
  const cell = last?.kind === 'mean' ? firstCell(g, last) : undefined;
  const out: Candidate[] = [];
  if (!cell || cell.fixed || cell.unit.id !== '%' || !/^(?:from end to end|the whole field)$/.test(c.parsed.said[index]!.cue.because)) return out;
  const all = siblings(g, cell, g.of.setup).flatMap((x) => { const f = c.facts.value(x.key); return isFact(f) ? [{ x, v: f.value.toNumber() }] : []; }).sort((a, b) => a.v - b.v);
  if (all.length > 2) push(out, c, points(valueOf(all.at(-1)!.x.key), valueOf(all[0]!.x.key)), 'difference', 0, all.at(-1)!.x, 'from end to end', { firm: true });
  return out;
}

/** "Take 15 points off the fan, so switch to slow": from what is spoken of to what is named after it, of the percentage named beside. */
function betweenSettings(c: Context, index: number): Candidate[] {
  const g = c.grid;
  const { way } = c.parsed.said[index]!.cue;
  const out: Candidate[] = [];
  // "The opening on the Larch was 12 points above the median": it is said what from.
  if (baseWords(c, index).median) return out;
  for (const of of c.hits.hits) {
    if (of.slot !== g.of.measure[0] || of.segment !== index || !g.measureUnits.get(of.value)?.has('share')) continue;
    for (const h of c.hits.hits) {
      const now = c.now.topics[h.slot]![0];
      // … and not "its duty is 15 points higher than on slow".
      if (!['setting', 'setup'].includes(g.slots[h.slot]!.field) || h.baseOf === index || h.from < of.to || now === undefined || now === h.value || g.holders.has(h.value)) continue;
      const at = (value: string): Cell[] => g.byMeasure.get(of.value)!.filter((x) => x.unit.id === '%' && x.at[h.slot] === value);
      const [to, from] = [at(h.value), at(now)];
      if (to.length === 1 && from.length === 1) push(out, c, points(valueOf(to[0]!.key), valueOf(from[0]!.key)), 'difference', 0, to[0], 'from what is spoken of', { sign: signOf(c, way, to[0]!), firm: true, base: from[0]! });
    }
  }
  return out;
}

/** A number that is a name, or that only says what a share is of: "49 percent of the 90 on the label". */
function passing(c: Context, k: number): boolean {
  const { named, mention } = c.parsed.said[k]!;
  return named !== undefined || c.parsed.said.some(({ cue }, i) => i < k && cue.op === 'share' && cue.base && mention.from >= cue.base.from && mention.from < cue.base.to);
}

/** What was said in percent before the last, in the same way: in this sentence, or at the end of the one before. */
function priorTo(c: Context, at: number, last: Candidate): Term | undefined {
  for (let k = at - 1; k >= 0; k--) {
    if (passing(c, k)) continue;
    const x = c.done[k];
    return x && x.fact.unit.id === '%' && x.kind === last.kind && fit(c.parsed.said[k]!.mention, x) ? x.term : undefined;
  }
  if (!inPercent.has(last.kind)) return undefined;
  const other = c.before.said[0];
  return other?.kind === last.term.kind && evaluate(c.facts, other)?.unit.id === '%' ? other : undefined;
}
