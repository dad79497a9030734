// A mention in one unit for each of another, read as what was measured in the one divided by what was measured in the other, in the same test.
import { convert, Exact, perUnit, unit, type Unit } from '../quantities/index.js';
import { type Candidate, type Context, reachOfCosts, subjectCells, unitsOf, withCue, withMention } from './context.js';
import { decide } from './decide.js';
import type { Cell } from './grid.js';
import type { Reading } from './read.js';
import { rangeAt } from './read-range.js';
import { overRoomTerm, pairWith, push } from './read-value.js';
import { known } from './slipped-unit.js';
import { type Term, valueOf } from './terms.js';

/** What a second of the one is in the other: a rate for each watt is what it counts for each joule. */
const power: Readonly<Record<string, string>> = { J: 'W', kJ: 'kW' };
const rates: ReadonlySet<string> = new Set(['frame-count']);
const air = /^(?:room|ambient|air|inlet|intake)$/;

/** The record has readings in a unit of that kind themselves: frames per watt noted as such. */
export function isMeasuredIn(c: Context, u: Unit): boolean {
  return c.grid.cells.some((x) => x.unit.id === u.id || convert(Exact.of(1), x.unit, u) !== undefined);
}

/** Undefined where the mention is in no such unit, or the record has nothing in one of the two. */
export function readQuotient(c: Context, index: number): Reading | undefined {
  const said = c.parsed.said[index]!;
  const m = said.mention;
  const parts = m.type === 'cardinal' ? m.unit?.parts : undefined;
  if (!parts) return undefined;
  const [top, bottom] = asMeasured(c, parts);
  if (!known(c, top) || !known(c, bottom) || (bottom.dimension !== 'power' && bottom.dimension !== 'energy')) return undefined;
  const heat = top.dimension === 'temperature-difference';
  const mention = { ...m, unit: perUnit(top, bottom) };
  const plain = withMention(withCue(c, index, { ...said.cue, op: 'value' }), index, { ...m, unit: top, loose: false });
  const out: Candidate[] = [];
  let open = heat && !said.cue.overRoom && !c.parsed.low.some((w) => air.test(w));
  for (const { cell, cost } of subjectCells(plain, index, unitsOf(plain.parsed.said[index]!, false)).cells) {
    if (cell.fixed || cost > reachOfCosts || out.length > 60) continue;
    const all = c.grid.cells.filter((x) => x.unit.dimension === bottom.dimension && !x.fixed && sameTest(c, x, cell));
    const named = all.filter((x) => partNamed(c, index, x));
    if (all.length > 1 && named.length !== 1) open = true;
    for (const by of all) {
      const far = all.length < 2 || named.includes(by) ? 0 : 0.4;
      for (const { term, more } of heat ? heated(c, cell) : [{ term: valueOf(cell.key), more: 0 }]) {
        push(out, c, { kind: bottom.dimension === 'power' ? 'per_watt' : 'per_energy', args: [term, by.key] }, 'per_watt', cost + far + more, cell, `for each ${bottom.one}`);
      }
    }
  }
  // "half a degree for every watt you take away" is of two differences, and no reading here.
  const changes = said.cue.op !== 'value' && !said.cue.overRoom;
  const named = c.hits.hits.some((h) => h.segment <= index && h.baseOf < 0 && c.grid.slots[h.slot]!.field !== 'phase');
  const ends = rangeAt(c.parsed, index) !== undefined || pairWith(c, index) !== undefined;
  const soft = open || changes || !named || ends;
  return { ...decide(mention, out, { soft, silent: soft || out.length === 0 }), mention };
}

/** The units in which the record has the two: frames for each joule are frames a second for each watt. */
function asMeasured(c: Context, [top, bottom]: readonly [Unit, Unit]): [Unit, Unit] {
  const by = power[bottom.id];
  if (by && rates.has(top.id) && !c.grid.dimensions.has(top.dimension)) return [unit('fps'), unit(by)];
  return [top.dimension === 'temperature' && top.difference ? unit(top.difference) : top, bottom];
}

function sameTest(c: Context, a: Cell, b: Cell): boolean {
  const { setup, setting, workload, phase } = c.grid.of;
  return [...setup, ...setting, ...workload, ...phase].every((i) => a.at[i] === b.at[i]);
}

function partNamed(c: Context, index: number, x: Cell): boolean {
  return c.hits.hits.some((h) => h.segment === index && c.grid.of.part.includes(h.slot) && x.at[h.slot] === h.value);
}

/** Over the room; else over idle. */
function heated(c: Context, cell: Cell): { term: Term; more: number }[] {
  const over = overRoomTerm(c, cell);
  const idle = c.facts.idleOf(cell.key);
  const own: Term[] = cell.unit.dimension === 'temperature-difference' ? [valueOf(cell.key)] : [];
  return [...own.map((term) => ({ term, more: 0 })), ...(over ? [{ term: over, more: 0 }] : []), ...(idle && idle !== cell.key ? [{ term: { kind: 'rise', args: [cell.key, idle] } as Term, more: 0.6 }] : [])];
}
