// What the readings of one mention are made from, and a reading itself.
import type { Dimension, Unit } from '../quantities/index.js';
import { unit } from '../quantities/index.js';
import type { Fact, Facts } from '../facts/index.js';
import type { Mention, Way } from '../script/index.js';
import { cellsFor } from './cells.js';
import { type SentenceHits, evidenceFor, type SlotEvidence } from './evidence.js';
import type { Cell, Grid } from './grid.js';
import type { Parsed, Said } from './parse.js';
import type { State } from './state.js';
import type { Term } from './terms.js';
import type { VerdictWord } from './decide.js';

export interface Context {
  facts: Facts;
  grid: Grid;
  parsed: Parsed;
  hits: SentenceHits;
  /** Before the sentence. */
  before: State;
  /** As the sentence goes on. */
  now: State;
  /** What the mentions before this one in the sentence were read as. */
  done: (Candidate | undefined)[];
  /** What was said of them. */
  told: VerdictWord[];
}

/** One reading of a mention. */
export interface Candidate {
  /** How far it is from what the words say; 0 is nothing unsaid. */
  cost: number;
  term: Term;
  fact: Fact;
  /** As in the tables of trial episodes: raw, mean, rise, difference … */
  kind: string;
  /** Expected sign of the fact's value; 0 where the words give none. */
  sign: -1 | 0 | 1;
  subject?: Cell;
  base?: Cell;
  /** What it is compared with was said outright. */
  firm: boolean;
  /** No word decided on it, but that the number fits it alone. */
  settled?: true;
  /** Compare the said number exactly (counts, places). */
  exact?: boolean;
  why: string;
  /** Slot values of the base that differ from the subject's. */
  change?: readonly (readonly [number, string])[];
  /** A second fact that the same mention states (the other end of a range). */
  keys?: readonly string[];
}

/** Up to what cost readings are looked for at all. */
export const reachOfCosts = 3.2;

const temperature: readonly Unit[] = [unit('degC'), unit('K')];

/** The units whose measures a mention can be about: its own, both of temperature and difference for degrees; undefined for any. */
export function unitsOf(said: Pick<Said, 'mention'>, changeOrShare: boolean): readonly Unit[] | undefined {
  const u = said.mention.unit;
  if (!u) return undefined;
  if (u.dimension === 'temperature' || u.dimension === 'temperature-difference') return temperature;
  if (u.id === '%' && changeOrShare) return undefined;
  if (u.id === 'points') return undefined;
  let own = alone.get(u);
  if (!own) alone.set(u, (own = [u]));
  return own;
}

/** One list for each unit, so that what is known of a list is found again. */
const alone = new WeakMap<Unit, readonly Unit[]>();

/** A bare number whose measure the words leave open is hardly one that lies far outside all that the record has of that measure, or is said finer than it is given. */
function implausible(c: Context, index: number, measure: string, value: number): number {
  const { mention, cue } = c.parsed.said[index]!;
  if (mention.unit || mention.type !== 'cardinal') return 0;
  const { low, high, decimals } = c.grid.scale.get(measure)!;
  const change = cue.op === 'change' || cue.elided?.op === 'change';
  if (value > high * 2 || (!change && value < low / 2)) return 1.6;
  return mention.decimals > decimals + 1 ? 0.8 : 0;
}

interface Extent { low: number; high: number }
const extents = new WeakMap<Facts, { kinds: Map<string, Extent>; cells: Map<Cell, Extent> }>();

/** Smallest and largest reading of a measure at one part, under one workload, in one phase; constants by themselves. */
function extentOf(c: Context, cell: Cell): Extent {
  let known = extents.get(c.facts);
  if (!known) extents.set(c.facts, (known = { kinds: new Map(), cells: new Map() }));
  const { kinds, cells } = known;
  const found = cells.get(cell);
  if (found) return found;
  const { measure, part, workload, phase } = c.grid.of;
  const kind = (x: Cell): string => [...measure, ...part, ...workload, ...phase].map((i) => x.at[i]).join('/');
  if (kinds.size === 0) for (const x of c.grid.cells) for (const r of c.facts.readings(x.key)) {
    const v = Math.abs(r.quantity.value.toNumber());
    const e = kinds.get(kind(x));
    kinds.set(kind(x), e ? { low: Math.min(e.low, v), high: Math.max(e.high, v) } : { low: v, high: v });
  }
  const own = kinds.get(kind(cell))!;
  cells.set(cell, own);
  return own;
}

/** How much dearer a plain reading is whose kind of reading has nothing of that size: less than half or more than twice of any, or further off than they lie apart. No word says so, and it is no doubt about what is true: its own kind always has something of its size. */
export const oddSize = 0.8;

export function oddlySized(c: Context, index: number, cell: Cell): boolean {
  const { mention } = c.parsed.said[index]!;
  // "The core temperature is 6 degrees": said of the quantity itself, however odd.
  if (/^(?:is|was|are|were)$/.test(c.parsed.low[mention.from - 1] ?? '') && c.hits.hits.some((h) => h.segment === index && c.grid.of.measure.includes(h.slot))) return false;
  if (mention.type !== 'cardinal' || mention.unit?.id === '%' || /^(?:more|less) than$/.test(mention.hedge?.name ?? '') || (mention.unit && mention.unit.id !== cell.unit.id && !(mention.unit.dimension.startsWith('temperature') && mention.loose))) return false;
  const value = Math.abs(mention.value.toNumber());
  const { low, high } = extentOf(c, cell);
  const slack = Math.max(high - low, high / 4);
  return value < low - slack || value > high + slack || value < low / 2 || value > high * 2;
}

export function subjectCells(c: Context, index: number, units: readonly Unit[] | undefined, options: { ahead?: boolean; limit?: number; ignoreBase?: boolean; ownPart?: boolean; measured?: boolean } = {}): { cells: { cell: Cell; cost: number }[]; evidence: SlotEvidence[] } {
  const evidence = evidenceFor(c.grid, c.parsed, c.hits, index, c.now, units, options);
  const { mention } = c.parsed.said[index]!;
  const found = cellsFor(c.grid, evidence, options.limit ?? reachOfCosts);
  // A unit tells the measure, and with it what is plausible: the best stays at no cost.
  if (mention.unit || mention.type !== 'cardinal' || c.parsed.said[index]!.cue.op === 'ratio') return { cells: found, evidence };
  const value = Math.abs(mention.value.toNumber());
  const odd = new Map<string, number>();
  const cells = found.map((x) => {
    const measure = x.cell.at[c.grid.of.measure[0]!]!;
    let more = odd.get(measure);
    if (more === undefined) odd.set(measure, (more = implausible(c, index, measure, value)));
    return { cell: x.cell, cost: x.cost + more };
  }).sort((a, b) => a.cost - b.cost || a.cell.index - b.cell.index);
  const least = cells[0]?.cost ?? 0;
  return { cells: least > 0 ? cells.map((x) => ({ ...x, cost: x.cost - least })) : cells, evidence };
}

const lowerIsBetter: readonly Dimension[] = ['temperature', 'temperature-difference', 'sound-level', 'power', 'money', 'resistance'];
const higherIsBetter: readonly Dimension[] = ['frame-rate', 'frequency', 'data-rate', 'flow', 'air-flow', 'score', 'compound', 'illuminance'];

/** Which way is better: the record's word, else the usual polarity of the quantity (common practice), 0 for neither. */
export function polarity(c: { facts: Context['facts']; grid: Context['grid'] }, cell: Cell): -1 | 0 | 1 {
  const better = c.facts.about.measures.get(cell.at[c.grid.of.measure[0]!]!)?.better;
  if (better === 'higher') return 1;
  if (better === 'lower') return -1;
  if (lowerIsBetter.includes(cell.unit.dimension)) return -1;
  if (higherIsBetter.includes(cell.unit.dimension)) return 1;
  return 0;
}

export function signOf(c: Context, way: Way | undefined, cell: Cell): -1 | 0 | 1 {
  if (way === 'up') return 1;
  if (way === 'down') return -1;
  if (way === 'lost') return polarity(c, cell) > 0 ? -1 : 0;
  if (way === 'gained') return polarity(c, cell) > 0 ? 1 : 0;
  if (way === 'better') return polarity(c, cell);
  if (way === 'worse') return (-polarity(c, cell) || 0) as -1 | 0 | 1;
  return 0;
}

export function sameCellExcept(g: Grid, a: Cell, b: Cell): number[] {
  const out: number[] = [];
  for (let i = 0; i < g.slots.length; i++) if (a.at[i] !== b.at[i]) out.push(i);
  return out;
}

/** The same sentence with another cue for one mention. */
export function withCue(c: Context, index: number, cue: Context['parsed']['said'][number]['cue']): Context {
  return { ...c, parsed: { ...c.parsed, kept: [], said: c.parsed.said.map((s, i) => (i === index ? { ...s, cue } : s)) } };
}

/** The same sentence with one mention read as another. */
export function withMention(c: Context, index: number, mention: Mention): Context {
  const said = c.parsed.said.map((s, i) => (i === index ? { ...s, mention } : s));
  return { ...c, parsed: { ...c.parsed, kept: [], said } };
}
