// A change that was just said, said again in percent: "1.9 watts more, which makes 40 percent", "from 60 to 75, or 25 percent",
// "up 12, to 60, a quarter more".
import { type Candidate, type Context, signOf } from './context.js';
import { fit } from './decide.js';
import type { Cell } from './grid.js';
import { pairWith, push } from './read-value.js';

export const sameChange = 'the same change in percent';

/** The figure before this one; a number that is the name of a setting ("higher than at 8 watts, or 110 percent") is none. */
export function figureLast(c: Context, index: number): number {
  let k = index - 1;
  while (k > 0 && c.parsed.said[k]!.named) k--;
  return k;
}

interface Said { subject: Cell; base: Cell; sign: -1 | 0 | 1; right: boolean }

/** The change that the figures right before give: as such, with where it ended behind it, or as its two ends. */
export function changeBefore(c: Context, index: number): Said | undefined {
  const at = figureLast(c, index);
  if (index === 0) return alone(c);
  const [first, last] = [c.done[at - 1], c.done[at]];
  const right = (k: number): boolean => fit(c.parsed.said[k]!.mention, c.done[k]!);
  const change = (x: Candidate | undefined): boolean => x !== undefined && (x.kind === 'difference' || x.kind === 'rise') && x.base !== undefined && x.subject !== undefined;
  if (change(last)) return { subject: last!.subject!, base: last!.base!, sign: last!.sign, right: right(at) };
  if (last?.term.kind !== 'mean' || !last.subject || !first?.subject || !right(at) || !right(at - 1)) return undefined;
  if (change(first) && first.subject === last.subject && c.parsed.said[at]!.mention.from - c.parsed.said[at - 1]!.mention.to <= 3) return { subject: first.subject, base: first.base!, sign: first.sign, right: true };
  const ends = first.term.kind === 'mean' && first.subject !== last.subject && !first.subject.fixed && pairWith(c, at)?.second === at;
  return ends ? { subject: last.subject, base: first.subject, sign: signOf(c, c.parsed.said[index]!.cue.way, last.subject), right: true } : undefined;
}

/** "It is 6.6 watts under the other. Ten percent.": a sentence of nothing else, right after a change. */
function alone(c: Context): Said | undefined {
  const last = c.now.said[0];
  const { low, said } = c.parsed;
  if (said.length !== 1 || c.now.figureAge > 1 || (last?.kind !== 'difference' && last?.kind !== 'rise') || c.hits.hits.length > 0 || low.length > 9 || !low.slice(0, said[0]!.mention.from).every((w) => bare.test(w)) || !low.slice(said[0]!.mention.to).every((w) => bare.test(w))) return undefined;
  const [subject, base] = last.args.map((a) => (typeof a === 'string' ? c.grid.byKey.get(a) : undefined));
  return subject && base && { subject, base, sign: 0, right: true };
}

const bare = /^(?:[.,!?…—–-]|that's|that|it's|is|or|so|which|makes|a|an|just|only|about|around|roughly|nearly|almost|over|under|some|good|full|call|it|well|yes|ouch|in|other|words)$/;

/** What only says how closely a number is meant. */
const softened: ReadonlySet<string> = new Set('about roughly nearly almost around just over under above below more less than well slightly barely hardly close to only exactly a an good bit little touch shade full some'.split(' '));

/** Nothing but the change just said, and rightly, in percent. */
export function restatesChange(c: Context, index: number): boolean {
  if (!changeBefore(c, index)?.right || !sameInPercent(c, index).length) return false;
  if (index === 0) return true;
  const gap = c.parsed.low.slice(c.parsed.said[index - 1]!.mention.to, c.parsed.said[index]!.mention.from);
  // "4.2 watts less than before, 20 percent, and …", "from 41 to 50, nearly 22 percent": set beside it, and nothing more.
  const m = c.parsed.said[index]!.mention;
  if (gap.length <= 12 && gap.findLast((w) => !softened.has(w)) === ',' && /^(?:[,.;:!?)]|and)$/.test(c.parsed.low[m.to] ?? '.') && !gap.slice(0, gap.lastIndexOf(',')).some((w) => /^(?:[,;:]|and|but|while|so)$/.test(w))) return true;
  return gap.length <= 9 && /^(?:or|makes|is|that's|i\.e|ie|so|call)$/.test(gap.filter((w, k) => w !== ',' && !softened.has(w) && !(w === 'it' && gap[k - 1] === 'call')).at(-1) ?? '');
}

/** "18 gone for the one and 11 for the other, or, in percent, 24 and 17": each of its own. */
function pairedChange(c: Context, index: number): Said | undefined {
  const pair = c.hits.paired.get(index);
  const k = pair ? c.done.findIndex((d) => (d?.kind === 'difference' || d?.kind === 'rise') && d.base && pair.every(({ slot, value }) => d.subject?.at[slot] === value)) : -1;
  const d = c.done[k];
  return d && { subject: d.subject!, base: d.base!, sign: d.sign, right: fit(c.parsed.said[k]!.mention, d) };
}

/** "17 less, or 45 percent": the change just said, as a percentage. */
export function sameInPercent(c: Context, index: number): Candidate[] {
  const out: Candidate[] = [];
  const again = pairedChange(c, index) ?? changeBefore(c, index);
  const m = c.parsed.said[index]!.mention;
  const own = c.hits.hits.some((h) => h.segment === index && h.from < m.to + 3 && c.grid.slots[h.slot]!.field !== 'measure');
  if (!own && again) push(out, c, { kind: 'percent_change', args: [again.subject.key, again.base.key] }, 'percent_change', 0, again.subject, sameChange, { base: again.base, sign: again.sign });
  return out;
}
