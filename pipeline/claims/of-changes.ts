// A multiple of changes: what one thing gained, lost or rose by, as a multiple of what another did. Each side is compared with
// its own, in the same way.
//   "it rose three times as far from rest as its rival"       each from its own idle
//   "the step from slow to middle does twice as much as the step from middle to fast"
//   "on the big load it loses three times what it loses on the small one"   each against what the sentences compare with
import { changeVerbs, phraseAt, stretch } from '../script/index.js';
import { basesFor, baseWords, changesOf } from './bases.js';
import { type Candidate, type Context, reachOfCosts, subjectCells, unitsOf } from './context.js';
import { type Cell, moved, movedTo } from './grid.js';
import type { Role } from './roles.js';
import { push } from './read-value.js';
import type { Term } from './terms.js';

export const ofChangesTold = 'of the changes';

/** Verbs of change, of doing something for a thing, of going far. */
export function speaksOfChanges(c: Context, index: number): boolean {
  const { segment, mention } = c.parsed.said[index]!;
  const { low } = c.parsed;
  const next = stretch(low, mention.to, mention.to + 3);
  if (/^as much (?:for|off|from|out|to|in|on)\b/.test(next) || /^as (?:well|good|far|often|hard|easily|nice|bad|badly)\b/.test(next)) return true;
  const before = low.slice(segment.from, mention.from);
  if (before.some((w) => /^(?:do|does|did)$/.test(w)) && /\bas much\b/.test(next)) return true;
  return before.some((_, k) => { const p = phraseAt(changeVerbs, low, segment.from + k); return p !== undefined && p.value !== 'apart'; });
}

/** Readings as a multiple of changes, the cheapest first. */
export function readChanges(c: Context, index: number): Candidate[] {
  const said = c.parsed.said[index]!;
  const words = baseWords(c, index);
  const out: Candidate[] = [];
  let least = Infinity;
  const steps = twoSteps(c, index);
  const ends = rolesBeside(c, index);
  // What both rise from is not what is spoken of.
  const { cells } = subjectCells(ends.length ? withoutStarts(c) : c, index, unitsOf(said, true));
  for (const { cell, cost } of cells) {
    if (out.length > 150) break;
    if (cell.fixed) continue;
    if (steps) {
      const [a, b] = [steps[0], steps[1]].map(({ slot, from, to }) => difference(movedTo(c.grid, cell, slot, to), movedTo(c.grid, cell, slot, from)));
      if (a && b && !out.some((x) => x.subject === cell)) push(out, c, { kind: 'ratio', args: [a, b] }, 'ratio', cost, cell, ofChangesTold, { firm: true });
      continue;
    }
    for (const change of changesOf(words)) {
      const other = moved(c.grid, cell, change);
      if (!other || other === cell) continue;
      for (const [base, more] of [...ends.map((v) => [movedTo(c.grid, cell, c.grid.of.phase[0]!, v), 0] as const), ...(ends.length ? [] : basesFor(c, cell, index, { ...words, overrides: new Map(), any: false, low: [], roles: [], pronoun: false }, undefined).slice(0, 8).map((b) => [b.cell, 0.2 + b.cost * 0.5] as const))]) {
        const theirs = base && alongside(c, cell, base, other, change);
        if (!base || !theirs || cost + more > Math.min(2.2, reachOfCosts)) continue;
        const [a, b] = [difference(cell, base), difference(other, theirs)];
        if (!a || !b) continue;
        least = Math.min(least, cost);
        push(out, c, { kind: 'ratio', args: [a, b] }, 'ratio', cost + more, cell, ofChangesTold, { firm: true });
      }
    }
  }
  // What cannot be compared so is not what is spoken of, however near it lay.
  return least > 0 && least < Infinity ? out.map((x) => ({ ...x, cost: x.cost - least })) : out;
}

function difference(a: Cell | undefined, b: Cell | undefined): Term | undefined {
  return a && b && a !== b ? { kind: 'difference', args: [a.key, b.key] } : undefined;
}

/** What the other is compared with: as the one with its base; where the two differ in what the bases differ in, the same base. */
function alongside(c: Context, cell: Cell, base: Cell, other: Cell, change: ReadonlyMap<number, string>): Cell | undefined {
  const way = new Map(c.grid.slots.flatMap((_, i) => (cell.at[i] !== base.at[i] ? [[i, base.at[i]!] as const] : [])));
  if ([...way.keys()].some((i) => change.has(i))) return base === other ? undefined : base;
  const own = moved(c.grid, other, way);
  return own === other ? undefined : own;
}

interface Step { slot: number; from: string; to: string }

/** "the step from slow to middle … as the step from middle to fast": one before the multiple and one after. */
function twoSteps(c: Context, index: number): [Step, Step] | undefined {
  const { mention: m, segment } = c.parsed.said[index]!;
  const { low } = c.parsed;
  const found: (Step & { at: number })[] = [];
  for (let i = segment.from; i < segment.to; i++) {
    if (low[i] !== 'from') continue;
    for (const x of c.hits.hits) for (const y of c.hits.hits) {
      if (x.slot !== y.slot || x.value === y.value || x.from > i + 2 || x.from <= i || y.from <= x.to || y.from > x.to + 2 || low[x.to] !== 'to') continue;
      if (['setting', 'setup', 'workload'].includes(c.grid.slots[x.slot]!.field) && !found.some((f) => f.at === i)) found.push({ slot: x.slot, from: x.value, to: y.value, at: i });
    }
  }
  const [a, b] = [found.find((f) => f.at < m.from), found.find((f) => f.at >= m.to)];
  return a && b && a.slot === b.slot ? [a, b] : undefined;
}

const starts: readonly Role[] = ['idle', 'start'];

function withoutStarts(c: Context): Context {
  const phase = c.grid.of.phase[0]!;
  const kept = (h: { slot: number; value: string }): boolean => h.slot !== phase || !starts.includes(c.grid.roles.get(h.value)!);
  return { ...c, hits: { ...c.hits, roles: c.hits.roles.filter((r) => !starts.includes(r.role)), hits: c.hits.hits.filter(kept), bySlot: c.hits.bySlot.map((list) => list.filter(kept)) } };
}

/** "from idle", "over idle": the phases that both sides are told from. */
function rolesBeside(c: Context, index: number): string[] {
  const { segment } = c.parsed.said[index]!;
  const { low } = c.parsed;
  const told = c.hits.roles.filter((r) => starts.includes(r.role) && r.from >= segment.from && r.from < segment.to && /^(?:from|over|above|since)$/.test(low[r.from - 1] ?? ''));
  return [...c.grid.roles].filter(([, r]) => told.some((t) => t.role === r)).map(([v]) => v);
}

/** Each side's base stands in the words. */
export function changesSaid(c: Context, index: number): boolean {
  return twoSteps(c, index) !== undefined || (rolesBeside(c, index).length > 0 && changesOf(baseWords(c, index)).length > 0);
}
