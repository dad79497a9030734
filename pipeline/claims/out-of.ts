// "takes 14.2 out of 16", "412 of its 450 watts": what follows a figure so is what the thing has, may or should have of that.
import { stretch } from '../script/index.js';
import type { Candidate, Context } from './context.js';
import { decide, fit } from './decide.js';
import { constantOf } from './grid.js';
import { push } from './read-value.js';
import type { Reading } from './read.js';
import { valueOf } from './terms.js';

export const allThereIs = 'what there is of it';

export function outOfWhole(c: Context, index: number): Reading | undefined {
  const { mention: m } = c.parsed.said[index]!;
  const figure = c.done[index - 1];
  const first = c.parsed.said[index - 1]?.mention;
  if (!first || m.type !== 'cardinal' || figure?.term.kind !== 'mean' || !figure.subject || figure.subject.fixed || !fit(first, figure)) return undefined;
  if (!/^(?:out )?of(?: (?:its|the|a|their|my|our))?$/.test(stretch(c.parsed.low, first.to, m.from)) || (m.unit && m.unit.dimension !== figure.subject.unit.dimension)) return undefined;
  const out: Candidate[] = [];
  const seen = new Set<string>();
  for (const role of ['rated', 'limit', 'target'] as const) {
    const set = constantOf(c.grid, figure.subject, role);
    if (set && !seen.has(set.key)) { seen.add(set.key); push(out, c, valueOf(set.key), 'constant', 0, set, allThereIs); }
  }
  return out.length ? { ...decide(m, out, { soft: out.length > 1 }), mention: m } : undefined;
}
