// "takes 14.2 out of 16", "412 of its 450 watts": what follows a figure so is what the thing has, may or should have of that;
// "98 percent of its 3,100": what follows a share so is what it is a share of.
import { stretch } from '../script/index.js';
import type { Candidate, Context } from './context.js';
import { decide, fit, readingOf } from './decide.js';
import { type Cell, constantOf } from './grid.js';
import { push, readValue } from './read-value.js';
import type { Reading } from './read.js';
import { valueOf } from './terms.js';

export const allThereIs = 'what there is of it';

export function outOfWhole(c: Context, index: number): Reading | undefined {
  const { mention: m } = c.parsed.said[index]!;
  const figure = c.done[index - 1];
  const first = c.parsed.said[index - 1]?.mention;
  const share = first && figure?.kind === 'percent_of' && m.type === 'cardinal' ? ofShare(c, figure, stretch(c.parsed.low, first.to, m.from)) : undefined;
  if (share && (!m.unit || m.unit.dimension === share.unit.dimension)) {
    const out: Candidate[] = [];
    push(out, c, valueOf(share.key), share.fixed ? 'constant' : 'mean', 0, share, 'what it is a share of');
    return readingOf(decide(m, out, {}), m);
  }
  if (!first || m.type !== 'cardinal' || figure?.term.kind !== 'mean' || !figure.subject || figure.subject.fixed || !fit(first, figure)) return undefined;
  if (!/^(?:out )?of(?: (?:its|the|a|their|my|our))?$/.test(stretch(c.parsed.low, first.to, m.from)) || (m.unit && m.unit.dimension !== figure.subject.unit.dimension)) return undefined;
  const out: Candidate[] = [];
  const seen = new Set<string>();
  for (const role of ['rated', 'limit', 'target'] as const) {
    const set = constantOf(c.grid, figure.subject, role);
    if (set && !seen.has(set.key)) { seen.add(set.key); push(out, c, valueOf(set.key), 'constant', 0, set, allThereIs); }
  }
  if (!out.length) return undefined;
  // "5,010 of 5,250": it may as well be what it had of it before.
  const bare = stretch(c.parsed.low, first.to, m.from) === 'of';
  const own = bare && !out.some((x) => fit(m, x)) ? readValue(c, index).map((x) => ({ ...x, cost: x.cost + 0.5 })) : [];
  return readingOf(decide(m, [...out, ...own], { soft: out.length > 1 || bare }), m);
}

function ofShare(c: Context, figure: Candidate, gap: string): Cell | undefined {
  const [, base] = figure.term.args;
  return /^of (?:its|the|their|my|our)$/.test(gap) && typeof base === 'string' ? c.grid.byKey.get(base) : undefined;
}
