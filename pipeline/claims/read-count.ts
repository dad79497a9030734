// A mention read as a count of what the record has: setups, settings, loads, runs, combinations, or those that meet a mark.
import { Exact, type Unit } from '../quantities/index.js';
import { withValue } from '../facts/index.js';
import { unitAt } from '../script/index.js';
import { siblings } from './bases.js';
import { type Candidate, type Context, polarity, subjectCells } from './context.js';
import { type Cell, firstTime, type Grid } from './grid.js';
import { push } from './read-value.js';

export type Counted = 'setups' | 'settings' | 'workloads' | 'runs' | 'combinations';

const nouns: readonly [Counted, boolean, RegExp][] = [
  ['settings', true, /^(?:settings?|modes?|profiles?|configurations?|configs?|presets?|curves?)$/],
  ['settings', false, /^(?:speeds?|steps?|levels?|limits?|loads?)$/],
  ['workloads', true, /^(?:workloads?|scenes?|games?|benchmarks?|renders?|titles?)$/],
  ['workloads', false, /^(?:loads?|tests?|steps?|levels?|heat)$/],
  ['runs', true, /^(?:runs?|passes|repeats|repetitions)$/],
  ['combinations', true, /^(?:combinations?|combos?|pairings?)$/],
  ['setups', true, /^(?:setups?|contenders?|candidates?|entrants?|laptops?|coolers?|supplies|cards?|loops?|machines?|heatsinks?|notebooks?|phones?|routers?|printers?|headsets?|keyboards?|monitors?|enclosures?|chassis|desktops?|towers?|pastes?|tablets?|chargers?)$/],
  ['setups', false, /^(?:arrangements?|ways?|versions?|variants?|results?|layouts?)$/],
  ['settings', false, /^(?:arrangements?|ways?|versions?|variants?|layouts?|caps?)$/],
  ['combinations', false, /^(?:arrangements?|ways?|results?|layouts?)$/],
  ['setups', false, /^(?:fans?|pumps?|cases?|drives?|boards?|chips?|pads?|kits?|models?|products?|units?|boxes|samples?|radiators?|sticks?|modules?|designs?|systems?|options?|ones?|cpus?|processors?|ssds?|blocks?|brands?)$/],
];

/** Nouns for whatever was varied. */
const plainCount = /^(?:arrangements|ways|versions|variants|results|layouts)$/;

/** What a number counts, by the noun after it; `sure` where the noun can hardly mean anything else. */
export function countedBy(c: Context, index: number): { what: Counted[]; sure: boolean } | undefined {
  const { mention } = c.parsed.said[index]!;
  const { low, tokens } = c.parsed;
  for (let i = mention.to; i < Math.min(low.length, mention.to + 4); i++) {
    if (tokens[i]!.kind === 'mark' && low[i] !== '-') break;
    if (/^(?:of|and|or|to|in|on|at|with|is|are|was|were|that|which|than|under|for|by|as|over|from|when|after|before|then|while|so|per|behind|above|below|idle|the|an?|my|our|your|its|their|his|her|it|they|we|you|i)$/.test(low[i]!)) break;
    if (c.before.title.includes(singular(low[i]!)) && /s$/.test(low[i]!)) return { what: ['setups'], sure: i <= mention.to + 2 };
    const found = nouns.filter(([, , re]) => re.test(low[i]!));
    if (found.length && !found.some(([, sure]) => sure) && !/^(?:the|all|these|those|our|my|of|other)$/.test(low[mention.from - 1] ?? '') && !plainCount.test(low[i]!) && !nameWord(c, low[i]!)) return undefined;
    if (found.length) return { what: found.map(([w]) => w), sure: found.some(([, sure]) => sure) && (i === mention.to || i === mention.to + 1) };
  }
  return undefined;
}

export function singular(noun: string): string {
  return noun.replace(/ies$/, 'y').replace(/s$/, '');
}

/** The noun is how the things tested, or the settings and loads, are called in the record. */
function nameWord(c: Context, noun: string): boolean {
  const stem = noun.replace(/s$/, '');
  const { setups, settings, workloads } = c.facts.about;
  return [setups, settings, workloads].some((map) => [...map.values()].filter((n) => !c.grid.holders.has(n.id)).some((n) => [n.id.replace(/[-_]/g, ' '), n.name, ...n.spoken].some((s) => new RegExp(`\\b${stem}s?\\b`, 'i').test(s))));
}

/** "two of the four", "all six", "the other 6". */
export function setSize(c: Context, index: number): boolean {
  const { mention } = c.parsed.said[index]!;
  const { low } = c.parsed;
  const before = low.slice(Math.max(0, mention.from - 3), mention.from).join(' ');
  if (/(?:^| )(?:all|the other|other|all the|all of the|the remaining|remaining)$/.test(before)) return true;
  const previous = c.parsed.said[index - 1];
  return previous !== undefined && previous.mention.type !== 'fraction' && previous.mention.type !== 'multiplier' && !previous.mention.unit && /(?:of the|of all|of our|of these|of those|of all the)$/.test(before) && mention.from - previous.mention.to <= 4;
}

function members(c: Context, what: Counted): { cells: Cell[]; n: number }[] {
  const g = c.grid;
  const count = (slots: readonly number[], filter: (x: Cell) => boolean): number => new Set(firstTime(g, g.cells).filter((x) => !x.fixed && filter(x)).map((x) => slots.map((i) => x.at[i]).join('/')).filter((v) => v.replace(/\//g, ''))).size;
  const reference = referenceCell(c);
  if (!reference) return [];
  const { of } = g;
  if (what === 'setups') {
    const set = firstTime(g, siblings(g, reference, of.setup));
    const tested = [...g.values[of.setup[0]!]!.keys()].filter((v) => !g.holders.has(v) && !g.repeats.has(v)).length;
    return [{ cells: set, n: of.setup.length === 1 ? tested : count(of.setup, () => true) }];
  }
  if (what === 'settings') { const set = firstTime(g, siblings(g, reference, of.setting)); return [{ cells: set, n: count(of.setting, () => true) }, { cells: set, n: set.length }]; }
  if (what === 'workloads') return [{ cells: siblings(g, reference, of.workload), n: count(of.workload, () => true) }];
  if (what === 'combinations') { const set = firstTime(g, siblings(g, reference, [...of.setup, ...of.setting])); return [{ cells: set, n: set.length }, { cells: set, n: count([...of.setup, ...of.setting], (x) => of.setting.every((i) => x.at[i])) }]; }
  return [{ cells: [reference], n: c.facts.readings(reference.key).length }];
}

/** The reading that stands for all when runs and settings are counted: of the latest topic, a usual measure. */
function referenceCell(c: Context): Cell | undefined {
  const g = c.grid;
  const topics = c.now.topics;
  const weight = (x: Cell): number => {
    let w = 0;
    if (x.at[g.of.workload[0]!]) w += 2;
    for (const f of ['setup', 'setting', 'workload', 'measure', 'part'] as const) for (const i of g.of[f]) if (topics[i]![0] !== undefined && topics[i]![0] === x.at[i]) w += 1;
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
  const condition = isCondition(c, index);
  if (condition) return readCondition(c, index);
  const counted = countedBy(c, index);
  const size = setSize(c, index);
  if (!counted && !size) return { candidates: [], sure: false };
  const what: Counted[] = counted ? counted.what : ['setups', 'settings', 'combinations', 'workloads'];
  for (const [k, w] of what.entries()) {
    for (const { cells, n } of members(c, w)) {
      // Where the record has but one of a kind, others are counted than those.
      if (!cells.length || (n === 1 && w !== 'runs' && mention.value.toNumber() > 1) || (size && mention.value.toNumber() > n * 2 && mention.value.toNumber() > 12)) continue;
      const variant = w === 'combinations' ? 'keys' : w;
      const whole = /^(?:other|remaining)$/.test(low[mention.from - 1] ?? '');
      const left = whole ? n - c.now.placed.length : n;
      if (whole && (w !== 'combinations' && w !== 'setups')) continue;
      if (whole) {
        const set = otherCells(c, index);
        if (set.length) push(out, c, { kind: 'count', variant: 'keys', args: set.map((x) => x.key) }, 'count', 0.1 * k, set[0], 'the others', { exact: true });
        continue;
      }
      push(out, c, { kind: 'count', variant, args: cells.map((x) => x.key) }, 'count', 0.1 * k, cells[0], w, { exact: true });
      const last = out.at(-1);
      if (last && last.fact.value.toNumber() !== left) out.push({ ...last, cost: last.cost + 0.05, fact: withValue(last.fact, Exact.of(left)) });
    }
  }
  const others = /^(?:other|remaining)$/.test(low[mention.from - 1] ?? '');
  return { candidates: out, sure: (!others || c.now.placed.length > 0) && ((counted?.sure ?? false) || (size && out.length > 0)) };
}

/** "each was run three times". */
export function readRuns(c: Context, _index: number): Candidate[] {
  const out: Candidate[] = [];
  for (const { cells } of members(c, 'runs')) push(out, c, { kind: 'count', variant: 'runs', args: cells.map((x) => x.key) }, 'count', 0, cells[0], 'runs', { exact: true });
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

const upward = /^(?:past|pass|passes|passed|exceed|exceeds|exceeded|over|above|beat|beats|top|tops|more|heavier|louder|hotter|clear|cross|crosses|reach|reaches|break|breaks)$/;
const downward = /^(?:under|below|stay|stays|stayed|meet|meets|met|within|less|lighter|quieter|cooler|fit|fits|keep|keeps|inside)$/;

/** "two of the four": a count of those that meet something. */
export function isCondition(c: Context, index: number): boolean {
  const m = c.parsed.said[index]?.mention;
  const next = c.parsed.said[index + 1]?.mention;
  return m !== undefined && next !== undefined && m.type === 'cardinal' && !m.unit && next.type === 'cardinal' && !next.unit && c.parsed.low[m.to] === 'of' && next.from - m.to <= 3;
}

/** The mark that a count before it in the sentence is about: no claim of its own. */
export function isThreshold(c: Context, index: number): boolean {
  const m = c.parsed.said[index]!.mention;
  if (!m.hedge || !/^(?:less than|more than|at most|at least)$/.test(m.hedge.name)) return false;
  for (let i = index - 1; i >= 0; i--) {
    const s = c.parsed.said[i]!;
    if (i < index - 1 && isCondition(c, i)) return true;
    // "of the six, five stay below 300"
    if (s.mention.type === 'cardinal' && !s.mention.unit && s.mention.decimals === 0 && s.mention.value.toNumber() <= 20 && s.cue.op !== 'change' && !s.cue.elided && /^(?:stays?|stayed|are|is|were|was|pass|go|goes|get|gets|keep|keeps|remain|remains|manage|manages|need|needs|do|fit|come|end|run|runs)$/.test(c.parsed.low[s.mention.to] ?? '')) return true;
  }
  return false;
}

/** "two of the four settings meet it", "only two of the six pass the kilogram mark". */
function readCondition(c: Context, index: number): { candidates: Candidate[]; sure: boolean } {
  const g: Grid = c.grid;
  const out: Candidate[] = [];
  const next = c.parsed.said[index + 1]!;
  const { low } = c.parsed;
  const tail = low.slice(next.mention.to);
  const size = next.mention.value.toNumber();
  const up = tail.some((w, i) => upward.test(w) || (/^(?:longer|louder|hotter|heavier|higher|faster|warmer|better|greater|larger|bigger)$/.test(w) && tail[i + 1] === 'than'));
  const down = tail.some((w, i) => downward.test(w) || (/^(?:shorter|lower|slower|worse|smaller|fewer)$/.test(w) && tail[i + 1] === 'than'));
  const missing = tail.some((w) => /^(?:miss|misses|missed|fail|fails|failed)$/.test(w));
  const thresholds: { operand: string; like?: Cell; cost: number; mass?: string; unit?: Unit }[] = [];
  const until = c.parsed.said.slice(index + 2).find((_, k) => isCondition(c, index + 2 + k))?.mention.from ?? Infinity;
  for (const later of [...c.parsed.said.slice(index + 2).filter((s) => s.mention.from < until), ...c.parsed.said.slice(0, index).reverse()]) {
    const m = later.mention;
    if (m.type !== 'cardinal' || m.unit?.id === 'points' || later.cue.op === 'count' || (m.from < until && thresholds.length)) continue;
    if (m.unit) thresholds.push({ operand: `=${m.value.toString()} ${m.unit.id}`, mass: m.unit.dimension, unit: m.unit, cost: 0 });
    else if (m.hedge) thresholds.push({ operand: `#${m.value.toString()}`, cost: 0 });
  }
  for (let i = next.mention.to; i < low.length; i++) {
    const u = /^(?:the|a|one)$/.test(low[i]!) ? unitAt(c.parsed.tokens, i + 1, true) : undefined;
    if (u) thresholds.push({ operand: `=1 ${u.unit.id}`, mass: u.unit.dimension, unit: u.unit, cost: 0 });
  }
  for (const r of c.hits.roles) if (r.role === 'limit' || r.role === 'target') thresholds.push({ operand: r.role, cost: 0.2 });
  const spoken = c.now.constant ? g.byKey.get(c.now.constant) : undefined;
  if (spoken) thresholds.push({ operand: spoken.key, like: spoken, cost: 0.1 });
  for (const t of thresholds) {
    const base = t.like ?? undefined;
    const { cells } = subjectCells(c, index, base ? [base.unit] : t.unit ? [t.unit] : undefined, { limit: 2 });
    for (const { cell, cost } of cells.slice(0, 20)) {
      if (cell.fixed || (t.mass && cell.unit.dimension !== t.mass)) continue;
      if (base && cell.at[g.of.part[0]!] !== base.at[g.of.part[0]!]) continue;
      for (const slots of [g.of.setting, g.of.setup, [...g.of.setup, ...g.of.setting]]) {
        const set = firstTime(g, siblings(g, cell, slots));
        if (set.length !== size || (t.operand.startsWith('#') && outside(c, set, Number(t.operand.slice(1))))) continue;
        const operand = t.operand.startsWith('#') ? `=${t.operand.slice(1)} ${cell.unit.id}` : t.operand.startsWith('=') || t.like ? t.operand : roleKey(c, cell, t.operand as 'limit' | 'target');
        if (!operand) continue;
        const lower = polarity(c, cell) <= 0;
        const variants = up && !down ? ['above'] : down && (tail.includes('under') || tail.includes('below')) ? ['below'] : missing ? [lower ? 'above' : 'below'] : down || up ? [lower ? 'at-most' : 'at-least'] : ['at-most', 'above'];
        for (const variant of variants) push(out, c, { kind: 'count', variant, args: [...set.map((x) => x.key), operand] }, 'count', cost + t.cost, cell, variant, { exact: true, keys: set.map((x) => x.key) });
      }
    }
  }
  const least = Math.min(...out.map((x) => x.cost));
  return { candidates: out.map((x) => ({ ...x, cost: x.cost - least })), sure: out.length > 0 && (up || down || missing) && (thresholds.some((t) => t.like) || c.hits.roles.length > 0 || c.hits.dimensions.length > 0 || c.hits.hits.some((h) => h.slot === g.of.measure[0] || h.slot === g.of.part[0])) };
}

/** A mark far from all values is about another measure. */
function outside(c: Context, set: readonly Cell[], mark: number): boolean {
  const values = set.map((x) => { const f = c.facts.value(x.key); return 'id' in f ? f.value.toNumber() : 0; });
  return mark < Math.min(...values) / 1.3 || mark > Math.max(...values) * 1.3;
}

function roleKey(c: Context, cell: Cell, role: 'limit' | 'target'): string | undefined {
  return c.facts.constantFor(cell.key, role);
}
