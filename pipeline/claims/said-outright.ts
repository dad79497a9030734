// An alarm is kept back where the number would be right for another reading. What the clause says in so many words that reading
// must not contradict: then the slip looked for would excuse itself.
//   "the low falls by eighteen percent"                    excused by no change of anything else, since "low" is said
//   "31 minutes, 8 percent more than on the shelf"          by no other thing in the top, nor by one that is in neither
//   "takes 14 percent less power"                          by no rise, seen from the other end, of 14 percent
import { baseWords } from './bases.js';
import { type Candidate, type Context, signOf } from './context.js';
import { doubt, fit } from './decide.js';
import type { Cell } from './grid.js';
import type { Reading } from './read.js';

/** The measure, part, thing and base that the clause names, as far as the reading taken goes with them: true of pairs that do not. */
export function contradicts(c: Context, index: number, x: Candidate): (a: Cell, b: Cell) => boolean {
  const g = c.grid;
  const { segment, mention } = c.parsed.said[index]!;
  const tests: ((a: Cell, b: Cell) => boolean)[] = [];
  const here = c.hits.hits.filter((h) => h.segment === index && !h.departs);
  // What is measured is of both sides.
  for (const slot of [...g.of.measure, ...g.of.part]) {
    const named = new Set(here.filter((h) => h.slot === slot).map((h) => h.value));
    if (named.size && x.subject && named.has(x.subject.at[slot]!)) tests.push((a) => !named.has(a.at[slot]!));
  }
  const measure = g.of.measure[0]!;
  const of = [...c.hits.dimensions.filter((d) => d.segment === index).flatMap((d) => d.dimension), ...(c.parsed.said[index]!.cue.of ?? [])];
  const speaks = (cell: Cell): boolean => of.some((d) => g.measureUnits.get(cell.at[measure]!)?.has(d));
  if (x.subject && speaks(x.subject)) tests.push((a) => !speaks(a));
  // "31 minutes, 11 percent more": of what the figure beside it is of.
  const before = c.done[index - 1];
  const gap = before ? c.parsed.low.slice(c.parsed.said[index - 1]!.mention.to, mention.from) : [];
  const beside = before?.term.kind === 'mean' && before.subject === x.subject && /^[,(–—-]$/.test(gap[0] ?? '') && gap.length <= 5 && fit(c.parsed.said[index - 1]!.mention, before) ? before.subject : undefined;
  if (beside) tests.push((a) => a !== beside);
  // What is compared with, and what is compared.
  const { overrides } = baseWords(c, index);
  // What a percentage is of is one thing; a difference is read more freely.
  if (mention.unit?.id === '%') for (const [slot, values] of overrides) if (x.base && values.includes(x.base.at[slot]!) && x.subject?.at[slot] !== x.base.at[slot]) tests.push((a, b) => !values.includes(b.at[slot]!) || a.at[slot] === b.at[slot]);
  for (const field of ['setup', 'setting', 'workload'] as const) for (const slot of g.of[field]) {
    const own = here.filter((h) => h.slot === slot && h.baseOf < 0 && h.from >= segment.from && h.from < mention.from).map((h) => h.value);
    if (own.length && x.subject && own.every((v) => v === x.subject!.at[slot])) tests.push((a) => a.at[slot] !== x.subject!.at[slot]);
  }
  return (a, b) => tests.some((t) => t(a, b));
}

/** The direction that the words give a comparison that starts from `a`; 0 for none, or where a mark is not gone past but stayed off. */
export function wayOf(c: Context, index: number, x: Candidate, a: Cell, b: Cell): -1 | 0 | 1 {
  const { cue } = c.parsed.said[index]!;
  const way = cue.way ?? cue.elided?.way;
  if ((cue.op !== 'change' && cue.elided?.op !== 'change') || x.kind === 'ratio' || x.kind === 'percent_of') return 0;
  return b.fixed && way !== 'up' && way !== 'down' ? 0 : signOf(c, way, a);
}

/** Readings of which a number may be true without the clause ruling them out, by how `best` is read. */
export function excuses(c: Context, index: number, best: Candidate): (x: Candidate) => boolean {
  if (!best.subject || !best.base) return () => true;
  const denied = contradicts(c, index, best);
  return (x) => !x.subject || !x.base || !denied(x.subject, x.base);
}

/** A comparison held back by dearer readings alone, all of which the clause rules out, is wrong after all. */
export function withoutExcuse(c: Context, index: number, r: Reading): Reading {
  const best = r.ranked[0]?.candidate;
  if (!r.excused || !best?.base) return r;
  const open = excuses(c, index, best);
  return r.ranked.some(({ candidate: x, fits }) => x.cost <= best.cost + doubt && fits && open(x)) ? r : { ...r, verdict: 'disagrees', chosen: best, why: best.why };
}
