// A mark that was spoken of just before, and that the words of a change go back to without naming it.
import { stretch } from '../script/index.js';
import { byBefore } from './by-how-much.js';
import type { Context } from './context.js';
import type { Role } from './roles.js';

const passes = /\b(?:(?:is|are|was|were|lands?|ends|sits|stays?|comes?|goes|went|runs?|ran|gets|just|still|well|only)(?: in)? (?:over|under|above|below|past|beyond)|(?:clears?|cleared|pass(?:es|ed)?|breaks?|broke|exceeds?|exceeded|misses|missed|makes?|made|keeps?|kept|fails?|failed|busts?)(?: it| that| mine| them)) by$/;

/** "I want no more than 40. The plain one is over by 3.1, and the tuned one clears it by 2": the role of that mark. */
export function spokenMark(c: Context, index: number): Role | undefined {
  const { mention, segment } = c.parsed.said[index]!;
  const { constant } = c.now;
  const by = byBefore(c.parsed.low, mention.from);
  if (!constant || by < 0 || !c.now.said.some((t) => t.kind === 'mean' && t.args[0] === constant)) return undefined;
  return passes.test(stretch(c.parsed.low, Math.max(segment.from, by - 5), by + 1)) ? c.grid.byKey.get(constant)?.role : undefined;
}

const beyond = /^(?:above|below|over|under|past|beyond|inside|within|short of|shy of|clear of|off|beneath)$/;

/** "starts below my line and ends up 1.9 above it": a name or a word of a mark at `from` is what the pronoun of a change means, with no figure since. */
export function pointedAt(p: Context['parsed'], index: number, from: number): boolean {
  const { cue, mention } = p.said[index]!;
  if (cue.op !== 'change' || !cue.base || from >= mention.from || from < (p.said[index - 1]?.mention.to ?? 0)) return false;
  return beyond.test(cue.because) && /^(?:it|that|them)$/.test(stretch(p.low, cue.base.from, cue.base.to));
}

/** The roles of such a mark. */
export function markPointedAt(c: Context, index: number): Role[] {
  const own = (h: { from: number }): boolean => pointedAt(c.parsed, index, h.from);
  const named = c.hits.roles.findLast((r) => own(r) && /^(?:limit|target|rated)$/.test(r.role));
  if (named?.role === 'rated') return ['rated'];
  return named || c.hits.hits.some((h) => own(h) && c.grid.holders.has(h.value)) ? ['limit', 'target'] : [];
}

/** "6.1 past what I'll put up with": a mark of the speaker's, said by a clause. */
export const endured = /\b(?:i|we|i'll|we'll|i'd|we'd)(?: (?:will|can|could|would|am|are|was|were|ever|still|just|be))* (?:put up with|stand|bear|tolerate|accept|allow|live with|stomach|willing to|prepared to|happy with|comfortable with)\b/;
