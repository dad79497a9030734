// "from 38.2 at idle to 84.6": the second end, which has nothing of what stands by the first.
import { changeVerbs } from '../script/index.js';
import type { Parsed } from './parse.js';

/** … but "from 38.2 at idle the Larch climbs to 84.6" names what climbs; "from 41 on slow down to 38" tells the way alone. */
export function isArrival(p: Parsed, index: number): boolean {
  const [first, { mention }] = [p.said[index - 1], p.said[index]!];
  if (!first || p.low[mention.from - 1] !== 'to' || !p.low.slice(Math.max(0, first.mention.from - 3), first.mention.from).includes('from')) return false;
  for (let k = first.mention.to; k < mention.from; k++) {
    if (!changeVerbs.has(p.low[k]!) || (/^(?:up|down)$/.test(p.low[k]!) && p.low[k + 1] === 'to')) continue;
    if (!p.names.some((n) => n.from <= k && k < n.to)) return false;
  }
  return true;
}
