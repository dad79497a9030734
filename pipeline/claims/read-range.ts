// Two mentions read as the ends of a range over several readings: "between 22 and 23 degrees", "from 37.4 to 43".
import { changeVerbs, phraseAt } from '../script/index.js';
import { siblings } from './siblings.js';
import { type Candidate, type Context, subjectCells, unitsOf } from './context.js';
import { familyOf, familySaid } from './family.js';
import type { Cell } from './grid.js';
import type { Parsed } from './parse.js';
import { otherCells } from './read-count.js';
import { push } from './read-value.js';

/** The pair of figures that a mention belongs to, where they are the ends of a range. */
export function rangeAt(p: Parsed, index: number): { first: number; second: number; sure: boolean } | undefined {
  for (const first of [index, index - 1]) {
    const a = p.said[first];
    const b = p.said[first + 1];
    if (!a || !b || a.mention.type !== 'cardinal' || b.mention.type !== 'cardinal') continue;
    if (a.mention.unit && b.mention.unit && a.mention.unit.id !== b.mention.unit.id) continue;
    const gap = p.low.slice(a.mention.to, b.mention.from);
    if (gap.length > 3 || !/^(?:and|to|-|–|—|through|till)$/.test(gap[0] ?? '') || gap.slice(1).some((w) => !/^(?:about|around|roughly|just|under|over|nearly|almost|up)$/.test(w))) continue;
    const before = p.low.slice(Math.max(a.segment.from, a.mention.from - 9), a.mention.from);
    const between = before.includes('between') || before.includes('anywhere');
    const stays = before.some((w) => /^(?:stays?|stayed|staying|ranges?|ranged|ranging|hovers?|hovered|remained|remains|varied|varies|lies|lay|sits?|sat|spans?|spread|kept|keeps|held)$/.test(w));
    if (gap[0] === 'and' && !between) continue;
    // "The hum leaps from 31 to 38", "it takes us from 58 to 71": one thing that moves, and no spread of several.
    const moves = before.some((w, k) => moving.test(w) || /^(?:up|down)$/.test(phraseAt(changeVerbs, before, k)?.value ?? ''));
    if ((moves || movesAgain(p, first)) && !stays && !between) continue;
    return { first, second: first + 1, sure: between || stays };
  }
  return undefined;
}

/** "everything between 38 and 40 might as well be the same": which of them are spoken of, and no range that any has. */
export function isSelection(p: Parsed, at: { first: number }): boolean {
  const { from } = p.said[at.first]!.mention;
  return p.low[from - 1] === 'between' && /^(?:everything|anything|whatever|something|nothing|all|those|anyone|whoever|ones)$/.test(p.low[from - 2] ?? '');
}

/** "The lid went from 41 to 38, and the base from 37 to 36": the verb of the one is that of the other. */
function movesAgain(p: Parsed, first: number): boolean {
  const { low, said } = p;
  const { from } = said[first]!.mention;
  if (low[from - 1] !== 'from') return false;
  return said.some((s, k) => k + 1 < first && low[s.mention.from - 1] === 'from' && low[said[k + 1]!.mention.from - 1] === 'to' && low.slice(Math.max(0, s.mention.from - 9), s.mention.from).some((w, i, lead) => moving.test(w) || /^(?:up|down)$/.test(phraseAt(changeVerbs, lead, i)?.value ?? '') || /^(?:up|down)$/.test(w)));
}

const moving = /^(?:goes|went|go|going|moves?|moved|moving|takes?|took|taking|brings?|brought|bringing|pushes|pushed|pulls|pulled|gets?|got|getting|creeps?|crept|creeping|swings?|swung)$/;

export function readRange(c: Context, index: number, at: { first: number; second: number; sure: boolean }): Candidate[] {
  const said = c.parsed.said[at.second]!;
  const end = index === at.first ? 'low' : 'high';
  const g = c.grid;
  const { cells: found, evidence } = subjectCells(c, at.first, unitsOf(said, false), { limit: 2.2 });
  // What was set does not range.
  const cells = found.filter((x) => !x.cell.fixed);
  const out: Candidate[] = [];
  const seen = new Set<string>();
  const add = (set: readonly Cell[], cost: number): void => {
    if (set.length < 2) return;
    const id = set.map((x) => x.key).join();
    if (seen.has(id)) return;
    seen.add(id);
    push(out, c, { kind: 'range', variant: end, args: set.map((x) => x.key) }, 'range', cost, set[0], 'over all');
    push(out, c, { kind: 'range', variant: `${end}-run`, args: set.map((x) => x.key) }, 'range', cost + 0.3, set[0], 'over all runs');
  };
  const other = c.parsed.low.slice(0, c.parsed.said[at.first]!.mention.from).some((w) => /^(?:other|others|rest|remaining)$/.test(w));
  if (other) add(otherCells(c, index), 0);
  const free = (field: 'setup' | 'setting' | 'workload'): readonly number[] => g.of[field].filter((i) => !evidence[i]!.named);
  const seenBase = new Set<string>();
  for (const { cell, cost } of cells) {
    const family = familyOf(g, cell);
    if (family.length && familySaid(c, cell) && !g.of.part.some((i) => evidence[i]!.named && family.some((x) => evidence[i]!.costs.has(x.at[i]!)))) { add(family, cost); continue; }
    const id = [...g.of.measure, ...g.of.part, ...g.of.phase].map((i) => cell.at[i]).join('/');
    const wide = siblings(g, cell, [...free('setup'), ...free('setting'), ...free('workload')]);
    if (!seenBase.has(id)) { seenBase.add(id); add(wide, cost + (other ? 0.8 : 0)); }
    add(siblings(g, cell, free('setting')), cost + 0.5);
    add(siblings(g, cell, free('setup')), cost + 0.5);
    add(siblings(g, cell, free('workload')), cost + 0.7);
    if (c.facts.readings(cell.key).length > 1) push(out, c, { kind: 'range', variant: `${end}-run`, args: [cell.key] }, 'range', cost + 0.8, cell, 'over its runs');
    if (out.length > 60) break;
  }
  return out;
}
