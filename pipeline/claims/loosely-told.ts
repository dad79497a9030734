// An alarm must rest on what is said. Some statements leave open, by the way people talk, just what would make them wrong: for those
// the nearest reading is told, and no alarm given. On scripts that nobody had read, at least two of three such alarms were false.
import type { Candidate, Context } from './context.js';
import type { Reading } from './read.js';
import { slipSized } from './slip-sized.js';

/** Why the words are too loose for an alarm; undefined where they are not. */
export function tooLoose(c: Context, index: number, r: Reading): string | undefined {
  const x = r.chosen;
  if (r.verdict !== 'disagrees' || !x) return undefined;
  const { cue } = c.parsed.said[index]!;
  // "nine results": of whatever they are, where the record has four settings; but "the loudest of all nine" counts who is ranked.
  if (countsTested(x) && !c.parsed.said.some((s) => s.cue.op === 'rank') && Math.abs(r.mention.value.toNumber() - x.fact.value.toNumber()) > 1) return 'hardly counted wrong by so many';
  // "… and the other 83 percent": a bare share, of whatever.
  if (x.kind === 'percent_of' && cue.op === 'value' && !slipSized(r.mention, x)) return 'no word says what it is a share of';
  return undefined;
}

/** How many things or settings were tested, whatever they did. */
function countsTested(x: Candidate): boolean {
  return x.kind === 'count' && /^count\.(?:setups|settings):/.test(x.fact.id);
}
