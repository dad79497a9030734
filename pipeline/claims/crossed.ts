// Two figures that have changed places: each is right for what the other is said of. "The Larch is at 52 and the Alder at 47",
// where it is 47 and 52. One number may be right for another reading by chance; two that are right for each other are not.
import { stretch } from '../script/index.js';
import { isFact } from '../facts/index.js';
import { type Candidate, type Context, sameCellExcept } from './context.js';
import { fit } from './decide.js';
import { factOf } from './doubt.js';
import { type Cell, movedTo } from './grid.js';
import type { Reading } from './read.js';

/** How much dearer than the best a reading may be: further where neither number fits anything that its own name has. */
const reach = { neither: 2.2, one: 1.5 } as const;
/** As many numbers may stand between the two. */
const apart = 2;

/** The readings of one sentence, with those that are swapped found wrong. */
export function crossed(c: Context, readings: readonly Reading[]): readonly Reading[] {
  const out = [...readings];
  for (let i = 0; i < readings.length; i++) for (let j = i + 1; j < readings.length && j <= i + 1 + apart; j++) {
    const [a, b] = [readings[i]!, readings[j]!];
    if (!figure(c, i) || !figure(c, j) || [a, b].some((r) => r.verdict === 'disagrees') || (a.verdict === 'agrees' && b.verdict === 'agrees' && !loosely(a) && !loosely(b) && !setAgainst(c, i, j))) continue;
    const unit = (r: Reading): string | undefined => r.mention.unit?.dimension;
    if (unit(a) && unit(b) && unit(a) !== unit(b)) continue;
    const found = swapped(c, a, b, i, j);
    if (!found) continue;
    out[i] = { ...a, verdict: 'disagrees', chosen: found[0], why: 'it has changed places with another', insisted: true };
    out[j] = { ...b, verdict: 'disagrees', chosen: found[1], why: 'it has changed places with another', insisted: true };
  }
  return out;
}

function figure(c: Context, k: number): boolean {
  const { mention: m, named } = c.parsed.said[k]!;
  return !named && m.type === 'cardinal' && !m.hedge;
}

/** It agrees only because it is right for one reading alone of those left open. */
function loosely(r: Reading): boolean {
  return r.why.startsWith('right for one reading alone');
}

/**
 * "It is 1.21 against 1.17": what the sentences before spoke of against what they compared it with, by slot. Undefined where
 * either is named here.
 */
function setAgainst(c: Context, i: number, j: number): (readonly [string, string] | undefined)[] | undefined {
  const { low, said } = c.parsed;
  const [from, to] = (c.before.pair ?? []).map((k) => c.grid.byKey.get(k));
  if (j !== i + 1 || !from || !to || (c.before.since ?? 0) > 1 || !/^(?:against|versus|vs|compared (?:with|to))$/.test(stretch(low, said[i]!.mention.to, said[j]!.mention.from))) return undefined;
  if (said[i]!.cue.op !== 'value' || !low.slice(said[i]!.segment.from, said[i]!.mention.from).some((w) => /^(?:it|it's|that|that's)$/.test(w))) return undefined;
  const slots = sameCellExcept(c.grid, from, to);
  if (c.hits.hits.some((h) => slots.includes(h.slot))) return undefined;
  // "The Cobble 93, the Garth 88 … on the long boil it's 71 against 66": the two may as well come in the order in which they were named.
  const { list } = c.before;
  if (list && slots.includes(list.slot) && list.values.indexOf(from.at[list.slot]!) >= 0 && list.values.indexOf(from.at[list.slot]!) < list.values.indexOf(to.at[list.slot]!)) return undefined;
  return c.grid.slots.map((_, s) => (slots.includes(s) ? [to.at[s]!, from.at[s]!] as const : undefined));
}

function swapped(c: Context, a: Reading, b: Reading, i: number, j: number): [Candidate, Candidate] | undefined {
  const g = c.grid;
  for (const field of ['setup', 'setting', 'workload', 'part'] as const) for (const slot of g.of[field]) {
    const [v, w] = setAgainst(c, i, j)?.[slot] ?? [nameOf(c, i, slot), nameOf(c, j, slot)];
    if (v === undefined || w === undefined || v === w) continue;
    const own = [ofName(a, slot, v), ofName(b, slot, w)] as const;
    const right = [own[0].some((x) => fit(a.mention, x)), own[1].some((x) => fit(b.mention, x))];
    if (right[0] && right[1]) continue;
    const paired = c.hits.paired.has(i) && c.hits.paired.has(j);
    if ((right[0] || right[1]) && !paired) continue;
    const far = right[0] || right[1] ? reach.one : reach.neither;
    const least = a.ranked[0]?.candidate.cost ?? 0;
    for (const x of own[0]) {
      if (x.cost > least + far || fit(a.mention, x)) continue;
      const y = elsewhere(c, x, slot, v, w);
      if (y && !fit(b.mention, y) && fit(a.mention, y) && fit(b.mention, x)) return [x, y];
    }
  }
  return undefined;
}

/** Plain values and changes of what is called so. */
function ofName(r: Reading, slot: number, value: string): Candidate[] {
  return r.ranked.map((x) => x.candidate).filter((x) => x.subject && !x.subject.fixed && x.subject.at[slot] === value && (x.term.kind === 'mean' || x.base !== undefined) && x.term.args.every((t) => typeof t === 'string'));
}

/** The same reading of the other. */
function elsewhere(c: Context, x: Candidate, slot: number, v: string, w: string): Candidate | undefined {
  const other = (cell: Cell): Cell | undefined => (cell.at[slot] === v ? movedTo(c.grid, cell, slot, w) : cell);
  const subject = other(x.subject!);
  const base = x.base && other(x.base);
  if (!subject || (x.base && (!base || base === subject))) return undefined;
  const fact = base ? factOf(c, x, subject, base) : c.facts.value(subject.key);
  return fact && isFact(fact) ? { ...x, fact, subject, ...(base && { base }) } : undefined;
}

/** What a figure is said of: named in its own stretch, or right before it in that of a place ("Third, the Larch, with 65.2"). */
function nameOf(c: Context, k: number, slot: number): string | undefined {
  const pair = c.hits.paired.get(k)?.find((x) => x.slot === slot);
  if (pair) return pair.value;
  const of = (segment: number): readonly string[] => [...new Set(c.hits.hits.filter((h) => h.slot === slot && h.segment === segment && h.baseOf < 0 && !h.departs).map((h) => h.value))];
  const own = of(k);
  if (own.length) return own.length === 1 ? own[0] : undefined;
  const before = c.parsed.said[k - 1];
  const placed = before && before.mention.type !== 'cardinal' ? of(k - 1) : [];
  return placed.length === 1 ? placed[0] : undefined;
}
