// "From idle to load", "between idle and load": what every change in the sentence is counted from, and no state that anything is told of.
import { stretch } from '../script/index.js';
import type { Hit, SentenceHits } from './evidence.js';
import type { Grid } from './grid.js';
import type { Parsed } from './parse.js';

type RoleHit = SentenceHits['roles'][number];

const joints: Record<string, RegExp> = { from: /^(?:(?:all the way )?(?:up |down )?to|until)(?: (?:the|full|its))?$/, between: /^and(?: (?:the|full|its))?$/ };

/** Marks the first of the two ends, where the sentence tells of a change. */
export function departFromIdle(g: Grid, p: Parsed, hits: readonly Hit[], roles: RoleHit[]): void {
  if (!p.said.some((s) => s.cue.op === 'change')) return;
  const phase = g.of.phase[0]!;
  const ends = [...roles.filter((r) => r.role === 'load' || r.role === 'end').map((r) => r.from), ...hits.filter((h) => h.slot === phase).map((h) => h.from)];
  for (const [i, r] of roles.entries()) {
    if (r.role !== 'idle' && r.role !== 'start') continue;
    const opens = /^(?:the|its|a)$/.test(p.low[r.from - 1] ?? '') ? r.from - 2 : r.from - 1;
    const joint = joints[p.low[opens] ?? ''];
    if (!joint || !ends.some((at) => at > r.to && at <= r.to + 5 && joint.test(stretch(p.low, r.to, at)))) continue;
    roles[i] = { ...r, baseOf: p.said.length, departs: true };
    for (const h of hits) if (h.slot === phase && h.from === r.from) Object.assign(h, { departs: true, baseOf: p.said.length });
  }
}
