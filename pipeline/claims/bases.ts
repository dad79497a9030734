// What a subject is compared with: what the words name, else what the sentences before suggest.
import { withoutAgent } from './agent.js';
import { endured, markPointedAt, spokenMark } from './spoken-mark.js';
import { byBefore } from './by-how-much.js';
import { besideIt, stepOn } from './beside-bases.js';
import { markByNumber } from './mark-by-number.js';
import { becoming } from './becoming.js';
import type { Role } from './roles.js';
import type { Context } from './context.js';
import { type Cell, constantOf, type Grid, moved, movedTo } from './grid.js';
import { ownBest, whole } from './cue-base.js';
import { extreme, ordered, second, siblings } from './siblings.js';
import { firstCell } from './terms.js';
import { usualOf } from './usual-setting.js';

export interface Base {
  cell: Cell;
  cost: number;
  /** Said outright. */
  firm: boolean;
  why: string;
}

/** What stands in the words of the comparison. */
export interface BaseWords {
  overrides: Map<number, string[]>;
  roles: Role[];
  median: boolean;
  leader: boolean;
  other: boolean;
  pronoun: boolean;
  /** Something is compared with, in words that say nothing more. */
  any: boolean;
  low: readonly string[];
}

export function baseWords(c: Context, index: number): BaseWords {
  const { parsed, hits } = c;
  const scope = whole(parsed.low, parsed.said[index]!.cue.base) ?? departure(c, index);
  const out: BaseWords = { overrides: new Map(), roles: [], median: false, leader: false, other: false, pronoun: false, any: false, low: [] };
  if (!scope) {
    addRoles(c, index, out);
    return out;
  }
  const low = (out.low = parsed.low.slice(scope.from, scope.to)); out.any = low.length > 0;
  for (const h of hits.hits) {
    // A name may begin with the word that opens the comparison: "4.1 louder up [on the sill]".
    if (h.to <= scope.from || h.from >= scope.to) continue;
    const field = c.grid.slots[h.slot]!.field;
    if (field === 'measure' || (field === 'part' && h.points)) continue;
    const list = out.overrides.get(h.slot) ?? [];
    if (!list.includes(h.value)) list.push(h.value);
    out.overrides.set(h.slot, list);
  }
  for (const r of hits.roles) if (r.from >= scope.from && r.from < scope.to) out.roles.push(r.role);
  out.roles.push(...markByNumber(c, index, scope, out.roles.length > 0 || out.overrides.size > 0));
  addRoles(c, index, out);
  // "only 4 degrees short of throttling": where it would begin is a limit.
  if (!out.overrides.size && !out.roles.length && low.some((w) => /^(?:throttl(?:e|es|ing)|shutdown|shutting|tripping)$/.test(w))) out.roles.push('limit');
  if (!out.overrides.size && !out.roles.length && endured.test(low.join(' '))) out.roles.push('limit', 'target');
  out.median = low.includes('median');
  // "more than in the top", where a place is called so, is no leader.
  const called = (k: number): boolean => hits.hits.some((h) => h.from <= scope.from + k && scope.from + k < h.to);
  out.leader = low.some((w, k) => !called(k) && /^(?:winner|leader|best|champion|first|top|leading|front)$/.test(w));
  out.other = low.some((w) => /^(?:other|others|rival|competitor|competition|second)$/.test(w));
  out.pronoun = low.some((w) => /^(?:it|that|this|them|those|its|before|same)$/.test(w));
  if (out.pronoun && !out.roles.length && !out.overrides.size) out.roles.push(...markPointedAt(c, index));
  return out;
}

/** "From idle, it warmed up by 15": what the sentence sets out from is what every change in it is measured from. */
function departure(c: Context, index: number): { from: number; to: number } | undefined {
  return /^(?:change|ratio)$/.test(c.parsed.said[index]!.cue.op) ? c.hits.hits.find((h) => h.alone) : undefined;
}

/** "breaks the ceiling, by 3.4 degrees": a mark in the same stretch as a change is what it is measured from. */
function addRoles(c: Context, index: number, out: BaseWords): void {
  // "45 is all I can stand, so that was two degrees too many"
  if (c.parsed.said[index]!.cue.because.startsWith('too ') && !out.roles.length) out.roles.push('limit', 'target');
  if (c.parsed.said[index]!.cue.op !== 'change' || out.roles.length || out.overrides.size) return;
  for (const r of c.hits.roles) if (r.segment === index && r.firm && /^(?:limit|target|rated)$/.test(r.role)) out.roles.push(r.role);
  if (!out.roles.length) for (const r of c.hits.roles) if (r.departs) out.roles.push(r.role);
  const mark = out.roles.length ? undefined : spokenMark(c, index);
  if (mark) out.roles.push(mark);
  // "passes the house mark by 1.3": who holds the marks is named for them.
  if (!out.roles.length && c.hits.hits.some((h) => h.segment === index && h.to <= c.parsed.said[index]!.mention.from && c.grid.holders.has(h.value)) && byBefore(c.parsed.low, c.parsed.said[index]!.mention.from) > 0) out.roles.push('limit', 'target');
}

/** All combinations of the values named, one for each slot. */
export function changesOf(words: BaseWords): Map<number, string>[] {
  let out: Map<number, string>[] = [new Map()];
  for (const [slot, values] of words.overrides) out = out.flatMap((m) => values.map((v) => new Map([...m, [slot, v]])));
  return out.filter((m) => m.size > 0);
}

const starts: readonly Role[] = ['idle', 'start'];

/** Bases for one subject, the best first. */
export function basesFor(c: Context, subject: Cell, index: number, words: BaseWords, way: string | undefined): Base[] {
  const g = c.grid;
  const out: Base[] = [];
  const add = (cell: Cell | undefined, cost: number, firm: boolean, why: string): void => {
    if (!cell || cell === subject || cell.unit.dimension !== subject.unit.dimension || out.some((b) => b.cell === cell)) return;
    out.push({ cell, cost, firm, why });
  };
  const phaseSlot = g.of.phase[0]!;
  // "Measured against the label, …": what is on the label is not itself spoken of.
  if (subject.fixed && words.roles.includes(subject.role) && words.overrides.size === 0) return out;
  for (const role of words.roles) {
    if (role === 'limit' || role === 'target' || role === 'rated' || role === 'offset') add(constantOf(g, subject, role) ?? instead(g, subject, role), 0, true, `the ${role}`);
    else if (role === 'idle' || role === 'start' || role === 'load' || role === 'end') for (const change of [...changesOf(words), new Map<number, string>()]) {
      for (const [v, r] of g.roles) if (r === role) add(moved(g, subject, new Map([...change, [phaseSlot, v]])), 0, role !== 'load', v);
    }
  }
  for (const change of changesOf(words)) {
    // A slot that the subject shares with the base is no comparison ("on the same bench").
    if ([...change].every(([i, v]) => subject.at[i] === v)) continue;
    add(moved(g, subject, change) ?? onlyOne(g, subject, change), 0, true, 'named');
    for (const role of ['limit', 'target', 'rated'] as const) if ([...change.values()].some((v) => g.holders.has(v))) add(constantOf(g, subject, role), 0, true, 'named');
    // Words beside the name may belong to the subject: try each named slot alone.
    if (change.size > 1) for (const [i, v] of change) if (subject.at[i] !== v) add(moved(g, subject, new Map([[i, v]])), 0.6, true, 'named');
  }
  const { course } = c.hits;
  if (course && !words.overrides.size && !out.length) {
    if (subject.at[course.slot] === course.to) add(moved(g, subject, new Map([[course.slot, course.from]])), 0, true, 'from … to');
    if (out.length || subject.at[course.slot] === course.from) return out;
  }
  // "97 percent of its best rate": of its own in whatever setting.
  if (/^(?:its|their|his|her)$/.test(words.low[0] ?? '') && words.low.slice(1, 3).some((w) => ownBest.test(w)) && !words.overrides.size) {
    const top = ordered(c, subject, g.of.setting)[0];
    add(top, 0, true, 'its own best');
    if (out.length || top === subject) return out;
  }
  // "quieter than the next best": whoever comes right behind.
  if (words.leader && words.low.some((w) => /^(?:next|second|runner)$/.test(w))) {
    const order = ordered(c, subject, g.of.setup);
    add(order[order.indexOf(subject) + 1], 0, true, 'the next best');
    if (out.length) return out;
  }
  if (words.leader) add(extreme(c, subject, g.of.setup) ?? (c.parsed.said[index]!.cue.op === 'share' ? extreme(c, subject, g.of.setting) : undefined), 0, true, 'the best');
  if (out.length) return out;
  // What is compared with was named, and this subject is it, or has nothing there: no other base is meant.
  add(withoutAgent(c, index, subject), 0.1, false, 'without what does it');
  if (words.overrides.size && ![...words.overrides].every(([i]) => g.slots[i]!.field === 'part')) return out;
  const pronoun = words.pronoun && words.overrides.size === 0;
  if (pronoun) for (const t of c.now.said) { const last = t.kind === 'mean' ? firstCell(g, t) : undefined; if (last && last !== subject && last.unit.dimension === subject.unit.dimension) { add(last, 0.1, false, 'what was said last'); break; } }
  if (pronoun || (words.any && /^(?:limit|allowed)$/.test(words.low.join(' ')))) {
    if (c.now.constant) add(constantLike(g, subject, c.now.constant), 0, false, 'the limit spoken of');
  }
  if (!words.any) add(besideIt(c, subject, index), 0, false, 'the figure beside it');
  if (!words.any) add(stepOn(c, index), 0.05, false, 'a step on');
  softBases(c, subject, index, way, add);
  return out;
}

/** "rated for 60", where the record has it as a limit: whatever mark there is. */
function instead(g: Grid, subject: Cell, role: Role): Cell | undefined {
  for (const other of ['limit', 'target', 'rated'] as const) { const k = role === 'offset' || other === role ? undefined : constantOf(g, subject, other); if (k) return k; }
  return undefined;
}

/** "the desktop", which was measured in one setting alone. */
function onlyOne(g: Grid, subject: Cell, change: ReadonlyMap<number, string>): Cell | undefined {
  if (![...change.keys()].some((i) => g.of.setup.includes(i))) return undefined;
  const those = (g.byMeasure.get(subject.at[g.of.measure[0]!]!) ?? []).filter((x) => !x.fixed && g.slots.every((slot, i) => x.at[i] === (change.get(i) ?? subject.at[i]) || (slot.field === 'setting' && !change.has(i))));
  return those.length === 1 ? those[0] : undefined;
}

function constantLike(g: Grid, subject: Cell, key: string): Cell | undefined {
  const cell = g.byKey.get(key);
  return cell && cell.at[g.of.measure[0]!] === subject.at[g.of.measure[0]!] ? constantOf(g, subject, cell.role) : undefined;
}

function softBases(c: Context, subject: Cell, index: number, way: string | undefined, plain: (cell: Cell | undefined, cost: number, firm: boolean, why: string) => void): void {
  const g = c.grid;
  const { now } = c;
  // What is spoken of is compared with something else, not something else with it; the section's own thing may be spoken of again without a word.
  const topical = (cell: Cell): boolean => [...g.of.setup, ...g.of.setting].some((i) => cell.at[i] !== subject.at[i] && cell.at[i] === now.topics[i]![0] && now.together[i] === 1 && !c.hits.hits.some((h) => h.slot === i && h.value === subject.at[i]) && !now.heading.some(([k, v]) => k === i && v === subject.at[i]));
  // "Its core rose by 24": where the record has what it rose from, that is not another thing.
  const phaseSlot = g.of.phase[0]!;
  const start = becoming(c, index) ? [...g.roles].map(([v, r]) => (r === 'start' && subject.at[phaseSlot] !== v ? movedTo(g, subject, phaseSlot, v) : undefined)).find((x) => x !== undefined) : undefined;
  if (start) plain(start, 0.1, false, start.at[phaseSlot]!);
  // "It had come down by 18 degrees, to 44.5": from what it was at some other time.
  if (start) for (const [v, r] of g.roles) if (r !== 'start' && subject.at[phaseSlot] !== v) { const then = movedTo(g, subject, phaseSlot, v); if (then && !then.fixed) plain(then, 0.3, false, v); }
  const another = (cell: Cell): boolean => start !== undefined && g.of.setup.some((i) => cell.at[i] !== subject.at[i]);
  const add = (cell: Cell | undefined, cost: number, firm: boolean, why: string): void => plain(cell, cell && topical(cell) ? cost + 0.9 : cell && another(cell) ? cost + 0.5 : cost, firm, why);
  if (now.pair) {
    const [from, to] = now.pair.map((k) => g.byKey.get(k));
    if (to === subject) add(from, 0, false, 'from … to');
    else if (from && to) {
      const change = new Map(g.slots.flatMap((_, i) => (from.at[i] !== to.at[i] ? [[i, from.at[i]!] as const] : [])));
      // "Its shell sinks by 6.2 and its hum rises by 11.4": the same step in the same sentence, which no topic turns round.
      const same = now.pair !== c.before.pair && !c.hits.paired.has(index) && !c.hits.hits.some((h) => h.segment === index && change.has(h.slot)) && c.done.findLast((d) => d?.change?.length)?.sign !== 0 && [...change.keys()].every((i) => subject.at[i] === to.at[i]);
      if (same) plain(moved(g, subject, change), 0.05, false, 'as in the pair before');
      else add(moved(g, subject, change), 0.3, false, 'as in the pair before');
    }
  }
  if (now.base) {
    const change = new Map(now.base);
    if (![...change].every(([i, v]) => subject.at[i] === v)) add(moved(g, subject, change), 0.3, false, 'the comparison before');
  }
  const named = new Set(c.hits.hits.filter((h) => h.baseOf < 0).map((h) => g.slots[h.slot]!.field));
  for (const field of ['setting', 'setup', 'workload'] as const) {
    for (const i of g.of[field]) {
      const topics = now.topics[i]!;
      topics.forEach((v, k) => { if (v !== subject.at[i]) add(movedTo(g, subject, i, v), (named.has(field) ? 0.2 : 0.4) + 0.15 * k, false, 'spoken of before'); });
    }
  }
  for (const role of starts) {
    for (const [v, r] of g.roles) if (r === role && subject.at[phaseSlot] !== v) add(movedTo(g, subject, phaseSlot, v), way === 'up' || way === undefined || role === 'start' ? 0.5 : 0.9, false, v);
  }
  for (const i of g.of.setting) {
    const stock = usualOf(g.values[i]!.keys()) ?? [...g.values[i]!.keys()][0];
    if (stock !== undefined && stock !== subject.at[i]) add(movedTo(g, subject, i, stock), 0.7, false, 'the usual setting');
  }
  for (const field of ['setup', 'setting'] as const) {
    for (const i of g.of[field]) {
      const others = [...g.values[i]!.keys()].filter((v) => v !== subject.at[i] && !g.holders.has(v));
      others.slice(0, 12).forEach((v) => add(movedTo(g, subject, i, v), others.length === 1 ? 0.6 : 1.1, false, 'the other'));
    }
  }
  if (subject.unit.dimension !== 'temperature' || way === 'worse' || way === 'better') {
    add(extreme(c, subject, g.of.setup), way === 'worse' ? 0 : 0.8, false, 'the best');
    add(second(c, subject), way === 'better' ? 0 : 0.9, false, 'the next');
  } else {
    add(extreme(c, subject, g.of.setup), 0.9, false, 'the best');
    add(second(c, subject), 0.9, false, 'the next');
  }
  for (const role of ['limit', 'target', 'rated'] as const) {
    const k = constantOf(g, subject, role);
    const { cue, mention } = c.parsed.said[index]!;
    const percent = mention.unit?.id === '%' && cue.op === 'change';
    add(k, spare.test(cue.because) && !percent ? (k?.key === now.constant ? 0 : 0.2) : percent ? 1.4 : k && k.key === now.constant ? 0.4 : way === 'apart' || way === undefined ? 0.8 : 1.2, false, `the ${role}`);
  }
}

/** What is left is left to a limit more often than to another thing. */
const spare = /^(?:to spare|to go|spare|to play with|in hand|in reserve|left|of (?:headroom|margin|slack|leeway|clearance|room|breathing room))$/;

/** What a median is of: all things, or "the median of the others". */
export function medianSet(c: Context, cell: Cell, words: BaseWords): Cell[] {
  const others = words.low.some((w) => /^(?:other|others|rest|remaining)$/.test(w));
  return siblings(c.grid, cell, c.grid.of.setup).filter((x) => !others || x !== cell);
}
