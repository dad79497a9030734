// A mention read as a proportion: a share of something, a multiple, points between two shares.
import { basesFor, baseWords, changesOf, siblings } from './bases.js';
import { type Candidate, type Context, reachOfCosts, sameCellExcept, signOf, subjectCells, unitsOf } from './context.js';
import { isFact } from '../facts/index.js';
import { fits } from './fit.js';
import { moved } from './grid.js';
import { changeVerbs, phraseAt } from '../script/index.js';
import { overRoomTerm, push } from './read-value.js';
import { firstCell, substitute, type Term } from './terms.js';

export function readShare(c: Context, index: number): Candidate[] {
  const said = c.parsed.said[index]!;
  const words = baseWords(c, index);
  const out: Candidate[] = [];
  // "83.2 of the 90 on the label, 92 percent"; "198 watts, or 99 percent of its 250 watt limit".
  const [last] = c.now.said;
  if (!words.any && c.now.said.length > 1 && last?.kind === 'mean') {
    const [b, a] = c.now.said;
    push(out, c, { kind: 'percent_of', args: [a!, b!] }, 'percent_of', 0.2, firstCell(c.grid, a!), 'of the two said last');
  }
  const number = ofNumberSaid(c, index);
  if (number.length) return number;
  // "83 percent of the frame rate": what follows is the measure itself, not what it is a share of.
  const ownPart = words.overrides.size > 0 && [...words.overrides.keys()].every((i) => c.grid.slots[i]!.field === 'part');
  if (ownPart) words.overrides.clear();
  const { cells } = subjectCells(c, index, unitsOf(said, true), { ownPart });
  for (const { cell, cost } of cells) {
    if (out.length > 120) break;
    if (words.median) {
      const set = siblings(c.grid, cell, c.grid.of.setup);
      if (set.length > 2) push(out, c, { kind: 'points', args: [cell.key, { kind: 'median', args: set.map((x) => x.key) }] }, 'difference', cost, cell, 'against the median', { sign: signOf(c, said.cue.way, cell), firm: true });
      continue;
    }
    if (cell.fixed && !c.parsed.low.includes('limit')) { if (cost > 1.2) continue; }
    for (const b of basesFor(c, cell, index, words, undefined)) {
      const total = cost + b.cost;
      if (total > reachOfCosts) continue;
      push(out, c, { kind: 'percent_of', args: [cell.key, b.cell.key] }, 'percent_of', total, cell, b.why, { firm: b.firm, base: b.cell, change: sameCellExcept(c.grid, cell, b.cell).map((i) => [i, b.cell.at[i]!] as const) });
    }
  }
  return out;
}

/** "198 watts, or 66 percent of the 300 it is built for": of what the record sets to just that, and of what was said last in its unit. */
export function ofNumberSaid(c: Context, index: number): Candidate[] {
  const g = c.grid;
  const m = c.parsed.said[index]!.mention;
  const of = c.parsed.said[index + 1]?.mention;
  if (!of || of.type !== 'cardinal' || of.unit?.id === '%' || of.from !== m.to + 2 || c.parsed.low[m.to] !== 'of' || c.parsed.low[m.to + 1] !== 'the') return [];
  const out: Candidate[] = [];
  const last = c.now.said.find((t) => t.kind === 'mean');
  const subject = last && firstCell(g, last);
  if (!subject || subject.fixed) return [];
  for (const k of g.byMeasure.get(subject.at[g.of.measure[0]!]!) ?? []) {
    const fact = c.facts.value(k.key);
    if (!k.fixed || !isFact(fact) || [...g.of.setup, ...g.of.setting].some((i) => k.at[i] && k.at[i] !== subject.at[i]) || !fits({ ...of, hedge: undefined } as typeof of, fact, { size: false, exact: true })) continue;
    push(out, c, { kind: 'percent_of', args: [subject.key, k.key] }, 'percent_of', 0, subject, 'of the number said', { firm: true, base: k });
  }
  return out;
}

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

/** Percentage points: between two readings in percent, or between two shares said. */
export function readPoints(c: Context, index: number): Candidate[] {
  const said = c.parsed.said[index]!;
  const words = baseWords(c, index);
  const out: Candidate[] = [];
  const [a, b] = c.now.shares;
  const changes = changesOf(words);
  if (a) {
    const subject = firstCell(c.grid, a)!;
    for (const change of changes) {
      const other = substitute(c.grid, a, change);
      if (other) push(out, c, points(a, other), 'difference', 0, subject, 'between two shares', { sign: signOf(c, said.cue.way === 'better' ? 'up' : said.cue.way === 'worse' ? 'down' : said.cue.way, subject), firm: true });
    }
    if (b) push(out, c, points(a, b), 'difference', changes.length ? 0.8 : 0.1, subject, 'between the two shares said');
    if (c.now.base && !changes.length) {
      const other = substitute(c.grid, a, new Map(c.now.base));
      if (other) push(out, c, points(a, other), 'difference', 0.6, subject, 'as in the comparison before');
    }
  }
  const percent = [...c.grid.measureUnits].filter(([, d]) => d.has('share')).map(([m]) => m);
  if (!percent.length) return out;
  const { cells } = subjectCells(c, index, c.grid.cells.filter((x) => x.unit.id === '%').slice(0, 1).map((x) => x.unit));
  for (const { cell, cost } of cells) {
    if (out.length > 120) break;
    if (words.median) {
      const set = siblings(c.grid, cell, c.grid.of.setup);
      if (set.length > 2) push(out, c, { kind: 'points', args: [cell.key, { kind: 'median', args: set.map((x) => x.key) }] }, 'difference', cost, cell, 'against the median', { sign: signOf(c, said.cue.way, cell), firm: true });
      continue;
    }
    for (const base of basesFor(c, cell, index, words, said.cue.way)) {
      const total = cost + base.cost;
      if (total > reachOfCosts) continue;
      const way = said.cue.way;
      const sign = way === 'better' ? (signOf(c, way, cell) || 1) : way === 'worse' ? (signOf(c, way, cell) || -1) : signOf(c, way, cell);
      push(out, c, { kind: 'points', args: [cell.key, base.cell.key] }, 'difference', total, cell, base.why, { sign, firm: base.firm, base: base.cell, change: sameCellExcept(c.grid, cell, base.cell).map((i) => [i, base.cell.at[i]!] as const) });
    }
  }
  return out;
}

function points(a: Term, b: Term): Term {
  return { kind: 'points', args: [a, b] };
}
