// All numeric mentions of one sentence: the number with its unit, its hedge, and why it is no claim where that can be told from the words alone.
import { Exact, type Unit, unit } from '../quantities/index.js';
import { comparatives, type Comparison, superlatives } from './comparisons.js';
import { type Hedge, hedges } from './hedges.js';
import { idle } from './idioms.js';
import { findNumbers, type NumberSpan } from './numbers.js';
import type { Token } from './tokens.js';
import { unitAt, type UnitSpan } from './unit-words.js';
import { joinHalves } from './unit-and-half.js';
import { unitsOnwards } from './units-onwards.js';

export interface Mention {
  /** Token indices of number and unit, the end exclusive. */
  from: number;
  to: number;
  /** Offsets into the sentence. */
  start: number;
  end: number;
  type: NumberSpan['type'] | 'superlative';
  value: Exact;
  decimals: number;
  step?: Exact;
  form: 'digits' | 'words';
  /** Its own unit, or that said once for the list it stands in. */
  unit?: Unit;
  /** "degrees" alone. */
  loose: boolean;
  adjectival: boolean;
  sharedUnit: boolean;
  hedge?: Hedge;
  superlative?: Comparison;
  /** Put together of two: "ten hours and eleven minutes". */
  composed?: boolean;
  /** Why it states nothing, as far as the words alone tell. */
  idle?: string;
}

export function findMentions(t: readonly Token[], numbers: readonly NumberSpan[] = findNumbers(t)): Mention[] {
  const out: Mention[] = [];
  for (let k = 0; k < numbers.length; k++) {
    const n = numbers[k]!;
    // The second of "frames per second" belongs to the unit.
    if (n.from < (out.at(-1)?.to ?? 0)) continue;
    if (n.type === 'ordinal') {
      const best = superlativeAt(t, n.to);
      if (best) {
        out.push({ ...mention(t, n, undefined), to: best.to, end: t[best.to - 1]!.end, type: 'superlative', superlative: best.comparison });
        continue;
      }
    }
    const measured = n.type === 'fraction' ? fractionUnit(t, n) : unitAt(t, n.to, isOne(n)) ?? (n.decimals > 0 && n.value.compare(Exact.of(1)) < 0 && t[n.to]?.low === 'of' ? fractionUnit(t, n) : undefined);
    // "one of the four" counts, "one of those" does not.
    const counts = t[n.to]?.low === 'of' && numbers[k + 1]?.type === 'cardinal' && numbers[k + 1]!.from - n.to <= 3;
    if (n.to - n.from === 1 && t[n.from]!.low === 'one' && (!measured || measured.unit.id === 's') && !counts) continue;
    // "500 more rpm": the unit of the number; what lies between says that it is a change.
    const later = !measured && n.type === 'cardinal' && /^(?:more|fewer|less|extra|additional|further)$/.test(t[n.to]?.low ?? '') ? unitAt(t, n.to + 1, isOne(n)) : undefined;
    // "all nine of those degrees": so many degrees, and no count of anything else.
    const part = !measured && !later && n.type === 'cardinal' && t[n.to]?.low === 'of' && /^(?:those|these|the|its|your|our|my|their)$/.test(t[n.to + 1]?.low ?? '') ? unitAt(t, n.to + 2, isOne(n)) : undefined;
    const why = idle(t, n, measured ?? later);
    const found = mention(t, n, measured);
    if (later && !later.adjectival && later.unit.id !== 'x') Object.assign(found, { unit: later.unit, loose: later.loose });
    if (part && !part.adjectival && part.unit.id !== '%' && part.unit.id !== 'x') Object.assign(found, { unit: part.unit, loose: part.loose });
    if (why) found.idle = why;
    out.push(found);
  }
  for (let i = 0; i < t.length; i++) {
    const best = superlativeAt(t, i);
    if (best && !out.some((m) => m.from <= i && i < m.to)) {
      out.push({ ...blank(t, i, best.to), type: 'superlative', value: Exact.of(1), superlative: best.comparison });
      i = best.to - 1;
    }
    const article = articleUnit(t, i);
    if (article) out.push(article);
    const last = lastPlace(t, i);
    if (last) out.push(last);
  }
  out.sort((a, b) => a.from - b.from);
  joinHalves(t, out, (from, to) => blank(t, from, to));
  joinTimes(t, out);
  shareUnits(t, out);
  unitsOnwards(t, out);
  for (const m of out) if (m.type !== 'superlative' && m.type !== 'ordinal') m.hedge = hedgeOf(t, m, out);
  return out;
}

function blank(t: readonly Token[], from: number, to: number): Mention {
  return { from, to, start: t[from]!.start, end: t[to - 1]!.end, type: 'cardinal', value: Exact.of(1), decimals: 0, form: 'words', loose: false, adjectival: false, sharedUnit: false };
}

function mention(t: readonly Token[], n: NumberSpan, u: UnitSpan | undefined): Mention {
  const fold = u?.unit.id === 'x';
  const out = blank(t, n.from, u ? u.to : n.to);
  out.type = fold ? 'multiplier' : n.type === 'fraction' && u ? 'cardinal' : n.type;
  out.value = n.value;
  out.decimals = n.decimals;
  out.form = n.form;
  out.loose = u?.loose ?? false;
  out.adjectival = u?.adjectival ?? false;
  const step = n.step ?? (n.type === 'fraction' && u && n.decimals === 0 ? Exact.of(1n, n.value.d) : undefined);
  if (step) out.step = step;
  if (u && !fold) out.unit = u.unit;
  return out;
}

function isOne(n: NumberSpan): boolean {
  return n.value.equals(Exact.of(1));
}

/** "half a degree", "a quarter of a volt", "four tenths of a degree". */
function fractionUnit(t: readonly Token[], n: NumberSpan): UnitSpan | undefined {
  let i = n.to;
  if (t[i]?.low === 'of') i++;
  if (t[i]?.low !== 'a' && t[i]?.low !== 'an') return i === n.to ? unitAt(t, i, true) : undefined;
  return unitAt(t, i + 1, true);
}

function superlativeAt(t: readonly Token[], i: number): { comparison: Comparison; to: number } | undefined {
  const j = t[i]?.low === '-' ? i + 1 : i;
  const w = t[j];
  if (!w || w.kind !== 'word') return undefined;
  const comparison = superlatives.get(w.low);
  if (!comparison || /^(?:top|lead|leading|winning)$/.test(w.low)) return undefined;
  if (/^(?:at|of)$/.test(t[j - 1]?.low ?? '') && /^(?:least|most|best|worst)$/.test(w.low)) return undefined;
  return { comparison, to: j + 1 };
}

const finer: Record<string, string> = { h: 'min', min: 's' };

/** "ten hours and eleven minutes", "an hour and thirty-four": one time, in the finer unit. */
function joinTimes(t: readonly Token[], list: Mention[]): void {
  for (let i = 0; i < t.length; i++) {
    const w = t[i]!.low;
    if ((w === 'an' || w === 'a') && /^(?:hour|minute)$/.test(t[i + 1]?.low ?? '') && t[i + 2]?.low === 'and' && list.some((m) => m.from === i + 3 && m.type === 'cardinal' && (!m.unit || m.unit.id === finer[t[i + 1]!.low === 'hour' ? 'h' : 'min']))) {
      list.push({ ...blank(t, i, i + 2), unit: unit(t[i + 1]!.low === 'hour' ? 'h' : 'min') });
    }
  }
  list.sort((a, b) => a.from - b.from);
  for (let k = 0; k + 1 < list.length; k++) {
    const [a, b] = [list[k]!, list[k + 1]!];
    const small = a.unit && finer[a.unit.id];
    if (!small || a.type !== 'cardinal' || b.type !== 'cardinal' || a.decimals || a.step || b.decimals || b.idle || (b.unit && b.unit.id !== small) || b.value.compare(Exact.of(60)) >= 0) continue;
    const gap = t.slice(a.to, b.from).map((x) => x.low).join(' ');
    if (gap !== 'and' && gap !== '' && gap !== ',') continue;
    // "an hour and a half, ten minutes more than the other": how long, and how much longer.
    if (a.step || (gap === ',' && comparatives.has(t[b.to]?.low ?? ''))) continue;
    if (!b.unit && (gap !== 'and' || a.value.compare(Exact.of(24)) > 0)) continue;
    list.splice(k, 2, { ...a, to: b.to, end: b.end, value: a.value.times(Exact.of(60)).plus(b.value), unit: unit(small), composed: true });
  }
}

/** "less than a degree": the article as one, only after a hedge. */
function articleUnit(t: readonly Token[], i: number): Mention | undefined {
  if (t[i]!.low !== 'a' && t[i]!.low !== 'an') return undefined;
  const u = unitAt(t, i + 1, true);
  // "promises an hour": what is said of a thing, where "for an hour" only passes.
  if (u?.unit.dimension === 'duration' && /^(?:promises?|promised|claims?|claimed|says|needs|needed|manages?|managed)$/.test(t[i - 1]?.low ?? '')) return { ...blank(t, i, u.to), unit: u.unit, loose: u.loose };
  if (!u || u.unit.dimension === 'count' || u.unit.dimension === 'duration' || !(hedgeBefore(t, i) || compared(t, i, u.to))) return undefined;
  return { ...blank(t, i, u.to), unit: u.unit, loose: u.loose };
}

/** "is only a decibel over the other", "a volt more than that". */
function compared(t: readonly Token[], from: number, to: number): boolean {
  const [before, after] = [t[from - 1]?.low ?? '', t[to]?.low ?? ''];
  return /^(?:only|just|barely|by|is|was|are|were|it's|that's|sits?|sat|ends?|ended|lands?|stays?|stayed|even)$/.test(before) && (comparatives.has(after) || /^(?:over|under|above|below|ahead|behind|apart|short|shy|off|up|down)$/.test(after));
}

/** "Tessaly last": the last place of a ranking. */
function lastPlace(t: readonly Token[], i: number): Mention | undefined {
  const w = t[i]!;
  // "… and last the Alder with 3"
  const told = w.low === 'last' && /^(?:and|,|then)$/.test(t[i - 1]?.low ?? '') && t[i + 1]?.low === 'the' && /^\p{Lu}/u.test(t[i + 2]?.text ?? '');
  if (told) return { ...blank(t, i, i + 1), type: 'ordinal', value: Exact.of(-1) };
  if (w.low !== 'last' || !/^(?:place|\.|,|;|!|of|in|by|with|and|on|at)?$/.test(t[i + 1]?.low ?? '')) return undefined;
  if (t[i - 1]?.low === 'at' || t[i - 1]?.low === 'the' && t[i + 1]?.low !== 'place' || t[i + 1]?.low === 'of' && t[i + 2]?.low === 'all') return undefined;
  return { ...blank(t, i, t[i + 1]?.low === 'place' ? i + 2 : i + 1), type: 'ordinal', value: Exact.of(-1) };
}

const separators = new Set([',', 'and', 'or', 'to', '-', '–', '—', '/', 'then', '&', 'versus', 'vs', 'through']);

/** "eighty-one and seventy-nine degrees", "between 61 and 64 watts", "from 9.3 at idle to 18.6 watts". */
function shareUnits(t: readonly Token[], list: Mention[]): void {
  for (let k = list.length - 2; k >= 0; k--) {
    const a = list[k]!;
    const b = list[k + 1]!;
    if (a.unit || !b.unit || a.type !== 'cardinal' || b.type !== 'cardinal' || a.idle || b.adjectival) continue;
    // "from 85 to 84, and 49.6 decibels": where a change ends, a list does not begin.
    if (t[a.from - 1]?.low === 'to' && t[b.from - 1]?.low !== 'to' && list[k - 1] && t[list[k - 1]!.from - 1]?.low === 'from' && list[k - 1]!.type === 'cardinal') continue;
    if (b.unit.id === '%' && t.slice(a.to, b.from).some((w) => w.low === 'or') && t.slice(a.to, b.from).some((w) => w.low === ',')) continue;
    // "a fall of 84 or 6 percent": a figure, and the same in percent; "5 or 6 percent" is one that is not sure.
    if (b.unit.id === '%' && t.slice(a.to, b.from).some((w) => w.low === 'or') && (a.decimals !== b.decimals || unlike(a.value, b.value))) continue;
    // "It takes 44, and 91 percent of it comes out": a figure, and a share of it.
    if (b.unit.id === '%' && t[b.to]?.low === 'of' && /^(?:it|that|this)$/.test(t[b.to + 1]?.low ?? '')) continue;
    // "41.0, a mere 60 percent of its rival": a figure, and then its share.
    const gap = t.slice(a.to, b.from).map((w) => w.low);
    if (b.unit.id === '%' && gap[0] === ',' && !gap.some((w) => /^(?:and|or|to|then|&|-|–|—)$/.test(w)) && list[k + 2]?.unit?.id !== b.unit.id && (gap.length > 1 || a.form !== b.form || a.decimals !== b.decimals || /^(?:of|more|less|fewer|behind|ahead|above|below|up|down|higher|lower|faster|slower|off|short|shy|adrift|clear|under|over|past|beyond|better|worse|cooler|warmer|hotter|colder|quieter|louder|heavier|lighter|longer|shorter|quicker)$/.test(t[b.to]?.low ?? ''))) continue;
    // "73, 8 points fewer": points after a comma are a figure of their own.
    if (b.unit.id === 'points' && t.slice(a.to, b.from).some((w) => w.low === ',') && !t.slice(a.to, b.from).some((w) => w.low === 'and' || w.low === 'or') && list[k + 2]?.unit?.id !== 'points') continue;
    // "93 against 88, 6 percent": two that are set against each other are no list with what follows.
    const before = list[k - 1];
    if (gap.length === 1 && gap[0] === ',' && before && !before.unit && a.from - before.to === 1 && /^(?:versus|vs|against|to)$/.test(t[before.to]!.low)) continue;
    // "27.6 watts against 22.8, and 46.9 degrees": in the unit of what it is set against.
    if (gap[0] === ',' && before?.unit && !before.sharedUnit && a.from - before.to === 1 && /^(?:versus|vs|against)$/.test(t[before.to]!.low)) continue;
    let tight = true;
    for (let i = a.to; i < b.from && tight; i++) tight = separators.has(t[i]!.low) || hedgeWord.has(t[i]!.low);
    // "at 64 and 31.7 decibels": said to another place, it is of another quantity.
    if (tight && a.form === 'digits' && a.decimals === 0 && b.decimals > 0 && b.from - a.to === 1 && t[a.to]!.low === 'and' && list[k - 1]?.unit?.id !== b.unit.id && t[a.from - 1]?.low !== 'between') continue;
    // "The Cobble is at 33, and 39.9 decibels": a comma before "and" joins no two.
    if (tight && gap.length === 2 && gap[0] === ',' && gap[1] === 'and' && a.decimals !== b.decimals && !(before && a.from - before.to <= 2 && t[before.to]?.low === ',')) continue;
    // "the one with four, and 7.2 decibels": words and digits make no list.
    if (tight && a.form !== b.form && a.decimals === 0 && b.decimals > 0) continue;
    // "32.5, and over six hours": nor across a comma the other way round.
    if (tight && a.form !== b.form && a.decimals > 0 && b.decimals === 0 && gap[0] === ',') continue;
    // "memory 82, 38.4 decibels": a comma alone joins only what is said alike.
    if (tight && b.from - a.to === 1 && t[a.to]!.low === ',' && a.decimals !== b.decimals && list[k + 2]?.unit?.id !== b.unit.id) continue;
    if (!tight && !(t[a.from - 1]?.low === 'from' && t[b.from - 1]?.low === 'to' && b.from - a.to <= 6)) continue;
    Object.assign(a, { unit: b.unit, loose: b.loose, sharedUnit: true });
  }
  for (let k = 1; k + 1 < list.length; k++) endsOfChange(t, list[k - 1]!, list[k]!, list[k + 1]!);
}

/** So far from each other that nobody is in doubt between them. */
function unlike(a: Exact, b: Exact): boolean {
  const [p, q] = [a.abs().toNumber(), b.abs().toNumber()];
  return Math.max(p, q) > 1.7 * Math.min(p, q);
}

/** "rose 29 degrees, from 38 at idle to 67 under load": the ends are in the unit of the change. */
function endsOfChange(t: readonly Token[], change: Mention, a: Mention, b: Mention): void {
  const u = change.unit;
  if (!u || a.unit || b.unit || a.type !== 'cardinal' || b.type !== 'cardinal' || a.idle || b.idle || change.adjectival) return;
  if (u.dimension === 'share' || u.dimension === 'points' || (u.dimension === 'temperature-difference' && u.id !== 'K')) return;
  if (t[a.from - 1]?.low !== 'from' || t[b.from - 1]?.low !== 'to' || b.from - a.to > 7) return;
  for (let i = change.to; i < a.from - 1; i++) if (!/^[,:—–-]$/.test(t[i]!.low)) return;
  for (const end of [a, b]) Object.assign(end, { unit: u, loose: change.loose, sharedUnit: true });
}

const hedgeWord = new Set(['about', 'around', 'roughly', 'nearly', 'almost', 'just', 'under', 'over', 'only', 'respectively', 'then']);
const skipped = new Set(['a', 'an', 'the', 'only', 'another', 'full', 'whole', 'good', 'further', 'his', 'her', 'its', 'as']);
/** Hedges that are relations too: after a figure or a comparative they say what it is compared with. */
const relational = new Set(['under', 'below', 'over', 'above', 'short of', 'shy of', 'inside', 'past', 'beyond', 'near', 'north of', 'south of', 'like', 'some', 'up to']);

interface Tail { hedge: Hedge; words: string[]; text: string }
const byLast = new Map<string, Tail[]>();
const byFirst = new Map<string, Tail[]>();
for (const h of hedges) {
  for (const text of h.words) {
    const words = text.split(' ');
    const table = h.after ? byFirst : byLast;
    const key = h.after ? words[0]! : words.at(-1)!;
    const rows = table.get(key) ?? [];
    rows.push({ hedge: h, words, text });
    rows.sort((a, b) => b.words.length - a.words.length);
    table.set(key, rows);
  }
}

function hedgeBefore(t: readonly Token[], from: number, all: readonly Mention[] = []): Hedge | undefined {
  for (let end = from; end > 0; end--) {
    for (const { hedge, words, text } of byLast.get(t[end - 1]!.low) ?? []) {
      const begin = end - words.length;
      if (begin < 0 || !words.every((w, k) => t[begin + k]!.low === w)) continue;
      // "it hands over 61 grams", "it turned over 30": the word belongs to the verb.
      if (text === 'over' && /^(?:hand|turn|pass|carr[yi]|deliver|bring|send|sign|ship|push)(?:e?s|ed|ing)?$|^(?:brought|sent)$/.test(t[begin - 1]?.low ?? '')) return undefined;
      // "6 grams less than the 48 of the other", "eight short of the 53": by so much it differs from what follows.
      if ((relational.has(text) || /^(?:more|less|fewer|greater) than$/.test(text)) && all.some((m) => m.to === begin && (m.type === 'cardinal' || m.type === 'fraction'))) return undefined;
      if (relational.has(text)) {
        const before = t[begin - 1];
        if (before && (before.kind === 'number' || relationBefore.test(before.low))) return undefined;
        if (text === 'up to' && /^(?:go|goes|went|gone|going|climbs?|climbed|rises?|rose|risen|shoots?|shot|jumps?|jumped|creeps?|crept|creeping|edge[sd]?|inch(?:es|ed)?|ticks?|ticked|nudge[sd]?|bumps?|bumped|grows?|grew|leaps?|leapt|heats?|heated|warms?|warmed|speeds?|sped|steps?|stepped|crawl(?:s|ed)?|drift(?:s|ed)?|work(?:s|ed)?|back|comes?|came|moves?|moved|brings?|brought|takes?|took|raises?|raised|turn(?:s|ed)?|pushe[sd]|push|gets|got|all|way|right)$/.test(before?.low ?? '')) return undefined;
        // "from 31.3 on gentle up to 39": where it ends.
        if (text === 'up to' && all.some((m) => m.to <= begin && begin - m.to <= 4 && t[m.from - 1]?.low === 'from' && t.slice(m.to, begin).every((w) => w.kind === 'word'))) return undefined;
        if (text === 'like' && !/^(?:is|was|'s|at|more|something|sat|sits|draws|pulls)$/.test(before?.low ?? '')) return undefined;
      }
      return hedge;
    }
    if (!skipped.has(t[end - 1]!.low)) return undefined;
  }
  return undefined;
}
const relationBefore = /^(?:degrees?|watts?|percent|%|decibels?|points?|megahertz|hertz|volts?|millivolts?|kelvin|rpm|fps|grams?|minutes?|seconds?|dB\(A\)|W|K|°C|V|mV|well|higher|lower|wh|hours?|up|down|places?)$/i;

function hedgeOf(t: readonly Token[], m: Mention, all: readonly Mention[]): Hedge | undefined {
  const before = hedgeBefore(t, m.from, all);
  if (before) return before;
  for (const at of [m.to, t[m.to]?.low === '-' ? m.to + 1 : m.to, m.to + 1]) {
    if (at === m.to + 1 && t[m.to]?.kind !== 'word') continue;
    for (const { hedge, words } of byFirst.get(t[at]?.low ?? '') ?? []) {
      if (at === m.to + 1 && !/^(?:or|give|and)$/.test(words[0]!)) continue;
      if (words.every((w, k) => t[at + k]?.low === w)) return hedge;
    }
  }
  return undefined;
}
