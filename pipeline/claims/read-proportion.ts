// A mention read as a multiple of something.
import { basesFor, baseWords, changesOf } from './bases.js';
import { type Candidate, type Context, reachOfCosts, sameCellExcept, subjectCells, unitsOf } from './context.js';
import { moved } from './grid.js';
import { changeVerbs, phraseAt } from '../script/index.js';
import { overRoomTerm, push } from './read-value.js';
import { firstCell, substitute } from './terms.js';

/** "twice", "2.3 times", "three quarters of", "half the spread we saw at 205". */
export function readRatio(c: Context, index: number): Candidate[] {
  const said = c.parsed.said[index]!;
  const words = baseWords(c, index);
  const out: Candidate[] = [];
  // "at 90 watts for the one, and at half of that for the other": of what was said just before, and the thing named after it.
  const first = c.done[index - 1]?.subject;
  const { to } = said.mention;
  if (first && /^(?:of )?that (?:for|in|on|at|with|under)\b/.test(c.parsed.low.slice(to, to + 3).join(' '))) {
    const until = c.parsed.said[index + 1]?.mention.from ?? c.parsed.low.length;
    const after = c.hits.hits.filter((h) => h.from >= to && h.from < until && ['setup', 'setting', 'workload'].includes(c.grid.slots[h.slot]!.field) && first.at[h.slot] !== h.value);
    const other = after.length ? moved(c.grid, first, new Map(after.map((h) => [h.slot, h.value] as const))) : undefined;
    if (other && other !== first) push(out, c, { kind: 'ratio', args: [other.key, first.key] }, 'ratio', 0, other, 'of what was said just before', { firm: true, base: first });
    if (out.length) return out;
  }
  const carried = words.low.some((w) => /^(?:what|that|as|the|of)$/.test(w));
  for (const [k, last] of c.now.said.slice(0, 2).entries()) {
    if (!carried || last.kind === 'mean' || last.kind === 'rank' || last.kind === 'count') continue;
    const subject = firstCell(c.grid, last);
    for (const change of changesOf(words)) {
      const other = substitute(c.grid, last, change);
      if (other) push(out, c, { kind: 'ratio', args: [last, other] }, 'ratio', 0.1 + 0.6 * k, subject, 'the same elsewhere', { firm: true });
    }
    const prior = c.now.said.find((t) => t !== last && t.kind === last.kind);
    if (prior && !changesOf(words).length) push(out, c, { kind: 'ratio', args: [last, prior] }, 'ratio', 0.7 + 0.6 * k, subject, 'the one before');
  }
  const { cells } = subjectCells(c, index, unitsOf(said, true));
  // "14 percent faster than the one and 1.6 times as fast as the other": of the quantity, and the work, spoken of just before.
  const compared = c.done[index - 1];
  const before = compared && /^(?:percent_change|ratio|mean)$/.test(compared.kind) && (compared.kind !== 'mean' || !/^as much\b/.test(c.parsed.low.slice(said.mention.to, said.mention.to + 2).join(' '))) ? compared.subject : undefined;
  const same = [...c.grid.of.measure, ...c.grid.of.part, ...c.grid.of.workload];
  if (before && !c.hits.hits.some((h) => h.segment === index && same.includes(h.slot))) {
    for (const x of cells) if (same.some((i) => x.cell.at[i] !== before.at[i])) x.cost += 0.9;
    cells.sort((x, y) => x.cost - y.cost);
  }
  const verb = c.parsed.low.slice(said.segment.from, said.mention.from).some((_, i) => phraseAt(changeVerbs, c.parsed.low, said.segment.from + i) !== undefined);
  for (const { cell, cost } of cells) {
    if (out.length > 150) break;
    // "saves more than twice as much power as the first": changes against a common base.
    if (verb) {
      for (const change of changesOf(words)) {
        const other = moved(c.grid, cell, change);
        if (!other || other === cell) continue;
        for (const b of basesFor(c, cell, index, { ...words, overrides: new Map(), any: false, low: [], roles: [], pronoun: false }, undefined).slice(0, 8)) {
          if (b.cell === other || cost + b.cost > 2) continue;
          push(out, c, { kind: 'ratio', args: [{ kind: 'difference', args: [cell.key, b.cell.key] }, { kind: 'difference', args: [other.key, b.cell.key] }] }, 'ratio', cost + 0.2 + b.cost * 0.5, cell, 'of the changes', { firm: true });
        }
      }
    }
    if (said.cue.overRoom) {
      const over = overRoomTerm(c, cell);
      for (const change of changesOf(words)) {
        const other = over && substitute(c.grid, over, change);
        if (over && other) push(out, c, { kind: 'ratio', args: [over, other] }, 'ratio', cost, cell, 'over the room', { firm: true });
      }
    }
    for (const b of basesFor(c, cell, index, words, 'up')) {
      const total = cost + b.cost;
      if (total > reachOfCosts) continue;
      push(out, c, { kind: 'ratio', args: [cell.key, b.cell.key] }, 'ratio', total, cell, b.why, { firm: b.firm, base: b.cell, change: sameCellExcept(c.grid, cell, b.cell).map((i) => [i, b.cell.at[i]!] as const) });
    }
  }
  return out;
}
