// What an alarm tells of: among the readings that the words say about as well as the one taken, that of which the number is the likelier
// slip. Only the message depends on it; whether there is an alarm was decided before, and what is said next goes on from what the words say best.
//   "7.3 degrees" where 8.3 would be right as a difference, and 76.3 as a temperature: the difference is told wrong
import type { Mention } from '../script/index.js';
import { inSaidUnit } from '../wording/index.js';
import type { Candidate } from './context.js';
import { digitsSwapped } from './far-off.js';
import type { Reading } from './read.js';

/** How much dearer a reading may be. */
const reach = 1.1;

/** … and the same comparison the other way round. */
const mirrored = 0.2;

/** What a number a factor of e off costs as the slip that it would be. */
const perFactor = 2;

/** Further off is no slip of it, however far. */
const most = 1.5;

export function meantBy(r: Reading): Candidate | undefined {
  const { chosen } = r;
  if (!chosen || r.verdict !== 'disagrees' || r.turned || (r.mention.type !== 'cardinal' && r.mention.type !== 'multiplier') || chosen.kind === 'count') return chosen;
  let best = chosen;
  let least = offBy(r.mention, chosen);
  for (const { candidate } of r.ranked) {
    // "74 percent more": of the two that are compared, the one of which it is said is the one that has more.
    const mirror = chosen.base !== undefined && candidate.base === chosen.subject && candidate.subject === chosen.base;
    const dearer = mirror ? Math.min(mirrored, candidate.cost - chosen.cost) : candidate.cost - chosen.cost;
    if (candidate === chosen || dearer > reach || dearer < 0 || candidate.kind === 'count') continue;
    const off = dearer + offBy(r.mention, candidate);
    if (off < least - 1e-9) [best, least] = [candidate, off];
  }
  return best;
}

function offBy(m: Mention, x: Candidate): number {
  const own = inSaidUnit(x.fact, m);
  if (!own || own.sign() === 0 || m.value.sign() === 0) return perFactor * most;
  // What goes the other way is told wrong twice over.
  if (x.sign !== 0 && x.fact.value.sign() !== x.sign) return perFactor * most;
  if (digitsSwapped(m, x)) return 0;
  return perFactor * Math.min(most, Math.abs(Math.log(Math.abs(m.value.over(own).toNumber()))));
}
