// "All of them are quieter in the barn than outside, the Larch by 1.4, the Elder by 1": what the comparison is with was said once,
// before any of its figures, and each goes with it.
import { comparatives } from '../script/index.js';
import { byBefore } from './by-how-much.js';
import type { Parsed } from './parse.js';

/** More words than these between the comparison and its first figure, and it is another's. */
const reach = 24;

const glue = /^(?:,|;|:|—|–|and|but|the|a|an|then|while|finally|lastly|decibels?|degrees?|watts?|percent|in|on|at|with|for)$/;

export function thanBefore(p: Parsed): void {
  let open: { from: number; to: number; word: string } | undefined;
  for (const [i, { mention: m, cue }] of p.said.entries()) {
    const by = byBefore(p.low, m.from);
    const goesOn = by > 0 && cue.op === 'change' && !cue.base && (m.type === 'cardinal' || m.unit !== undefined);
    if (!goesOn) { if (m.type === 'cardinal' && (m.unit || m.decimals > 0)) open = undefined; continue; }
    open ??= comparison(p, i, by);
    // A verb or an adjective of its own says of what else it is.
    const since = Math.max(open?.to ?? 0, p.said[i - 1]?.mention.to ?? 0);
    if (!open || !p.low.slice(since, by).every((w, k) => glue.test(w) || p.names.some((n) => n.from <= since + k && since + k < n.to))) { open = undefined; continue; }
    const { way, of } = comparatives.get(open.word)!;
    Object.assign(cue, { base: { from: open.from, to: open.to }, way, because: `${open.word} by`, ...(of.length && { of }) });
  }
}

function comparison(p: Parsed, i: number, by: number): { from: number; to: number; word: string } | undefined {
  const since = p.said.slice(0, i).findLast((s) => s.mention.unit !== undefined || s.mention.decimals > 0)?.mention.to ?? 0;
  const than = p.low.lastIndexOf('than', by);
  if (than < Math.max(since, by - reach)) return undefined;
  const to = p.low.findIndex((w, k) => k > than && /^[,:;—–]$/.test(w));
  const word = p.low.slice(Math.max(since, than - 6), than).findLast((w) => comparatives.has(w));
  return word === undefined || to < 0 || to >= by || p.low.slice(to, by).includes('than') ? undefined : { from: than + 1, to, word };
}
