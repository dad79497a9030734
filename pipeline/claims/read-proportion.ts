// A mention read as a multiple of something.
import { stretch } from '../script/index.js';
import { basesFor, baseWords, changesOf } from './bases.js';
import { type Candidate, type Context, reachOfCosts, sameCellExcept, subjectCells, unitsOf } from './context.js';
import { type Cell, moved } from './grid.js';
import { speaksOfChanges } from './of-changes.js';
import { spokenBy } from './ratio-words.js';
import { overRoomTerm, push } from './read-value.js';
import { firstCell, substitute } from './terms.js';

export const sameElsewhere = 'the same elsewhere';

/** "twice", "2.3 times", "three quarters of", "half the spread we saw at 205". */
export function readRatio(c: Context, index: number): Candidate[] {
  const said = c.parsed.said[index]!;
  const words = baseWords(c, index);
  const out: Candidate[] = [];
  // "at 90 watts for the one, and at half of that for the other": of what was said just before, and the thing named after it.
  const first = c.done[index - 1]?.subject;
  const { to } = said.mention;
  if (first && /^(?:of )?that (?:for|in|on|at|with|under)\b/.test(stretch(c.parsed.low, to, to + 3))) {
    const until = c.parsed.said[index + 1]?.mention.from ?? c.parsed.low.length;
    const after = c.hits.hits.filter((h) => h.from >= to && h.from < until && ['setup', 'setting', 'workload'].includes(c.grid.slots[h.slot]!.field) && first.at[h.slot] !== h.value);
    const other = after.length ? moved(c.grid, first, new Map(after.map((h) => [h.slot, h.value] as const))) : undefined;
    if (other && other !== first) push(out, c, { kind: 'ratio', args: [other.key, first.key] }, 'ratio', 0, other, 'of what was said just before', { firm: true, base: first });
    if (out.length) return out;
  }
  const carried = c.parsed.low[to] === 'as' || words.low.some((w) => /^(?:what|that|as|the|of)$/.test(w));
  const own = namedHere(c, index);
  for (const [k, latest] of c.now.said.slice(0, 2).entries()) {
    // "carries twice as much water as the other": of the quantity itself, where nothing is said to change.
    if (/^as (?:much|many) (?!as\b)\p{L}/u.test(stretch(c.parsed.low, to, to + 3)) && !speaksOfChanges(c, index)) continue;
    if (!carried || latest.kind === 'mean' || latest.kind === 'rank' || latest.kind === 'count') continue;
    // "as long as", "as loud as": of the quantity itself, and not of a change.
    if (!ofMeasureSaid(c, index, firstCell(c.grid, latest)) || (latest.kind === 'difference' && c.parsed.low[to] === 'as' && spokenBy(c.parsed.low[to + 1]).length > 0)) continue;
    // "So the Stoat loses three times what its rival does": of the one named here.
    const last = substitute(c.grid, latest, own) ?? latest;
    const subject = firstCell(c.grid, last);
    for (const change of changesOf(words)) {
      const other = substitute(c.grid, last, change);
      if (other) push(out, c, { kind: 'ratio', args: [last, other] }, 'ratio', 0.1 + 0.6 * k, subject, sameElsewhere, { firm: true });
    }
    const prior = c.now.said.find((t) => t !== last && t.kind === last.kind);
    if (prior && !changesOf(words).length) push(out, c, { kind: 'ratio', args: [last, prior] }, 'ratio', 0.7 + 0.6 * k, subject, 'the one before');
  }
  // "So the one takes twice as much as the other": of the quantity that was given last.
  // … and "passes 20 percent more and carries twice as much water": before the change, of the same.
  const given = c.now.said[0]?.kind === 'percent_change' && /^as (?:much|many) (?!as\b)\p{L}/u.test(stretch(c.parsed.low, to, to + 3)) && !speaksOfChanges(c, index) ? c.now.said.find((t) => t.kind === 'mean') : c.now.said[0];
  if (given?.kind === 'mean' && (/^as (?:much|many)$/.test(stretch(c.parsed.low, to, to + 2)) || c.parsed.low.slice(said.segment.from, said.mention.from).some((w) => /^(?:figure|number|value|result|reading)$/.test(w))) && !measureSaid(c, index)) for (const change of changesOf(words)) {
    const top = [substitute(c.grid, given, own), given].find((t) => t && [...own].every(([i, v]) => firstCell(c.grid, t)!.at[i] === v));
    const other = top && substitute(c.grid, top, change);
    if (other) push(out, c, { kind: 'ratio', args: [top, other] }, 'ratio', 0, firstCell(c.grid, top), 'of what was given last', { firm: true, base: firstCell(c.grid, other)! });
  }
  const ownPart = quantityFollows(c, index);
  if (ownPart) words.overrides.clear();
  const { cells } = subjectCells(c, index, unitsOf(said, true), { ownPart });
  // "14 percent faster than the one and 1.6 times as fast as the other": of the quantity, and the work, spoken of just before.
  const compared = c.done[index - 1];
  const before = compared && /^(?:percent_change|ratio|mean)$/.test(compared.kind) && (compared.kind !== 'mean' || !/^as much\b/.test(stretch(c.parsed.low, said.mention.to, said.mention.to + 2))) ? compared.subject : undefined;
  const same = [...c.grid.of.measure, ...c.grid.of.part, ...c.grid.of.workload];
  if (before && !c.hits.hits.some((h) => h.segment === index && same.includes(h.slot))) {
    for (const x of cells) if (same.some((i) => x.cell.at[i] !== before.at[i])) x.cost += 0.9;
    cells.sort((x, y) => x.cost - y.cost);
  }
  // "36 watts instead of 12": of what is at the end of the way.
  const { course } = c.hits;
  if (course) { for (const x of cells) if (x.cell.at[course.slot] && x.cell.at[course.slot] !== course.to) x.cost += 0.9; cells.sort((x, y) => x.cost - y.cost); }
  for (const { cell, cost } of cells) {
    if (out.length > 150) break;
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

/** "twice the frames", "three times the power", and no more: what follows is the quantity, not what it is a multiple of. */
function quantityFollows(c: Context, index: number): boolean {
  const { mention: m, cue } = c.parsed.said[index]!;
  const { low } = c.parsed;
  const at = c.hits.hits.filter((h) => cue.base && h.from >= cue.base.from && h.from < cue.base.to);
  return low[m.to] === 'the' && at.length > 0 && at.every((h) => c.grid.slots[h.slot]!.field === 'part' && h.from <= m.to + 2) && !at.some((h) => low[h.to] === 'of');
}

/** Of the quantity that the clause names, where it names one. */
function ofMeasureSaid(c: Context, index: number, cell: Cell | undefined): boolean {
  const measure = c.grid.of.measure[0]!;
  const said = c.hits.hits.filter((h) => h.segment === index && h.slot === measure).map((h) => h.value);
  return !cell || !said.length || said.includes(cell.at[measure]!);
}

/** A quantity, or a part that has one, is named in the clause; by more than a verb that goes with any. */
export function measureSaid(c: Context, index: number): boolean {
  const verb = (h: { from: number; to: number }): boolean => h.to - h.from === 1 && /^(?:take|takes|took|need|needs|needed|want|wants|get|gets|got)$/.test(c.parsed.low[h.from]!);
  return c.hits.hits.some((h) => h.segment === index && !verb(h) && (h.slot === c.grid.of.measure[0] || c.grid.of.part.includes(h.slot))) || c.hits.dimensions.some((d) => d.segment === index);
}

/** What the clause itself names, the other side of the comparison aside. */
export function namedHere(c: Context, index: number): ReadonlyMap<number, string> {
  return new Map(c.hits.hits.filter((h) => h.segment === index && h.baseOf < 0 && !h.departs && ['setup', 'setting', 'workload', 'part'].includes(c.grid.slots[h.slot]!.field)).map((h) => [h.slot, h.value] as const));
}
