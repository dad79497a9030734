// "1.9 below the 45 it is built for", "6 below where it gives up, which is 80": a number that says again what the change before it
// is measured from is that mark; "12 percent more than the 41 of the other" says so of a figure that was measured.
import { stretch } from '../script/index.js';
import type { Candidate, Context } from './context.js';
import { whole } from './cue-base.js';
import { decide, fit } from './decide.js';
import { push } from './read-value.js';
import type { Reading } from './read.js';
import { valueOf } from './terms.js';

export const measuredFrom = 'the mark it is measured from';

export function markBeside(c: Context, index: number): Reading | undefined {
  const { mention: m } = c.parsed.said[index]!;
  const before = c.parsed.said[index - 1];
  const change = c.done[index - 1];
  const scope = whole(c.parsed.low, before?.cue.base);
  if (!before || !scope || !/^(?:change|ratio)$/.test(before.cue.op) || !change?.base || !change.subject || m.type !== 'cardinal' || !fit(before.mention, change)) return undefined;
  if (!change.base.fixed && (change.term.args[1] !== change.base.key || !/^(?:the|its|their|his|her|that|those|)$/.test(stretch(c.parsed.low, scope.from, m.from)) || m.from < scope.from)) return undefined;
  if (m.unit && m.unit.dimension !== change.base.unit.dimension && !(m.loose && change.base.unit.dimension.startsWith('temperature'))) return undefined;
  const gap = stretch(c.parsed.low, scope.to, m.from);
  if (!(m.from >= scope.from && m.to <= scope.to) && !/^(?:, )?(?:which (?:is|was|means|sits at|stands at)|that's|at|of|, at|, so)$/.test(gap)) return undefined;
  const out: Candidate[] = [];
  push(out, c, valueOf(change.base.key), change.base.fixed ? 'constant' : 'mean', 0, change.base, measuredFrom);
  // What was not said outright to be compared with may be another thing.
  if (!change.base.fixed && !change.firm && !out.some((x) => fit(m, x))) return undefined;
  return out.length ? { ...decide(m, out, {}), mention: m } : undefined;
}
