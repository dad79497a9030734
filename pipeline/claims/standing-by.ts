// Names that belong to another number than the one whose stretch they stand in.
import { stretch } from '../script/index.js';
import type { Grid } from './grid.js';
import type { Name } from './lexicon.js';
import type { Parsed } from './parse.js';

/** "31.2 at sixty watts, 36.4 at eighty": a number that is a name, and stands with the figure before it. */
export function standingBy(g: Grid, p: Parsed, n: Name): number | undefined {
  if (p.said.length < 2 && !p.said[0]?.cue.whose) return undefined;
  // "Most is lost by the Ashlar, 6 watts": whose change it is.
  const owned = p.said.findIndex(({ cue }) => cue.whose && cue.whose.from <= n.from && n.to <= cue.whose.to);
  if (owned >= 0) return owned;
  // "was at 97 percent of its 60 watt cap with the fan off": a share is where it is, and no cap.
  const share = p.said.findIndex(({ cue }, i) => cue.op === 'share' && cue.base !== undefined && cue.base.to <= n.from && insideBase(p, i, i + 1) && p.said[i + 1]!.segment.to > n.from && ofMark(p, cue.base));
  if (share >= 0 && n.from >= p.said[share + 1]!.segment.from && n.meanings.every((x) => x.own && x.fields.length > 0 && x.fields.every((f) => f === 'setting' || f === 'workload') && x.slots.every((s) => !marked(g).has(`${s.slot}=${s.value}`)))) return share;
  const k = p.said.findIndex((s) => s.named && s.mention.from === n.from);
  const before = p.said[k - 1];
  if (k < 1 || before!.named || before!.cue.op !== 'value' || before!.mention.type !== 'cardinal') return undefined;
  return /^(?:at|on|in|with|under)(?: the)?$/.test(stretch(p.low, before!.mention.to, n.from)) && /^(?:|,|;|\.|:|and|but|so|while|or)$/.test(p.low[p.said[k]!.mention.to] ?? '') ? k - 1 : undefined;
}

/** What the share is of is a limit, a target or a rating, which is the same wherever the thing is. */
function ofMark(p: Parsed, base: { from: number; to: number }): boolean {
  return p.names.some((x) => x.from >= base.from && x.to <= base.to && x.meanings.some((m) => m.role && /^(?:limit|target|rated)$/.test(m.role.role)));
}

/** "97 percent of its 60 watt cap": a number that only says what the share is of. */
export function insideBase(p: Parsed, share: number, index: number): boolean {
  const [base, m] = [p.said[share]!.cue.base, p.said[index]?.mention];
  return p.said[share]!.cue.op === 'share' && base !== undefined && m !== undefined && m.from >= base.from && m.to <= base.to;
}

const marks = new WeakMap<Grid, ReadonlySet<string>>();

/** Values that have a limit, a target or a rating of their own: "of the 30 watts allowed with the fan off" tells which one is meant. */
function marked(g: Grid): ReadonlySet<string> {
  let known = marks.get(g);
  if (!known) marks.set(g, (known = new Set(g.cells.filter((x) => x.fixed).flatMap((x) => x.at.map((v, i) => `${i}=${v}`)))));
  return known;
}
