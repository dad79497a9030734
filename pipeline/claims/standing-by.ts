// Names that belong to another number than the one whose stretch they stand in.
import type { Name } from './lexicon.js';
import type { Parsed } from './parse.js';

/** "31.2 at sixty watts, 36.4 at eighty": a number that is a name, and stands with the figure before it. */
export function standingBy(p: Parsed, n: Name): number | undefined {
  // "Most is lost by the Ashlar, 6 watts": whose change it is.
  const owned = p.said.findIndex(({ cue }) => cue.whose && cue.whose.from <= n.from && n.to <= cue.whose.to);
  if (owned >= 0) return owned;
  const k = p.said.findIndex((s) => s.named && s.mention.from === n.from);
  const before = p.said[k - 1];
  if (k < 1 || before!.named || before!.cue.op !== 'value' || before!.mention.type !== 'cardinal') return undefined;
  return /^(?:at|on|in|with|under)(?: the)?$/.test(p.low.slice(before!.mention.to, n.from).join(' ')) && /^(?:|,|;|\.|:|and|but|so|while|or)$/.test(p.low[p.said[k]!.mention.to] ?? '') ? k - 1 : undefined;
}
