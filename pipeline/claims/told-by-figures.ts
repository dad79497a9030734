// "Pull: 6.8 newtons, 5.9, 4.4, 3.6": a row without names that falls or rises from end to end is read out by size, and whose each
// figure is, the figures tell. One that does neither goes in the order of the record.
import { isFact } from '../facts/index.js';
import type { Context } from './context.js';
import { givesJust } from './gives-just.js';
import type { Cell } from './grid.js';
import type { Reading } from './read.js';
import { valueOf } from './terms.js';

/** The readings of one sentence, with the figures of such rows given to whom they fit. */
export function toldByFigures(c: Context, readings: readonly Reading[]): readonly Reading[] {
  const out = [...readings];
  for (const list of c.hits.guesses) {
    const own = list.map((k) => readings[k]!);
    if (list.length < 3 || own.every((r) => r.verdict === 'agrees') || !bySize(own)) continue;
    const cells = own.map((r) => r.chosen?.subject ?? r.ranked[0]?.candidate.subject);
    if (cells.some((x) => !x || x.fixed) || new Set(cells).size !== list.length) continue;
    const whose = own.map((r) => (cells as Cell[]).filter((x) => givesJust(c.facts, x, r.mention, r.chosen ?? r.ranked[0]!.candidate)));
    if (whose.some((x) => x.length !== 1) || new Set(whose.map((x) => x[0])).size !== list.length) continue;
    list.forEach((k, i) => {
      const cell = whose[i]![0]!;
      const fact = c.facts.value(cell.key);
      const like = own[i]!.chosen ?? own[i]!.ranked[0]!.candidate;
      if (isFact(fact)) out[k] = { ...own[i]!, verdict: 'agrees', chosen: { ...like, kind: 'mean', sign: 0, fact, subject: cell, term: valueOf(cell.key), why: 'the figures tell whose' }, why: 'the figures tell whose' };
    });
  }
  return out;
}

function bySize(own: readonly Reading[]): boolean {
  const steps = own.slice(1).map((r, i) => r.mention.value.compare(own[i]!.mention.value));
  return steps.every((s) => s > 0) || steps.every((s) => s < 0);
}
