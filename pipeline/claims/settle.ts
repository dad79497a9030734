// A number that was left untied because it would be right for another reading than the likeliest. Where the two differ only in
// what was carried over from the sentences before, no word decides between them; if the number is precise enough that no
// chance makes it fit, and fits but one, it is what that one says. What the sentence or its heading names is not touched by this.
import type { Candidate, Context } from './context.js';
import { spokenOf } from './doubt.js';
import { significant } from './insist.js';
import type { Reading } from './read.js';

/** How much dearer than the likeliest a reading may be. */
const reach = 2.2;

export function settled(c: Context, index: number, r: Reading): Reading {
  const best = r.ranked[0]?.candidate;
  const m = r.mention;
  if (r.verdict !== 'untied' || !r.why.startsWith('would be right for another') || !best?.subject || best.firm || m.hedge || m.type !== 'cardinal' || significant(m) < 3) return r;
  const right = r.ranked.filter((x) => x.fits && x.candidate.cost <= best.cost + reach && x.candidate.subject && alike(best, x.candidate)).map((x) => x.candidate);
  if (!right.length || new Set(right.map((x) => x.fact.id)).size > 1) return r;
  const chosen = right[0]!;
  const untouched = c.grid.slots.every((_, i) => {
    const values = spokenOf(c, index, i, chosen.subject!, true);
    return !values.size || !chosen.subject!.at[i] || values.has(chosen.subject!.at[i]!) || (chosen.base !== undefined && values.has(chosen.base.at[i]!));
  });
  return untouched ? { ...r, verdict: 'agrees', chosen: { ...chosen, settled: true }, why: 'right for one reading alone of those left open' } : r;
}

/** The same measure, and the same kind of statement. */
function alike(a: Candidate, b: Candidate): boolean {
  const kind = (x: Candidate): string => (x.kind === 'rise' ? 'difference' : x.kind);
  return kind(a) === kind(b);
}
