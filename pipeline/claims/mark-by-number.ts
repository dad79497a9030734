// "0.4 under the 80 at which it gives up": a limit, a target or a rating that is said by its number alone.
import { isFact } from '../facts/index.js';
import type { Context } from './context.js';
import { fits } from '../wording/index.js';
import type { Role } from './roles.js';

/** What the number in the words of a comparison is on record as; `told`: the words say otherwise what it is compared with. */
export function markByNumber(c: Context, index: number, scope: { from: number; to: number }, told: boolean): Role[] {
  if (told || c.parsed.said[index]!.cue.op !== 'change') return [];
  const number = c.parsed.said.find(({ mention: m }, k) => k > index && m.type === 'cardinal' && m.from >= scope.from && m.to <= scope.to + 1);
  if (!number) return [];
  const roles = c.grid.cells.flatMap((x) => {
    const fact = x.fixed && /^(?:limit|target|rated)$/.test(x.role) ? c.facts.value(x.key) : undefined;
    return fact && isFact(fact) && fits(number.mention, fact, { size: false, exact: true }) ? [x.role] : [];
  });
  return [...new Set(roles)];
}
