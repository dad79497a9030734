// A count of those that meet something: "three of the five stay below forty degrees", "all four pass the kilogram mark",
// "of the six, five need more than a minute", "it should stay under 70, and four of the six do".
import { type Unit, unit } from '../quantities/index.js';
import { unitAt, stretch } from '../script/index.js';
import { isFact } from '../facts/index.js';
import { siblings } from './siblings.js';
import { type Bound, boundIn, failingVerbs, keepingVerbs, loosely, negations, proVerbs, turned } from './condition-words.js';
import { type Candidate, type Context, polarity, subjectCells } from './context.js';
import { countedBy, type Counted } from './counted.js';
import { type Cell, firstTime } from './grid.js';
import { setsMark } from './own-mark.js';
import { push } from './read-value.js';

export interface Condition {
  /** Of how many. */
  size: number;
  /** The mention that says of how many. */
  of: number;
  /** The words of the condition. */
  from: number;
  to: number;
  /** The bound was said before. */
  before: boolean;
}

/** The condition that a number counts by; undefined where it counts nothing so. */
export function conditionAt(c: Context, index: number): Condition | undefined {
  const m = c.parsed.said[index]?.mention;
  if (!m || m.type !== 'cardinal' || m.unit || m.decimals > 0 || m.step) return undefined;
  const { low, said, tokens } = c.parsed;
  const next = said[index + 1]?.mention;
  const previous = said[index - 1]?.mention;
  let size: number;
  let of = index;
  let from = m.to;
  if (next && next.type === 'cardinal' && !next.unit && low[m.to] === 'of' && next.from - m.to <= 3) {
    [size, of, from] = [next.value.toNumber(), index + 1, next.to];
  } else if (previous && previous.type === 'cardinal' && !previous.unit && opens(low, previous.from) && /^,(?: (?:only|just|a|good|at|least|exactly|still|as|many|all))*$/.test(stretch(low, low.lastIndexOf(',', m.from), m.from)) && m.from - previous.to <= 12) [size, of] = [previous.value.toNumber(), index - 1];
  else if (/^all(?: the| of the| of our)?$/.test(stretch(low, Math.max(0, m.from - 3), m.from).replace(/^.*?(?=all\b)/, '')) && (low[m.to] !== 'of' || /^(?:them|these|those)$/.test(low[m.to + 1] ?? '')) && !overAll(low, m.from)) size = m.value.toNumber();
  else return undefined;
  // "of all nine combinations only one is over it": how many there are, and the other is counted.
  if (size === m.value.toNumber() && of === index && /^of all$/.test(stretch(low, Math.max(0, m.from - 2), m.from)) && low.slice(m.to, m.to + 6).some((w) => /^(?:one|none|nothing|only|just|two|three|four|five)$/.test(w))) return undefined;
  if (size < 2 || size > 40 || m.value.toNumber() > size) return undefined;
  let to = from;
  // "all twelve, ten of them stay under": another count, and no figure of this one.
  const counts = (k: number): boolean => said.some((s) => s.mention.from === k && low[s.mention.to] === 'of');
  const figure = (k: number): boolean => said.some((s) => s.mention.from <= k && k < s.mention.to);
  while (to < low.length) {
    const w = low[to]!;
    if (/^(?:;|:|\(|—|–)$/.test(w) || (w === ',' && (!figure(to + 1) || counts(to + 1))) || /^(?:and|but|while|because|so|which|though|although|where)$/.test(w)) break;
    if (to > from && conditionOpens(c, to, index)) break;
    to++;
  }
  const verb = low.slice(from, to).find((w, k) => tokens[from + k]!.kind === 'word' && proVerbs.has(w));
  const own = boundIn(low, from, to) !== undefined || low.slice(from, to).some((w) => keepingVerbs.has(w) || failingVerbs.has(w));
  const stated = boundIn(low, from, to);
  // "two of the six are over it": the mark stands before.
  const points = stated !== undefined && /^(?:it|that|them|those|this)$/.test(low[stated.to] ?? '') && said.some((s) => s.mention.to <= m.from && s.mention.type === 'cardinal' && s !== said[of]);
  if (own) return { size, of, from, to, before: points };
  if (verb !== undefined && to - from <= 4 && boundIn(low, 0, m.from)) return { size, of, from, to, before: true };
  return undefined;
}

/** "the median over all six is 41": what something is of, and not those that do something. */
function overAll(low: readonly string[], at: number): boolean {
  let k = at - 1;
  while (k >= 0 && /^(?:all|the|of|our|my|these|those)$/.test(low[k]!)) k--;
  return /^(?:over|across|among|between|from|for)$/.test(low[k] ?? '') && low.slice(Math.max(0, k - 5), k).some((w) => /^(?:median|mean|average|averaged|spread|range|gap|difference)$/.test(w));
}

/** "Of the six, …", "and of our five …" */
function opens(low: readonly string[], at: number): boolean {
  let k = at - 1;
  while (k >= 0 && /^(?:the|all|our|my|these|those)$/.test(low[k]!)) k--;
  if (low[k] === 'of' && low[k - 1] === 'out') k--;
  return k < at - 1 && (low[k] === 'of' || low[k] === 'out') && (k === 0 || /^(?:,|;|:|and|but|so)$/.test(low[k - 1]!));
}

/** Another count begins here. */
function conditionOpens(c: Context, at: number, index: number): boolean {
  return c.parsed.said.some((s, k) => k > index + 1 && s.mention.from === at && c.parsed.low[s.mention.to] === 'of');
}

const kept = new WeakMap<Context['parsed'], Map<number, Condition | undefined>>();

function conditionOf(c: Context, index: number): Condition | undefined {
  let known = kept.get(c.parsed);
  if (!known) kept.set(c.parsed, (known = new Map()));
  if (!known.has(index)) known.set(index, conditionAt(c, index));
  return known.get(index);
}

export function isCondition(c: Context, index: number): boolean {
  return conditionOf(c, index) !== undefined;
}

/** The figures that a count is about: in its own words, else the last one before it. */
function marksOf(c: Context, index: number, condition: Condition): number[] {
  const { said } = c.parsed;
  const usable = (k: number): boolean => { const m = said[k]!.mention; return k !== index && k !== condition.of && m.type === 'cardinal' && m.unit?.id !== 'points' && said[k]!.cue.op !== 'count'; };
  const own = said.flatMap((s, k) => (s.mention.from >= condition.from && s.mention.from < condition.to && usable(k) ? [k] : []));
  // "with 30 to spare, two of the three fit": what there is room for stands before.
  const room = own.length ? [] : said.flatMap((s, k) => (s.mention.to < said[index]!.mention.from && usable(k) && c.parsed.low[s.mention.to] === 'to' && c.parsed.low[s.mention.to + 1] === 'spare' ? [k] : []));
  if (room.length) return room.slice(-1);
  const asked = own.length ? [] : said.flatMap((_, k) => (k < index && usable(k) && wanted(c, k) ? [k] : []));
  if (asked.length) return asked.slice(-1);
  if (own.length || !condition.before) return own.slice(0, 1);
  const bound = boundIn(c.parsed.low, condition.from, condition.to) ? undefined : boundIn(c.parsed.low, 0, said[index]!.mention.from)!;
  return said.flatMap((s, k) => (s.mention.from >= (bound?.from ?? 0) && s.mention.to < said[index]!.mention.from && usable(k) ? [k] : [])).slice(0, 1);
}

/** The mark that a count in the sentence is about: no claim of its own. */
export function isMark(c: Context, index: number): boolean {
  if (wanted(c, index)) return true;
  return c.parsed.said.some((_, i) => { const x = i === index ? undefined : conditionOf(c, i); return x !== undefined && marksOf(c, i, x).includes(index); });
}

/** "short of the 3 we need", "the 45 we allow": a mark of the speaker's. */
export function wanted(c: Context, index: number): boolean {
  const { low, said } = c.parsed;
  const { mention } = said[index]!;
  // "A gram and a half is the most I put up with"
  if (setsMark(low, mention)) return true;
  return low[mention.from - 1] === 'the' && /^(?:that |which )?(?:i|we|you) (?!measured|saw|see|got|get|had|have|found|recorded|read|noted|heard|mentioned|said|just|did|took|started)[a-z]/.test(stretch(low, mention.to, mention.to + 3));
}

interface Mark { operand?: string; like?: Cell; unit?: Unit; value?: number; at?: number; cost: number }

function marks(c: Context, index: number, condition: Condition): Mark[] {
  const g = c.grid;
  const { low, said, tokens } = c.parsed;
  const out: Mark[] = [];
  for (const k of marksOf(c, index, condition)) {
    const m = said[k]!.mention;
    const same = g.cells.filter((x) => { const f = x.fixed ? c.facts.value(x.key) : undefined; return f && isFact(f) && (!m.unit || m.unit.dimension === f.unit.dimension || (m.loose && f.unit.dimension.startsWith('temperature'))) && f.value.equals(m.value); });
    for (const x of same) out.push({ operand: x.key, like: x, at: k, cost: 0 });
    out.push({ value: m.value.toNumber(), ...(m.unit && { unit: m.unit }), at: k, cost: same.length && !m.unit ? 1.3 : 0 });
  }
  if (out.length) return out;
  // "60 is the most I want to see, and two of the four manage that"
  const own = c.now.mark;
  if (own && !c.hits.hits.some((h) => g.holders.has(h.value)) && low.slice(condition.from, condition.to).some((w) => /^(?:it|that|this)$/.test(w))) return [{ value: own.value.toNumber(), ...(own.unit && { unit: unit(own.unit) }), cost: 0 }];
  for (let i = condition.from; i < condition.to; i++) {
    const u = /^(?:the|a|one)$/.test(low[i]!) ? unitAt(tokens, i + 1, true) : undefined;
    if (u) out.push({ value: 1, unit: u.unit, cost: 0 });
  }
  if (out.length) return out;
  // "go over their power limit": a quantity is named with the mark.
  const named = measuresNamed(c, condition);
  const fits = (x: Cell): boolean => !named.length || named.includes(x.at[g.of.measure[0]!]!);
  // "stay under my line": whoever holds the marks is named, and has one for each quantity at most.
  for (const h of c.hits.hits) if (g.holders.has(h.value) && h.from >= condition.from && h.to <= condition.to) for (const x of g.cells) if (x.fixed && x.at[h.slot] === h.value && fits(x) && (x.role === 'target' || x.role === 'limit')) out.push({ operand: x.key, like: x, cost: x.key === c.now.constant ? 0 : 0.1 });
  if (out.length) return out;
  const last = c.now.constant ? g.byKey.get(c.now.constant) : undefined;
  // "go over their power limits": each its own, and not that of the one spoken of.
  const spoken = last && fits(last) && (!named.length || g.of.setup.some((i) => g.holders.has(last.at[i]!))) ? last : undefined;
  if (spoken) out.push({ operand: spoken.key, like: spoken, cost: 0.1 });
  const roles = c.hits.roles.filter((r) => r.role === 'limit' || r.role === 'target');
  for (const role of new Set(roles.map((r) => r.role))) out.push({ operand: role, cost: 0.2 });
  return out;
}

/** Quantities named in the words of a condition. */
function measuresNamed(c: Context, condition: Condition): string[] {
  return c.hits.bySlot[c.grid.of.measure[0]!]!.filter((h) => h.from >= condition.from && h.to <= condition.to).map((h) => h.value);
}

export function readCondition(c: Context, index: number): { candidates: Candidate[]; sure: boolean } {
  const g = c.grid;
  const condition = conditionOf(c, index)!;
  const { low, said } = c.parsed;
  const own = boundIn(low, condition.from, condition.to);
  const words = condition.before && !own ? low.slice(0, said[index]!.mention.from) : low.slice(condition.from, condition.to);
  const stated = own ?? (condition.before ? boundIn(low, 0, said[index]!.mention.from) : undefined);
  const fails = words.some((w) => failingVerbs.has(w));
  const negated = low.slice(condition.from, condition.to).some((w) => negations.has(w));
  const out: Candidate[] = [];
  const counted = countedBy(c, condition.of) ?? countedBy(c, index);
  const all = marks(c, index, condition);
  const quantities = measuresNamed(c, condition);
  // "the one gets 47, the other 44, so all three …": what the sentence goes through is what is counted.
  const through = g.slots.map((_, i) => new Set(c.hits.hits.filter((h) => h.slot === i && h.from < said[index]!.mention.from).map((h) => h.value)).size > 1);
  for (const t of all) {
    // "below the limit of 95": what stands by the mark is not what is held to it.
    const at = t.at !== undefined && t.at > index && !(t.like && c.hits.bySlot[g.of.phase[0]!]!.some((h) => h.from >= condition.from && h.to <= condition.to)) ? t.at : index;
    const units = t.like ? [t.like.unit] : t.unit ? [t.unit] : t.value === undefined && quantities.length ? [...new Set(quantities.flatMap((q) => (g.byMeasure.get(q) ?? []).map((x) => x.unit)))] : undefined;
    for (const { cell, cost } of subjectCells(c, at, units, { ahead: at === index, measured: true, limit: 2 }).cells.slice(0, 40)) {
      if (cell.fixed || (quantities.length && !t.like && !t.unit && !quantities.includes(cell.at[g.of.measure[0]!]!)) || (t.unit && cell.unit.dimension !== t.unit.dimension && !(t.unit.dimension.startsWith('temperature') && cell.unit.dimension.startsWith('temperature')))) continue;
      if (t.like && [...g.of.measure, ...g.of.part].some((i) => t.like!.at[i] && cell.at[i] !== t.like!.at[i])) continue;
      for (const [what, slots] of ways(g)) {
        const set = firstTime(g, siblings(g, cell, slots).filter((x) => !x.fixed));
        if (set.length !== condition.size || (t.value !== undefined && outside(c, set, t.value, t.unit))) continue;
        const operand = t.value !== undefined ? `=${t.value} ${(t.unit ?? cell.unit).id}` : t.like ? t.operand! : c.facts.constantFor(cell.key, t.operand as 'limit' | 'target');
        if (!operand) continue;
        // "stay under our ceiling", where whose ceiling it is has a name of its own: no other one is meant.
        const holder = t.value === undefined ? c.hits.hits.find((h) => g.holders.has(h.value) && h.from >= condition.from && h.to <= condition.to) : undefined;
        const another = holder && g.byKey.get(operand)?.at[holder.slot] !== holder.value ? 2 : 0;
        // Where neither way is better, a target is to be reached, and a limit kept to.
        const side = polarity(c, cell) || ((t.like?.role ?? t.operand) === 'target' ? 1 : -1);
        const good: Bound = side < 0 ? 'at-most' : 'at-least';
        let bound = stated?.bound ?? good;
        if (fails) bound = turned(good);
        if (negated) bound = turned(bound);
        const other = counted ? (counted.what.includes(what) ? 0 : 0.7) : through.some(Boolean) && !slots.some((i) => through[i]) ? 0.7 : 0;
        // "go over their power limits": each is held to a mark of its own.
        const each = t.like || t.value !== undefined ? [] : set.map((x) => c.facts.constantFor(x.key, t.operand as 'limit' | 'target'));
        if (new Set(each).size > 1) {
          const those = set.filter((x, k) => each[k] !== undefined && meets(c, x, each[k], bound));
          if (those.length && !each.includes(undefined)) push(out, c, { kind: 'count', variant: 'keys', args: those.map((x) => x.key) }, 'count', cost + t.cost + other, cell, bound, { exact: true, keys: set.map((x) => x.key) });
          continue;
        }
        // Whether the mark itself counts is seldom meant: where it would make a difference, both are right.
        for (const [variant, more] of [[bound, 0], [loosely(bound), 0.1]] as const) push(out, c, { kind: 'count', variant, args: [...set.map((x) => x.key), operand] }, 'count', cost + t.cost + other + another + more, cell, variant, { exact: true, keys: set.map((x) => x.key) });
      }
    }
  }
  if (!out.length) return { candidates: [], sure: false };
  const least = Math.min(...out.map((x) => x.cost));
  // The mark is of the size of one quantity alone.
  const alone = new Set(out.filter((x) => x.cost <= least + 1).map((x) => [...g.of.measure, ...g.of.part].map((i) => x.subject!.at[i]).join('/'))).size === 1;
  const lately = c.now.ages[g.of.measure[0]!]! <= 2 && out.some((x) => x.cost === least && x.subject!.at[g.of.measure[0]!] === c.now.topics[g.of.measure[0]!]![0]);
  const named = alone || lately || all.some((t) => t.like || t.unit) || c.hits.roles.length > 0 || c.hits.dimensions.length > 0 || c.hits.hits.some((h) => h.slot === g.of.measure[0] || h.slot === g.of.part[0]);
  return { candidates: out.map((x) => ({ ...x, cost: x.cost - least })), sure: named && !said.some((_, k) => k < index && wanted(c, k)) && (stated !== undefined || fails || words.some((w) => keepingVerbs.has(w))) };
}

function meets(c: Context, x: Cell, operand: string, bound: Bound): boolean {
  const [value, mark] = [c.facts.value(x.key), c.facts.value(operand)];
  if (!isFact(value) || !isFact(mark) || value.unit !== mark.unit) return false;
  const side = value.value.compare(mark.value);
  return bound === 'above' ? side > 0 : bound === 'below' ? side < 0 : bound === 'at-least' ? side >= 0 : side <= 0;
}

function ways(g: Context['grid']): [Counted, readonly number[]][] {
  return [['settings', g.of.setting], ['setups', g.of.setup], ['combinations', [...g.of.setup, ...g.of.setting]], ['workloads', g.of.workload]];
}

/** A mark far from all values is about another measure. */
function outside(c: Context, set: readonly Cell[], mark: number, unit: Unit | undefined): boolean {
  if (unit && unit.id !== set[0]!.unit.id && !(unit.dimension.startsWith('temperature'))) return false;
  const values = set.map((x) => { const f = c.facts.value(x.key); return isFact(f) ? f.value.toNumber() : 0; });
  return mark < Math.min(...values) / 1.3 || mark > Math.max(...values) * 1.3;
}
