// A mention read as a count of what the record has: setups, settings, loads, runs, combinations, or those that meet a mark.
import { Exact } from '../quantities/index.js';
import { withValue } from '../facts/index.js';
import { siblings } from './siblings.js';
import { type Candidate, type Context, subjectCells } from './context.js';
import { countedBy, type Counted, setSize } from './counted.js';
import { type Listed, listedBehind } from './counted-list.js';
import { phraseEnds } from './counted-words.js';
import { type Cell, firstTime } from './grid.js';
import { isCondition, readCondition } from './read-condition.js';
import { push } from './read-value.js';

function members(c: Context, index: number, what: Counted): { cells: Cell[]; n: number }[] {
  const g = c.grid;
  const count = (slots: readonly number[], filter: (x: Cell) => boolean): number => new Set(firstTime(g, g.cells).filter((x) => !x.fixed && filter(x)).map((x) => slots.map((i) => x.at[i]).join('/')).filter((v) => v.replace(/\//g, ''))).size;
  const reference = referenceCell(c, index, what === 'runs');
  if (!reference) return [];
  const { of } = g;
  if (what === 'setups') {
    const set = firstTime(g, siblings(g, reference, of.setup));
    const tested = [...g.values[of.setup[0]!]!.keys()].filter((v) => !g.holders.has(v) && !g.repeats.has(v)).length;
    const having = havingTopic(c);
    return [{ cells: set, n: of.setup.length === 1 ? tested : count(of.setup, () => true) }, ...(having.length > 1 && having.length < tested ? [{ cells: having, n: having.length }] : [])];
  }
  if (what === 'settings') { const set = firstTime(g, siblings(g, reference, of.setting)); const whole = siblings(g, reference, of.setting); return [{ cells: set, n: count(of.setting, () => true) }, { cells: set, n: set.length }, ...(whole.length > set.length ? [{ cells: whole, n: whole.length }] : []), ...(of.setting.length > 1 ? of.setting.map((i) => firstTime(g, siblings(g, reference, [i]))).filter((x) => x.length > 1).map((cells) => ({ cells, n: cells.length })) : [])]; }
  // Games are played for their frames: what has no frame rate is none.
  const played = what === 'workloads' && c.parsed.low.slice(c.parsed.said[index]!.mention.to, c.parsed.said[index]!.mention.to + 3).some((w) => /^(?:games?|titles?)$/.test(w)) ? g.cells.find((x) => !x.fixed && x.unit.dimension === 'frame-rate') : undefined;
  if (played) { const set = siblings(g, played, of.workload); return [{ cells: set, n: set.length }]; }
  if (what === 'workloads') return [{ cells: siblings(g, reference, of.workload), n: count(of.workload, () => true) }];
  if (what === 'combinations') { const set = firstTime(g, siblings(g, reference, [...of.setup, ...of.setting])); return [{ cells: set, n: set.length }, { cells: set, n: count([...of.setup, ...of.setting], (x) => of.setting.every((i) => x.at[i]) && of.setup.every((i) => !g.holders.has(x.at[i]!))) }, ...everyWay(c, reference)]; }
  return runsOf(c, index, reference);
}

/** "All eight combinations" of two settings and four loads, or of the things with both: what was varied, the load among it. */
function everyWay(c: Context, reference: Cell): { cells: Cell[]; n: number }[] {
  const { setup, setting, workload } = c.grid.of;
  return [[...setup, ...setting, ...workload], [...setting, ...workload], [...setup, ...workload]].flatMap((slots) => { const cells = siblings(c.grid, reference, slots); return workload.some((i) => reference.at[i]) && cells.length > 1 ? [{ cells, n: cells.length }] : []; });
}

/** One reading for each number of runs that readings of what is named have, the usual one first: "Quarry got three runs" may be said of its frames alone. */
function runsOf(c: Context, index: number, reference: Cell): { cells: Cell[]; n: number }[] {
  const out = new Map<number, Cell>();
  const named = c.grid.slots.map((_, i) => new Set(c.hits.hits.filter((h) => h.slot === i && h.segment === index && h.baseOf < 0).map((h) => h.value)));
  for (const x of [reference, ...c.grid.cells]) {
    const n = x.fixed || (x !== reference && !named.every((values, i) => !values.size || values.has(x.at[i]!))) ? 0 : c.facts.readings(x.key).length;
    if (n > (x === reference ? 0 : 1) && !out.has(n)) out.set(n, x);
  }
  return [...out].map(([n, x]) => ({ cells: [x], n }));
}

/** One reading of each thing that has any of the quantity spoken of: a thing without a height is not among "the four" that heights are given of. */
function havingTopic(c: Context): Cell[] {
  const g = c.grid;
  const own = [...g.of.measure, ...g.of.part];
  const of = new Map<string, Cell>();
  for (const x of g.byMeasure.get(c.now.topics[g.of.measure[0]!]![0] ?? '') ?? []) {
    const name = g.of.setup.map((i) => x.at[i]).join('/');
    if (x.role === 'limit' || x.role === 'target' || g.of.setup.some((i) => !x.at[i] || g.holders.has(x.at[i]!) || g.repeats.has(x.at[i]!)) || !own.every((i) => x.at[i] === c.now.topics[i]![0])) continue;
    if (!of.has(name)) of.set(name, x);
  }
  return [...of.values()];
}

/** The reading that stands for all when runs and settings are counted: of the latest topic, a usual measure; `plainly`: what was just named in a row is no topic. */
function referenceCell(c: Context, index: number, plainly = false): Cell | undefined {
  const g = c.grid;
  const topics = c.now.topics;
  // "the highest clock of the three settings": of those that have one.
  const { segment } = c.parsed.said[index]!;
  const ranked = c.parsed.said[index - 1]?.mention.type === 'superlative';
  const own = c.hits.hits.filter((h) => (h.segment === index || (ranked && h.segment === index - 1 && h.to <= segment.from + 1)) && (h.slot === g.of.measure[0] || h.slot === g.of.part[0]));
  const named = c.hits.hits.filter((h) => h.segment <= index && h.to <= c.parsed.said[index]!.mention.from && h.baseOf < 0 && ['setup', 'setting', 'workload'].includes(g.slots[h.slot]!.field));
  const weight = (x: Cell): number => {
    let w = 0;
    if (x.at[g.of.workload[0]!]) w += 2;
    for (const h of own) if (x.at[h.slot] === h.value) w += 6;
    for (const h of named) if (x.at[h.slot] === h.value) w += 2;
    for (const f of ['setup', 'setting', 'workload', 'measure', 'part'] as const) for (const i of g.of[f]) if (topics[i]![0] !== undefined && topics[i]![0] === x.at[i] && (!plainly || c.now.together[i] === 1)) w += 1;
    if (x.unit.dimension.startsWith('temperature')) w += 1.5;
    if (x.role === 'load' || x.role === 'end') w += 1;
    return w;
  };
  let best: Cell | undefined;
  let most = -1;
  for (const x of g.cells) {
    if (x.fixed) continue;
    const w = weight(x);
    if (w > most) { most = w; best = x; }
  }
  return best;
}

export function readCount(c: Context, index: number): { candidates: Candidate[]; sure: boolean } {
  const said = c.parsed.said[index]!;
  const { mention } = said;
  const out: Candidate[] = [];
  const { low } = c.parsed;
  if (isCondition(c, index)) return readCondition(c, index);
  const listed = listedBehind(c, index);
  if (listed && (listed.whole || mention.value.equals(Exact.of(listed.values.length)))) {
    const set = namedCells(c, index, listed);
    if (set.length === listed.values.length) { push(out, c, { kind: 'count', variant: 'keys', args: set.map((x) => x.key) }, 'count', 0, set[0], 'as many as are named behind it', { exact: true }); return { candidates: out, sure: true }; }
  }
  const counted = countedBy(c, index);
  const size = setSize(c, index);
  if (!counted && !size) return { candidates: [], sure: false };
  const what: Counted[] = counted ? counted.what : ['setups', 'settings', 'combinations', 'workloads'];
  for (const [k, w] of what.entries()) {
    for (const { cells, n } of members(c, index, w)) {
      // Where the record has but one of a kind, others are counted than those.
      if (!cells.length || (n === 1 && w !== 'runs' && mention.value.toNumber() > 1) || (mention.value.toNumber() > n * 2 && mention.value.toNumber() > 12)) continue;
      const variant = w === 'combinations' ? 'keys' : w;
      const whole = /^(?:other|remaining)$/.test(low[mention.from - 1] ?? '');
      const left = whole ? n - c.now.placed.length : n;
      if (whole && (w !== 'combinations' && w !== 'setups')) continue;
      if (whole) {
        const set = otherCells(c, index);
        if (set.length) push(out, c, { kind: 'count', variant: 'keys', args: set.map((x) => x.key) }, 'count', 0.1 * k, set[0], 'the others', { exact: true });
        // All but the one that the sentences before told of.
        const last = out.at(-1);
        if (last && n > 2) out.push({ ...last, cost: last.cost + 0.1, fact: withValue(last.fact, Exact.of(n - 1)) });
        continue;
      }
      push(out, c, { kind: 'count', variant, args: cells.map((x) => x.key) }, 'count', 0.1 * k, cells[0], w, { exact: true });
      const last = out.at(-1);
      if (last && last.fact.value.toNumber() !== left) out.push({ ...last, cost: last.cost + 0.05, fact: withValue(last.fact, Exact.of(left)) });
    }
  }
  const others = /^(?:other|remaining)$/.test(low[mention.from - 1] ?? '');
  return { candidates: out, sure: (!others || c.now.placed.length > 0) && ((counted?.sure ?? false) || (size && out.length > 0 && (counted !== undefined || (!ofOtherThings(c, index) && !(c.parsed.said[index - 1]?.mention.type === 'cardinal' && bare(c, index) && madeOfSome(c, mention.value.toNumber())))))) };
}

/** "two of the three price lists": a noun follows that is none of the record's. */
function ofOtherThings(c: Context, index: number): boolean {
  const { to } = c.parsed.said[index]!.mention;
  const { low, tokens } = c.parsed;
  for (let i = to; i < Math.min(low.length, to + 3); i++) {
    if (tokens[i]!.kind !== 'word' || phraseEnds.has(low[i]!) || c.parsed.names.some((n) => n.from <= i && i < n.to && n.meanings.some((x) => x.own))) return false;
    if (/\p{L}{3,}s$/u.test(low[i]!)) return i > to;
  }
  return false;
}

/** No noun follows. */
function bare(c: Context, index: number): boolean {
  const { to } = c.parsed.said[index]!.mention;
  return c.parsed.tokens[to]?.kind !== 'word' || phraseEnds.has(c.parsed.low[to]!) || !/s$/.test(c.parsed.low[to]!);
}

/** "three of the nine", where three things have four settings: as many as some of them make, and no noun says which are meant. */
function madeOfSome(c: Context, n: number): boolean {
  const { of, values } = c.grid;
  const many = (slots: readonly number[]): number => slots.reduce((k, i) => k * Math.max(1, values[i]!.size), 1);
  const [setups, settings] = [many(of.setup), many(of.setting)];
  for (let a = 2; a <= setups; a++) if (n % a === 0 && n / a >= 2 && n / a <= settings && n < setups * settings) return true;
  return false;
}

/** One reading of each that a list names. */
function namedCells(c: Context, index: number, listed: Listed): Cell[] {
  const reference = referenceCell(c, index, true);
  return reference ? siblings(c.grid, reference, [listed.slot]).filter((x) => listed.values.includes(x.at[listed.slot]!)) : [];
}

/** "each was run three times". */
export function readRuns(c: Context, index: number): Candidate[] {
  const out: Candidate[] = [];
  for (const { cells } of members(c, index, 'runs')) push(out, c, { kind: 'count', variant: 'runs', args: cells.map((x) => x.key) }, 'count', 0, cells[0], 'runs', { exact: true });
  return out;
}

/** "the other six", "the remaining three": all but those placed in the ranking read out, or but those spoken of last. */
export function otherCells(c: Context, index: number): Cell[] {
  const g = c.grid;
  const first = c.now.placed[0] === undefined ? undefined : g.byKey.get(c.now.placed[0]);
  const both = [...g.of.setup, ...g.of.setting];
  if (first) {
    const varied = both.filter((i) => new Set(c.now.placed.map((k) => g.byKey.get(k)?.at[i])).size > 1);
    const pick = c.parsed.low.includes('combinations') ? siblings(g, first, both) : siblings(g, first, varied.length ? varied : g.of.setup);
    const left = pick.filter((x) => !c.now.placed.includes(x.key));
    const n = othersSaid(c);
    if (n === undefined || n === left.length) return left;
  }
  const n = othersSaid(c);
  const { cells } = subjectCells(c, index, undefined, { limit: 1 });
  const slot = g.of.setup[0]!;
  if (n === undefined || !cells[0] || g.of.setup.length > 1) return [];
  const all = siblings(g, cells[0].cell, g.of.setup);
  const spoken = c.hits.hits.filter((h) => h.slot === slot).map((h) => h.value);
  const recent = [...new Set([...spoken, ...c.now.topics[slot]!])].slice(0, all.length - n);
  return all.filter((x) => !recent.includes(x.at[slot]!));
}

/** The number in "the other six". */
function othersSaid(c: Context): number | undefined {
  return c.parsed.said.find((s) => /^(?:other|remaining)$/.test(c.parsed.low[s.mention.from - 1] ?? ''))?.mention.value.toNumber();
}
