// What a sentence says outright to have a place in a ranking.
//   "3.7 above the Pavett, which is the coolest"          the thing named right before
//   "The quietest of the three is the 280, with …"        the thing named right behind the verb
//   "Quietest: the 280, …"                                … or the colon
import type { Context } from './context.js';

export interface Meant { slot: number; value: string }

/** The thing named right before "which is the …". */
export function relative(c: Context, index: number): Meant[] {
  const { segment } = c.parsed.said[index]!;
  const { low } = c.parsed;
  if (low[segment.from] !== ',' || !/^(?:which|who|that)$/.test(low[segment.from + 1] ?? '')) return [];
  const hit = c.hits.hits.find((h) => h.to <= segment.from && h.to >= segment.from - 2 && thing(c, h.slot));
  return hit ? [hit] : [];
}

/** "The lightest, at 415, the Osk": behind the figure that it has. */
function behindFigure(c: Context, index: number): number {
  const { mention: m, segment } = c.parsed.said[index]!;
  const next = c.parsed.said[index + 1]?.mention;
  const { low } = c.parsed;
  return next && !c.hits.hits.some((h) => h.from >= segment.from && h.to <= m.from && thing(c, h.slot)) && low[m.to] === ',' && /^(?:at|with|on)$/.test(low[m.to + 1] ?? '') && next.from === m.to + 2 && low[next.to] === ',' ? next.to : -1;
}

/** More words than this between the place and its verb, and the verb may be another's. */
const reach = 7;

/** The thing, and the setting that stands with it, behind "is", "was", "remains". */
export function saidToBe(c: Context, index: number): Meant[] {
  const { mention: m } = c.parsed.said[index]!;
  const { low } = c.parsed;
  const verb = low.findIndex((w, k) => k >= m.to && k < m.to + reach && /^(?:is|was|remains|remained|stays|stayed|:)$/.test(w));
  const figure = behindFigure(c, index);
  if (figure > 0) return namedAt(c, figure + 1);
  if (verb < 0 || low.slice(m.to, verb).some((w) => /^(?:[,;:]|and|but|that|which|who|while)$/.test(w)) || c.hits.hits.some((h) => h.from >= m.to && h.from < verb && thing(c, h.slot))) return [];
  return namedAt(c, verb + 1);
}

/** What is named at a word, articles aside, with the setting that stands behind it. */
function namedAt(c: Context, start: number): Meant[] {
  const { low } = c.parsed;
  let at = start;
  while (/^(?:the|my|our|still|again|now|of|course|clearly|then|once|more|always|,)$/.test(low[at] ?? '')) at++;
  const first = c.hits.hits.filter((h) => h.from <= at && at < h.to && thing(c, h.slot));
  if (!first.length) return [];
  const end = Math.max(...first.map((h) => h.to));
  const after = c.hits.hits.filter((h) => !first.some((f) => f.slot === h.slot) && h.from >= end && h.from <= end + 2 && thing(c, h.slot) && /^(?:with|on|in|at|under|without|the|)$/.test(low[h.from - 1] ?? '') && !low.slice(end, h.from).includes(','));
  return [...first, ...after];
}

function thing(c: Context, slot: number): boolean {
  return ['setup', 'setting'].includes(c.grid.slots[slot]!.field);
}
