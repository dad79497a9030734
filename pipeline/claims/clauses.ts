// Which words of a sentence belong to which mention: the stretch between the cuts before and after it.
import type { Mention, Token } from '../script/index.js';
import type { Name } from './lexicon.js';

export interface Segment {
  from: number;
  to: number;
}

const joining = new Set(['and', 'but', 'while', 'so', 'which', 'whereas', 'yet', 'then', 'because', 'though', 'although', 'or', 'where', 'when', 'that\'s', 'it\'s', 'plus', 'meaning', 'leaving', 'making', 'whilst', 'versus', 'against', 'until', 'before', 'after', 'with']);
const weak = new Set(['it\'s', 'that\'s', 'or', 'with', 'against', 'versus', 'before', 'after', 'when', 'until']);
const leading = new Set(['to', 'from', 'at', 'by', 'up', 'down', 'of']);

/** What leads from one share to the other that it comes with. */
export const bearing = new Set(['on', 'for', 'with', 'at', 'in', 'from', 'using', 'by', 'against', 'but', 'and']);

/** One segment for each mention, in order; together they cover the sentence. */
export function segments(t: readonly Token[], mentions: readonly Mention[], names: readonly Name[]): Segment[] {
  const starts = mentions.map((m, i) => (i === 0 ? 0 : cut(t, mentions[i - 1]!, m, names)));
  const first = mentions[0];
  // What is said before the last clause that leads to the first number belongs to none of them.
  if (first) for (let k = first.from - 1; k > 0; k--) if (strength(t, k, first.from) >= 5 && !names.some((n) => n.from < k && k < n.to)) { starts[0] = k; break; }
  return mentions.map((m, i) => ({ from: starts[i]!, to: ended(t, m, starts[i]!, starts[i + 1] ?? t.length) }));
}

const subordinate = new Set(['if', 'unless', 'although', 'though', 'because', 'since', 'whenever', 'once']);

/** A clause that follows without a number of its own is no part of the stretch: "if you can stand 38 decibels, leave it on fast". */
function ended(t: readonly Token[], m: Mention, from: number, to: number): number {
  const condition = subordinate.has(t[from]?.low ?? '') && !t.slice(from, m.from).some((w) => w.low === ',');
  for (let k = m.to; k < to; k++) {
    const s = strength(t, k, to);
    if ((condition && t[k]!.low === ',') || (s === 3 && t[k]!.low !== 'and') || (s === 5 && t[k]!.low === ',' && t[k + 1]!.low !== 'or' && t[k + 1]!.low !== 'with')) return k;
  }
  return to;
}

function cut(t: readonly Token[], a: Mention, b: Mention, names: readonly Name[]): number {
  // "from 31 on the one to 38"; but in "rose from 31 to 38, the other to 40" the 38 is no beginning.
  if (t[b.from - 1]?.low === 'to' && t[a.from - 1]?.low !== 'to' && b.from - 1 > a.to && t.slice(Math.max(0, a.from - 3), a.from).some((w) => w.low === 'from')) return b.from - 1;
  // "61 percent of the one's pace on 45 percent of its draw": each share has its own.
  const share = (m: Mention): boolean => m.unit?.id === '%' && t[m.to]?.low === 'of';
  if (share(a) && share(b) && bearing.has(t[b.from - 1]!.low)) return b.from - 1;
  let best = 0;
  let at = -1;
  for (let k = a.to; k < b.from; k++) {
    if (names.some((n) => n.from < k && k < n.to)) continue;
    const s = strength(t, k, b.from);
    if (s > best || (s === 1 && best === 1)) { best = s; at = k; }
  }
  // "the Dunfell's 1,390", "the Pellick 8", "its limit of 105": what stands right before a number goes with it.
  const own = names.find((n) => (n.to === b.from || (n.to === b.from - 1 && t[n.to]!.low === 'at' && /^(?:as|than|and|but|while|,)$/.test(t[n.from - (/^(?:the|a|my|our)$/.test(t[n.from - 1]!.low) ? 2 : 1)]?.low ?? '') && n.meanings.some((x) => x.fields.includes('setup')))) && n.from >= a.to && n.meanings.some((x) => x.own && x.slots.length > 0));
  const noun = own ? own.from : t[b.from - 1]?.low === 'of' && best <= 1 && b.from - 2 >= a.to ? b.from - 2 : -1;
  if (noun >= 0 && (at < 0 || best <= 1)) {
    let k = noun;
    while (k > a.to && /^(?:the|a|an|its|my|his|her|their|our|own|this|that)$/.test(t[k - 1]!.low)) k--;
    return k;
  }
  if (at >= 0) return at;
  // "four times the draw for one and a half times the rate": each has its own.
  const multiple = (m: Mention): boolean => m.type === 'multiplier' || m.type === 'fraction';
  if (multiple(a) && multiple(b)) for (let k = a.to + 1; k < b.from; k++) if (t[k]!.low === 'for') return k;
  // No joint: a phrase right after the first number stays with it ("78 minutes on the desk").
  const next = t[a.to]?.low ?? '';
  // … and "half again the draw buys 31 percent more light": what it is a multiple of.
  if (/^(?:on|in|at|for|with|under|of|behind|over|above|below|than|more|less|up|down|apart)$/.test(next) || (next === 'the' && a.type === 'multiplier')) {
    const name = names.find((n) => n.from > a.to - 1 && n.from <= a.to + 3 && n.to <= b.from);
    if (name) return name.to;
  }
  return a.to;
}

function strength(t: readonly Token[], k: number, end: number): number {
  const w = t[k]!.low;
  if (w === ';' || w === '—' || (w === '–' && !t[k]!.tight) || (w === '-' && !t[k]!.tight)) return 6;
  if (w === ':' && k < end - 1) return 6;
  if (w === '(' || w === ')') return 5;
  if (w === ',') return joining.has(t[k + 1]?.low ?? '') ? 5 : 4;
  // "5.4 now, 6.1 then": a time, and no joint.
  if (w === 'then' && (t[k - 1]?.kind === 'number' || t[k - 1]?.kind === 'word') && t[k + 1]?.kind !== 'word' && t[k + 1]?.kind !== 'number' && t[k + 1]?.low !== ',') return 0;
  if (joining.has(w)) return weak.has(w) ? 2 : 3;
  if (leading.has(w) && k >= end - 3) return 1;
  return 0;
}

/** How far what follows a mention can reach: to the next joint, past other numbers that stand inside ("99 percent of its 250 watt limit"). */
export function reach(t: readonly Token[], m: Mention, next?: Mention): number {
  const figure = next && comparedWithFigure(t, m, next);
  for (let k = m.to; k < t.length; k++) {
    if (strength(t, k, t.length) < 2 || (t[k]!.low === 'and' && t[k - 1]?.kind === 'number')) continue;
    // "short of its two hundred and ten"
    if (next && k >= next.from && k < next.to) continue;
    // "6 more than the 41 it had with the lid shut": all that is said of the figure is.
    if (!figure || k < next.to || !/^(?:with|before|after|when|until)$/.test(t[k]!.low)) return k;
  }
  return t.length;
}

/** "6 grams less than the 41 of the other": the next number is what the mention is compared with. */
function comparedWithFigure(t: readonly Token[], m: Mention, next: Mention): boolean {
  const between = t.slice(m.to, next.from).map((w) => w.low);
  if (/^(?:the|its|their|his|her|that|those)$/.test(between.at(-1) ?? '')) between.pop();
  return between.length <= 2 && /^(?:than|above|below|over|under|beyond|past)$/.test(between.at(-1) ?? '');
}
