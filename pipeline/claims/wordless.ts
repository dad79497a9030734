// Comparisons that say no number: "the case ran hotter than the bench", "the Oak beats the Elm on core temperature",
// "the Oak wins on noise".
import type { Dimension } from '../quantities/index.js';
import { type Fact, type Facts, isFact, isIdle, judge, type Key, ofNoAccount } from '../facts/index.js';
import { comparatives, type Comparison, gradables, WordClass } from '../script/index.js';
import type { Hit, SentenceHits } from './evidence.js';
import { polarity } from './context.js';
import { type Cell, type Grid, kindOf } from './grid.js';
import type { Parsed } from './parse.js';
import type { State } from './state.js';

export interface WordlessClaim {
  /** Offsets into the sentence. */
  start: number;
  end: number;
  /** Of what is spoken of against what it is compared with; of several that could be meant, the first. */
  difference: Fact;
  /** The readings tell, and the other way round. */
  opposite: boolean;
}

export interface Heard {
  g: Grid;
  parsed: Parsed;
  hits: SentenceHits;
  before: State;
  facts: Facts;
}

/** What is asked, supposed, hoped or denied claims nothing. */
const noClaim = /\?\s*$|\b(?:if|whether|would|should|could|might|may|expect\w*|hope\w*|thought|think|not|no|never|hardly|barely|nobody|nothing|unless|suppose\w*|claims?|said)\b|n['’]t\b/i;

/** Those that the readings do not bear out, whichever of the readings that the words leave open is meant. */
export function wordlessClaims(h: Heard): WordlessClaim[] {
  const { parsed } = h;
  if (noClaim.test(parsed.text)) return [];
  return [...winners(h), ...compared(h)];
}

function compared(h: Heard): WordlessClaim[] {
  const { parsed } = h;
  return parsed.low.flatMap((word, i): WordlessClaim[] => {
    const comparison = comparatives.get(word);
    const than = parsed.low.indexOf('than', i + 1);
    if (!comparison || than < 0 || than > i + 2) return [];
    // "more interesting than the average": what is compared is no quantity.
    if (than === i + 2 && /^(?:more|less)$/.test(word) && !gradables.has(parsed.low[i + 1]!) && !h.parsed.names.some((n) => n.from <= i + 1 && i + 1 < n.to)) return [];
    const base = h.hits.hits.filter((x) => x.from > than && x.from <= than + 3);
    return base.flatMap((b): WordlessClaim[] => {
      const subjects = h.hits.hits.filter((x) => x.slot === b.slot && x.to <= i && x.value !== b.value);
      const a = subjects.at(-1);
      if (!a || new Set(subjects.map((x) => x.value)).size > 1 || !['setup', 'setting', 'part'].includes(h.g.slots[b.slot]!.field)) return [];
      const told = weigh(h, comparison, a, b);
      return told ? [{ start: parsed.tokens[i]!.start, end: parsed.tokens[b.to - 1]!.end, ...told }] : [];
    }).slice(0, 1);
  });
}

const beats = /^(?:beats?|beat|beaten|outperforms?|outperformed|outclasses)$/;
const wins = /^(?:wins?|won|leads?|led)$/;

/** The verbs of winning. */
export const winning = new WordClass(new RegExp(`${beats.source}|${wins.source}`));

/** Who is said to beat another, or all others, in a quantity that is named. */
function winners(h: Heard): WordlessClaim[] {
  const { parsed, hits, g } = h;
  if (parsed.said.some((s) => s.mention.type !== 'superlative' && s.mention.type !== 'ordinal') || !hits.hits.some((x) => g.of.measure.includes(x.slot))) return [];
  return parsed.low.flatMap((word, i): WordlessClaim[] => {
    const all = wins.test(word);
    if (!all && !beats.test(word)) return [];
    const a = hits.hits.filter((x) => x.to <= i && ['setup', 'setting'].includes(g.slots[x.slot]!.field) && !g.holders.has(x.value)).at(-1);
    if (!a || hits.hits.some((x) => x.to <= i && x.slot === a.slot && x.value !== a.value)) return [];
    const named = hits.hits.filter((x) => x.slot === a.slot && x.value !== a.value && x.from > i);
    if (all ? named.length > 0 || !/^(?:on|in|by|for|at)$/.test(parsed.low[i + 1] ?? '') : named.length !== 1) return [];
    const others = all ? [...g.values[a.slot]!.keys()].filter((v) => v !== a.value && !g.holders.has(v)).map((value) => ({ ...a, value })) : named;
    const told = others.flatMap((b) => weigh(h, { way: 'better', of: [] }, a, b) ?? []);
    const first = told.find((t) => t.opposite) ?? told[0];
    return first ? [{ start: parsed.tokens[i]!.start, end: parsed.tokens[all ? i : named[0]!.to - 1]!.end, ...first }] : [];
  });
}

function weigh(h: Heard, comparison: Comparison, a: Hit, b: Hit): Pick<WordlessClaim, 'difference' | 'opposite'> | undefined {
  const pairs = cellsOf(h, comparison, a, b).flatMap((cell): { difference: Fact; decided: boolean; open: boolean; means: number }[] => {
    const other = otherOf(h.g, cell, b);
    const difference = other === undefined ? undefined : h.facts.derive('difference', [cell.key, other]);
    const judged = isFact(difference) ? judge(h.facts, difference) : undefined;
    const sign = signOf(h, comparison, cell);
    return isFact(difference) && judged && sign !== 0 ? [{ difference, decided: judged.outcome === 'higher' || judged.outcome === 'lower', open: judged.outcome === 'undecided' || ofNoAccount(judged), means: sign * difference.value.sign() }] : [];
  });
  const [first] = pairs;
  if (!first) return undefined;
  if (pairs.every((p) => p.decided && p.means < 0)) return { difference: first.difference, opposite: true };
  if (pairs.every((p) => p.open)) return { difference: first.difference, opposite: false };
  return undefined;
}

/** All readings that fit what is named; what is not named may be anything, the idle aside. */
function cellsOf({ g, hits, before }: Heard, { of }: Comparison, a: Hit, b: Hit): Cell[] {
  const dimensions: readonly Dimension[] = of.length ? of : hits.dimensions.flatMap((d) => d.dimension);
  const named = g.slots.map((_, i) => (i === a.slot ? [a.value] : [...new Set(hits.hits.filter((x) => x.slot === i).map((x) => x.value))]));
  const measures = g.of.measure.some((i) => named[i]!.length > 0);
  if (!measures && dimensions.length === 0) return [];
  return g.cells.filter((cell) => {
    if (cell.fixed || cell.constant || cell.at[a.slot] !== a.value || (dimensions.length > 0 && !dimensions.includes(kindOf(cell.unit)))) return false;
    return g.slots.every((slot, i) => {
      if (i === a.slot || i === b.slot) return true;
      if (named[i]!.length > 0) return named[i]!.includes(cell.at[i]!);
      const topic = ['setup', 'setting', 'workload'].includes(slot.field) ? before.topics[i]?.[0] : undefined;
      if (slot.field === 'phase') return !isIdle(cell.at[i]!);
      return topic === undefined || cell.at[i] === topic || cell.at[i] === '';
    });
  });
}

function otherOf(g: Grid, cell: Cell, b: Hit): Key | undefined {
  return g.cells.find((c) => c.at[b.slot] === b.value && !c.fixed && g.slots.every((_, i) => i === b.slot || c.at[i] === cell.at[i]))?.key;
}

function signOf({ facts, g }: Heard, { way }: Comparison, cell: Cell): number {
  if (way === 'up') return 1;
  if (way === 'down') return -1;
  if (way !== 'better' && way !== 'worse') return 0;
  return polarity({ facts, grid: g }, cell) * (way === 'better' ? 1 : -1);
}
