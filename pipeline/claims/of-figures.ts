// A multiple of figures that stand beside it: both sides are said in so many words, and no reading of the record is looked for.
//   "2,178 rpm in the one, 1,081 in the other, basically double"
//   "It gains 18, the other 6. Three times as much."
//   "4 watts on slow and 9 on fast, a ratio of 2.25"
//   "The first notch buys 9 degrees and the next 3, so that one is worth three times this one"
import { stretch } from '../script/index.js';
import { Exact } from '../quantities/index.js';
import type { Mention } from '../script/index.js';
import { baseWords } from './bases.js';
import type { Candidate, Context } from './context.js';
import { fit } from './decide.js';
import type { Hit } from './evidence.js';
import type { Cell } from './grid.js';
import { namesRatio, spokenBy, tailOf } from './ratio-words.js';
import { push, readValue } from './read-value.js';
import { firstCell, type Term, valueOf } from './terms.js';

export const ofFigures = 'of the two figures said';

interface Figure { term: Term; subject: Cell }

export interface Told {
  candidates: Candidate[];
  /** Both stand beside it: what does not fit is wrong. */
  sure: boolean;
}

/** Undefined where no two figures of one quantity stand beside it, or the words speak of others. */
export function figuresTold(c: Context, index: number): Told | undefined {
  const { mention: m, segment } = c.parsed.said[index]!;
  const ahead = following(c, index);
  if (ahead) return told(c, m, [ahead], true);
  const { low } = c.parsed;
  const tail = namesRatio(low, m) ? { ends: true } : tailOf(low, m, Math.max(c.parsed.said[index]!.cue.base?.to ?? 0, segment.to));
  const inside = lastTwo(c, index);
  const since = inside?.to ?? lastFigure(c, index)?.to ?? 0;
  const named = (h: Hit): boolean => ['setup', 'setting', 'workload', 'phase'].includes(c.grid.slots[h.slot]!.field) && !h.departs;
  const words = baseWords(c, index);
  const of = [...words.overrides].flatMap(([slot, values]) => values.map((value) => ({ slot, value })));
  const own = c.hits.hits.filter((h) => named(h) && h.from >= since && h.from < Math.max(segment.to, m.to) && h.baseOf !== index && h.segment === index);
  const steps = own.length || of.length ? undefined : byPlace(low.slice(since, m.from), low.slice(m.to, m.to + 6));
  if (!steps && !tail.ends && !of.length) return undefined;
  if (words.roles.length || (words.low.some((w) => /^(?:what|its|their|before|was|were)$/.test(w)) && !of.length)) return undefined;
  const pair = inside?.figures ?? withOneBefore(c, index, own) ?? (steps && !steps.both ? undefined : fromBefore(c, index, steps !== undefined));
  if (!pair || !comparable(c, pair) || ofOther(c, index, since, pair[0].subject) || (steps && figuresOf(c, index).length > 2)) return undefined;
  const dims = spokenBy(tail.adjective);
  if (dims.length && !dims.includes(pair[0].subject.unit.dimension)) return undefined;
  const turned: [Figure, Figure] = [pair[1], pair[0]];
  const orders = steps ? [steps.top === 0 ? pair : turned] : [pair, turned].filter(([a, b]) => matches(a, own) && matches(b, of));
  return told(c, m, orders, inside !== undefined || steps !== undefined || own.length > 0 && lastFigure(c, index) !== undefined || (tail.ends && elliptic(low.slice(0, m.from)) && justNamed(c, pair)));
}

/** Where no word says which is which, the larger is a multiple of the smaller. */
function told(c: Context, m: Mention, orders: readonly (readonly [Figure, Figure])[], sure: boolean): Told | undefined {
  const out: Candidate[] = [];
  for (const [a, b] of orders) push(out, c, { kind: 'ratio', args: [a.term, b.term] }, 'ratio', 0, a.subject, ofFigures, { firm: true, base: b.subject });
  const one = Exact.of(1);
  const candidates = out.filter((x) => orders.length === 1 || (x.fact.value.abs().compare(one) > 0) === (m.value.compare(one) > 0));
  return candidates.length ? { candidates, sure } : undefined;
}

/** "…, and the flow is one and a half times as high": another quantity is named. */
function ofOther(c: Context, index: number, since: number, cell: Cell): boolean {
  const { segment } = c.parsed.said[index]!;
  const dims = c.grid.measureUnits.get(cell.at[c.grid.of.measure[0]!]!);
  const within = (at: number): boolean => at >= Math.max(since, segment.from) && at < segment.to;
  return c.hits.hits.some((h) => within(h.from) && h.slot === c.grid.of.measure[0] && h.value !== cell.at[h.slot]) || c.hits.dimensions.some((d) => within(d.from) && !d.dimension.some((x) => dims?.has(x)));
}

/** The last two figures before it in the sentence, where both were read rightly. */
function lastTwo(c: Context, index: number): { figures: [Figure, Figure]; to: number } | undefined {
  const at = figuresOf(c, index).slice(-2);
  if (at.length < 2) return undefined;
  const figures = at.map((k) => figure(c, k, c.done[k]));
  const last = c.parsed.said[at[1]!]!.mention;
  if (!figures[0] || !figures[1] || c.parsed.said[index]!.mention.from - last.to > 9) return undefined;
  return { figures: [figures[0], figures[1]], to: last.to };
}

/** Places of the figures before it in the sentence. */
function figuresOf(c: Context, index: number): number[] {
  return c.parsed.said.flatMap((s, k) => (k < index && s.mention.type === 'cardinal' && !s.named ? [k] : []));
}

function lastFigure(c: Context, index: number): Mention | undefined {
  const k = figuresOf(c, index).at(-1);
  return k === undefined ? undefined : c.parsed.said[k]!.mention;
}

/** "The one drifted by 2, so its rival moved five times as far": the figure of the other was given before. */
function withOneBefore(c: Context, index: number, own: readonly Hit[]): [Figure, Figure] | undefined {
  const [k, ...more] = figuresOf(c, index);
  const beside = k === undefined || more.length || !own.length ? undefined : figure(c, k, c.done[k]);
  if (!beside || matches(beside, own)) return undefined;
  const other = c.before.said.map((term) => ({ term, subject: firstCell(c.grid, term)! })).find((f) => f.subject && matches(f, own) && comparable(c, [f, beside]));
  return other && [other, beside];
}

function figure(c: Context, k: number, x: Candidate | undefined): Figure | undefined {
  return x?.subject && fit(c.parsed.said[k]!.mention, x) ? { term: x.term, subject: x.subject } : undefined;
}

/** "Thrice the draw, 36 watts instead of 12": the two come after. */
function following(c: Context, index: number): [Figure, Figure] | undefined {
  const [a, b] = [c.parsed.said[index + 1], c.parsed.said[index + 2]];
  const { mention: m } = c.parsed.said[index]!;
  const { low } = c.parsed;
  if (!a || !b || a.mention.type !== 'cardinal' || b.mention.type !== 'cardinal' || a.mention.from - m.to > 5 || low[m.to] === 'as' || !/^[,:(—–-]$/.test(low[a.mention.from - 1] ?? '')) return undefined;
  if (!/^(?:instead of|against|versus|vs|rather than|not|compared (?:with|to)|where|to)(?: the)?$/.test(stretch(low, a.mention.to, b.mention.from))) return undefined;
  const [p, q] = [read(c, index + 1), read(c, index + 2)];
  return p && q && comparable(c, [p, q]) ? [p, q] : undefined;
}

/** A figure that was not come to yet, where it is read rightly; the name of what is set to that stands for it. */
function read(c: Context, k: number): Figure | undefined {
  const { mention, named } = c.parsed.said[k]!;
  const slots = named?.meanings.flatMap((x) => x.slots) ?? [];
  const set = slots.length ? c.grid.cells.filter((x) => x.constant && slots.some((s) => x.at[s.slot] === s.value)) : [];
  const out: Candidate[] = [];
  for (const cell of set) push(out, c, valueOf(cell.key), 'constant', 0, cell, '');
  return figure(c, k, (named ? out : readValue(c, k, 1.2)).find((x) => x.term.kind === 'mean' && fit(mention, x)));
}

/** What the sentence before said last; of steps, the last two of one kind. */
function fromBefore(c: Context, index: number, steps: boolean): [Figure, Figure] | undefined {
  if (figuresOf(c, index).length) return undefined;
  const [b, ...rest] = c.now.said.map((term) => ({ term, subject: firstCell(c.grid, term)! })).filter((f) => f.subject);
  const a = b && (steps ? rest.find((f) => comparable(c, [f, b])) : rest[0]);
  return a && b && (!steps || kinds[a.term.kind] === 'change') ? [a, b] : undefined;
}

const kinds: Readonly<Record<string, string>> = { mean: 'value', raw: 'value', difference: 'change', rise: 'change', over_room: 'change', points: 'change' };

/** Degrees and decibels have no multiple: twice as loud is not twice the number. */
export function multiplies(cell: Cell): boolean {
  return cell.unit.dimension !== 'temperature' && cell.unit.dimension !== 'sound-level';
}

/** Two values, or two changes, of one quantity. */
function comparable(c: Context, [a, b]: readonly [Figure, Figure]): boolean {
  const kind = kinds[a.term.kind];
  if (!kind || kinds[b.term.kind] !== kind || a.subject === b.subject && kind === 'value') return false;
  const measure = c.grid.of.measure[0]!;
  if (a.subject.at[measure] !== b.subject.at[measure]) return false;
  return kind === 'change' || multiplies(a.subject);
}

function matches(f: Figure, named: readonly { slot: number; value: string }[]): boolean {
  return named.every((h) => f.subject.at[h.slot] === h.value);
}

/** "the first notch is worth three times the next": by the place that each had. */
function byPlace(before: readonly string[], after: readonly string[]): { top: 0 | 1; both: boolean } | undefined {
  const place = (words: readonly string[]): 0 | 1 | undefined => {
    const k = words.findIndex((w) => /^(?:first|former|second|latter|next|last)(?:'s)?$/.test(w));
    return k < 0 || words[k - 1] !== 'the' ? undefined : /^(?:first|former)/.test(words[k]!) ? 0 : 1;
  };
  const [a, b] = [place(before), place(after)];
  const top = a ?? (b === undefined ? undefined : (1 - b) as 0 | 1);
  return top === undefined || b === top ? undefined : { top, both: a !== undefined && b !== undefined };
}

/** "2.2 times as much.", "More than double.": no sentence of its own. */
function elliptic(words: readonly string[]): boolean {
  return words.length <= 4 && words.every((w) => /^(?:or|so|and|about|around|roughly|nearly|almost|more|than|less|well|over|under|just|basically|practically|exactly|a|an|good|bit|little|fully|only|some|,|-|–|—)$/.test(w));
}

/** One of the two was named in the sentence before. */
function justNamed(c: Context, [a, b]: readonly [Figure, Figure]): boolean {
  return c.grid.slots.some((_, i) => a.subject.at[i] !== b.subject.at[i] && c.before.ages[i] === 0);
}
