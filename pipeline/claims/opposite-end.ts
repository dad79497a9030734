// "From the lowest level to the highest", where only "the lowest level" is a name: the other end of the row is meant.
import { type Mention, superlatives, type Way } from '../script/index.js';
import type { Grid } from './grid.js';
import type { Lexicon, Meaning, Name } from './lexicon.js';

const against: Partial<Record<Way, Way>> = { up: 'down', down: 'up', better: 'worse', worse: 'better' };

/** For the first and the last value of each row of settings or loads, by slot and value: the other one. */
export function otherEnds(g: Grid): ReadonlyMap<string, Meaning> {
  const out = new Map<string, Meaning>();
  for (const field of ['setting', 'workload'] as const) for (const slot of g.of[field]) {
    const row = [...g.values[slot]!.keys()].filter((v) => !g.repeats.has(v));
    const [first, last] = [row[0], row.at(-1)];
    if (first === undefined || last === undefined || first === last) continue;
    for (const [here, there] of [[first, last], [last, first]] as const) out.set(`${slot}=${here}`, { slots: [{ slot, value: there }], fields: [field], own: true });
  }
  return out;
}

/** What a superlative without its noun stands for, after a name that has the opposite superlative. */
export function oppositeEnd(names: readonly Name[], low: readonly string[], m: Mention, lex: Lexicon): Meaning | undefined {
  const way = m.superlative && against[m.superlative.way];
  if (!way || low[m.from - 1] !== 'the' || !/^(?:to|at|on|in|with|for)$/.test(low[m.from - 2] ?? '') || !/^(?:[,.;:!?)—–]|and|but|it|they|that|which|so|is|was|takes?|draws?|makes?)$/.test(low[m.to] ?? '.')) return undefined;
  for (const n of names) {
    if (n.to > m.from || !low.slice(n.from, n.to).some((w) => superlatives.get(w)?.way === way)) continue;
    for (const x of n.meanings) for (const s of x.own ? x.slots : []) {
      const other = lex.otherEnds.get(`${s.slot}=${s.value}`);
      if (other) return other;
    }
  }
  return undefined;
}
