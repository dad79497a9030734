// What a multiple is said to be of, in words alone.
import { gradables, type Mention } from '../script/index.js';

/** "a ratio of 2.4", "by a factor of 2.6", "that ratio is 1.6": a bare number that such a noun gives. A ratio of a kind ("contrast ratio", "3,000 to 1") is a quantity that is measured. */
export function namesRatio(low: readonly string[], m: Mention): boolean {
  if (m.type !== 'cardinal' || m.unit || low[m.to] === 'to') return false;
  let k = m.from - 1;
  while (/^(?:about|around|roughly|nearly|almost|just|over|under|only|exactly|well|some|comes|out|at|to)$/.test(low[k] ?? '')) k--;
  return /^(?:of|is|was|:)$/.test(low[k] ?? '') && /^(?:ratio|factor|quotient)$/.test(low[k - 1] ?? '') && /^(?:a|an|the|that|this|same|its|their|whose|:|,)$/.test(low[k - 2] ?? '');
}

/** "multiplies the flow by 2.6": the verb may stand before a cut. */
export function multipliedBy(low: readonly string[], m: Mention): boolean {
  if (low[m.from - 1] !== 'by') return false;
  const clause = low.slice(Math.max(0, m.from - 18), m.from);
  return clause.slice(clause.findLastIndex((w) => /^[;:.—–]$/.test(w)) + 1).some((w) => /^multipl(?:y|ies|ied)$/.test(w));
}

/** "as much power as", "as far from idle as": where the second "as" stands, which opens what is compared with; -1 where there is none. */
export function secondAs(low: readonly string[], m: Mention, end: number): number {
  if (low[m.to] !== 'as') return -1;
  for (let k = m.to + 2; k < Math.min(end, m.to + 10); k++) {
    if (low[k] === 'as') return k;
    if (/^[,;:.]$/.test(low[k]!)) return -1;
  }
  return -1;
}

/** How what follows a multiple goes on: it says nothing more, it takes up "that", or it names what it is of. */
export function tailOf(low: readonly string[], m: Mention, end: number): { ends: boolean; adjective?: string } {
  const closes = (k: number): boolean => k >= Math.min(end, low.length) || /^(?:[,;:.!?)—–-]|and|but|so|while|for|in|on|at|there|here|now|then|overall|again)$/.test(low[k]!);
  const { to } = m;
  if (low[to] === 'as' && low[to + 1]) return { ends: secondAs(low, m, end) < 0, adjective: low[to + 1]! };
  if (closes(to)) return { ends: true };
  const that = low[to] === 'of' ? to + 1 : to;
  return { ends: low[that] === 'that' && closes(that + 1) };
}

/** "a third more", "half as much again": what is added, and no multiple. */
export function addsTo(low: readonly string[], m: Mention): boolean {
  return low.slice(m.to, m.to + 4).includes('again') || /^(?:more|less|fewer|extra|better|worse|higher|lower|faster|slower|longer|shorter|heavier|lighter|brighter|bigger|larger|smaller)$/.test(low[m.to] ?? '');
}

/** The dimensions that "as bright", "as long" speak of; none where the word fits any. */
export function spokenBy(adjective: string | undefined): readonly string[] {
  return adjective ? gradables.get(adjective)?.of ?? [] : [];
}
