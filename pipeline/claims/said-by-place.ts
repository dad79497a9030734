// A thing that is spoken of by where it came, and not by its name: "the winner is 54 quicker", "the loser needs 20 more".
import { extreme } from './siblings.js';
import type { Context } from './context.js';
import type { Cell } from './grid.js';

const firsts = /^(?:winner|leader|champion|front-runner|victor)$/;

/** Puts the one that came first before the others, where the words before the number speak of that one; whether they do. */
export function firstMeant(c: Context, index: number, cells: { cell: Cell; cost: number }[]): boolean {
  const { segment, mention, cue } = c.parsed.said[index]!;
  const at = c.parsed.low.findIndex((w, k) => k >= segment.from && k < mention.from && firsts.test(w) && c.parsed.low[k - 1] === 'the');
  if (at < 0 || (cue.base && at >= cue.base.from && at < cue.base.to) || c.hits.hits.some((h) => h.segment === index && c.grid.of.setup.includes(h.slot))) return false;
  const known = new Map(cells.map((x) => [x.cell, x]));
  for (const x of [...cells]) {
    const first = extreme(c, x.cell, c.grid.of.setup);
    if (!first || first === x.cell) continue;
    const own = known.get(first);
    if (own) own.cost = Math.min(own.cost, x.cost);
    else { const added = { cell: first, cost: x.cost }; known.set(first, added); cells.push(added); }
    x.cost += 0.9;
  }
  cells.sort((a, b) => a.cost - b.cost);
  return true;
}
