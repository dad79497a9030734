// "63.2 with the one and 68.2 with the other", where it is the other way round: each is just what the other should be. With the first of
// them wrong, the second is wrong as well, whatever else it would be right for.
import type { Candidate, Context } from './context.js';
import { fit } from './decide.js';
import type { Reading } from './read.js';

/** How far from what the words say the second may be. */
const reach = 0.6;

export function exchanged(c: Context, index: number, r: Reading): Reading {
  const x = r.chosen ?? r.ranked[0]?.candidate;
  if (r.verdict !== 'untied' || !x || x.cost > reach || !swapped(c, index, x)) return r;
  return { ...r, verdict: 'disagrees', chosen: x, why: x.why };
}

function swapped(c: Context, index: number, x: Candidate): boolean {
  const own = c.parsed.said[index]!.mention;
  return c.done.some((d, k) => d !== undefined && k < index && d !== x && d.kind === x.kind && c.told[k] === 'disagrees' && c.parsed.said[k]!.mention.type === own.type && fit(own, d) && fit(c.parsed.said[k]!.mention, x) && !fit(own, x));
}
