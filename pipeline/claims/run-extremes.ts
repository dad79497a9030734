// "Poorest go 640, finest 652": the lowest and the highest of the runs of what was spoken of.
import type { Candidate, Context } from './context.js';
import { decide } from './decide.js';
import { push } from './read-value.js';
import type { Reading } from './read.js';
import { firstCell } from './terms.js';

const extreme = /^(?:worst|best|slowest|fastest|quickest|highest|lowest|hottest|coolest|loudest|quietest|longest|shortest|top|weakest|strongest)$/;
const run = /^(?:run|pass|attempt|go|try|repeat|lap|round)$/;

/** The number is led to by such words, the noun of which may have been said with the number before. */
function isExtreme(c: Context, index: number): boolean {
  const { low, said } = c.parsed;
  let k = said[index]!.mention.from - 1;
  while (/^(?:was|is|did|got|at|:|,|made|reached)$/.test(low[k] ?? '')) k--;
  if (run.test(low[k] ?? '')) return extreme.test(low[k - 1] ?? '');
  const before = said.findLastIndex((s, i) => i < index && s.mention.type === 'cardinal');
  return extreme.test(low[k] ?? '') && before >= 0 && isExtreme(c, before);
}

export function readRunExtreme(c: Context, index: number): Reading | undefined {
  const { mention: m } = c.parsed.said[index]!;
  if (m.type !== 'cardinal' || !isExtreme(c, index)) return undefined;
  const out: Candidate[] = [];
  for (const cell of new Set(c.now.said.map((t) => firstCell(c.grid, t)))) {
    if (!cell || cell.fixed || c.facts.readings(cell.key).length < 2 || (m.unit && m.unit.dimension !== cell.unit.dimension)) continue;
    for (const variant of ['low-run', 'high-run']) push(out, c, { kind: 'range', variant, args: [cell.key] }, 'range', 0, cell, 'of its runs');
  }
  return out.length ? { ...decide(m, out, { soft: true }), mention: m } : undefined;
}
