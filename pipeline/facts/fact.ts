// A derived value with everything that it rests on.
import type { Exact, Unit } from '../quantities/index.js';
import type { Key, Reading } from '../records/index.js';

export const factKinds = [
  'raw', 'mean', 'constant', 'rise', 'difference', 'percent_change', 'points', 'percent_of', 'ratio',
  'rank', 'median', 'range', 'count', 'over_room', 'at_room', 'per_watt', 'per_price',
  'energy', 'per_energy', 'heat', 'level_sum', 'without_background', 'at_distance', 'approach',
] as const;
export type FactKind = (typeof factKinds)[number];

export interface Fact {
  /** Stable: `KIND[.VARIANT]:SUBJECT~BASE`, see id.ts. */
  id: string;
  kind: FactKind;
  /** e.g. `highest` of rank.highest; empty where the kind has none. */
  variant: string;
  value: Exact;
  unit: Unit;
  /** Decimals it is shown and spoken with. */
  decimals: number;
  shown: string;
  spoken: string;
  /** Key of the first subject (of the first leaf where the subject is itself a fact). */
  subject: Key;
  /** The other operands in order, the base last: keys, or fact ids in brackets. */
  against: string[];
  /** All keys it rests on, each once, subject first. */
  keys: Key[];
  /** The runs averaged or the constants taken. */
  readings: Reading[];
  /** In words and digits: "61.4 − 49.1". */
  formula: string;
  /** Over runs, for a mean: sample standard deviation (n−1; undefined for one run), smallest and largest. */
  spread?: { sd: number | undefined; min: Exact; max: Exact; runs: number };
  /** Set where subtracting the rounded figures gives another number than the rounded difference: viewers subtract on the sofa. */
  sofa?: string;
  /** The same in the second unit system, where the record asks for one; a difference converted as a difference. */
  second?: { value: Exact; unit: Unit; decimals: number; shown: string; spoken: string };
}

/** The same fact with another value and the words that it had. Facts write their words when asked for, so that a spread would lose them. */
export function withValue(f: Fact, value: Exact): Fact {
  return {
    id: f.id, kind: f.kind, variant: f.variant, value, unit: f.unit, decimals: f.decimals, shown: f.shown, spoken: f.spoken, subject: f.subject, against: f.against,
    keys: f.keys, readings: f.readings, formula: f.formula, ...(f.spread && { spread: f.spread }), ...(f.sofa && { sofa: f.sofa }), ...(f.second && { second: f.second }),
  };
}

/** Whether it rests on something read, here or in the episode that it is quoted from; a limit, a target or a price was set. */
export function wasRead(f: Fact): boolean {
  return f.kind !== 'constant' || f.readings.some((r) => r.runs !== undefined);
}

/** How many runs a value was averaged from, in the episode that it is quoted from where it is a quote. */
export function runsOf(f: Fact): number {
  return f.readings.length === 1 ? f.readings[0]!.runs ?? 1 : f.readings.length;
}
