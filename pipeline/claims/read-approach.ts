// "A time constant of 38 seconds": how fast a logged temperature goes to its level.
import { unit } from '../quantities/index.js';
import { type Candidate, type Context, subjectCells, unitsOf, withCue, withMention } from './context.js';
import { decide } from './decide.js';
import type { Reading } from './read.js';
import { push } from './read-value.js';

/** Undefined where the words before a duration do not say "time constant". */
export function readTimeConstant(c: Context, index: number): Reading | undefined {
  const said = c.parsed.said[index]!;
  const m = said.mention;
  if (m.type !== 'cardinal' || m.unit?.dimension !== 'duration' || said.cue.op !== 'value' && said.cue.op !== 'range') return undefined;
  const { low, said: all } = c.parsed;
  const at = low.lastIndexOf('constant', m.from - 1);
  if (at < 1 || at <= said.segment.from || low[at - 1] !== 'time' || all.some((s, k) => k !== index && s.mention.from > at && s.mention.from < m.from)) return undefined;
  // "A time constant of 12 seconds would be nothing new": of nothing that was measured.
  const named = c.hits.hits.some((h) => h.segment <= index && h.baseOf < 0 && c.grid.slots[h.slot]!.field !== 'phase' && c.grid.slots[h.slot]!.field !== 'measure');
  const out: Candidate[] = [];
  const plain = withMention(withCue(c, index, { ...said.cue, op: 'value' }), index, { ...m, unit: unit('degC'), loose: false });
  for (const { cell, cost } of subjectCells(plain, index, unitsOf(plain.parsed.said[index]!, false)).cells) {
    if (!cell.constant && !cell.fixed && cell.unit.dimension === 'temperature') push(out, c, { kind: 'approach', variant: 'time-constant', args: [cell.key] }, 'mean', cost, cell, 'the time constant of its logs');
  }
  return { ...decide(m, out, { soft: !named, silent: !named || out.length === 0 }), mention: m };
}
