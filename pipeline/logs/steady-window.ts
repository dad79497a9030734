// Where a phase is steady, by the rule of its layout.
import { steadyByMser, steadyBySlope } from '../statistics/index.js';
import type { LogColumn, SteadyRule } from './layout.js';

/** What a rule of steadiness found in a phase. */
export interface Steady {
  /** "at most 1 K in 5 min". */
  rule: string;
  /** `measure/part` of the column that decides. */
  by: string;
  /** Whether the averaged window begins where this one does; else a person gave the window and this one stands beside it. */
  finds: boolean;
  /** Seconds of the first and last sample that were looked at. */
  since: number;
  until: number;
  /** Seconds from which on it is steady; undefined where it never was. */
  start?: number;
  /** Change over the last span in the unit of the column's differences, and that span in seconds; undefined where the phase is shorter than a span, and with MSER. */
  last?: { change: number; span: number };
  /** Set where the phase is shorter than the span. */
  tooShort?: boolean;
}

/** The rows [from, to) to average, and what was found; where it was never steady these are the last span, or with MSER the last half. */
export function steadyRows(times: Float64Array, values: Float64Array, [from, to]: readonly [number, number], rule: SteadyRule, column: LogColumn, finds: boolean): { rows: [number, number]; steady: Steady } {
  const course = { times: times.subarray(from, to), values: values.subarray(from, to) };
  const [since, until] = [times[from]!, times[to - 1]!];
  const found: Steady = { rule: rule.words, by: [column.measure, column.part].filter(Boolean).join('/'), finds, since, until };
  if (rule.kind === 'mser') {
    const at = steadyByMser(course.values);
    if (at === undefined) return { rows: [from + ((to - from) >> 1), to], steady: found };
    return { rows: [from + at, to], steady: { ...found, start: times[from + at]! } };
  }
  const allowed = rule.share ? rule.change * Math.abs(levelOf(course.values)) : rule.change;
  const { from: at, change } = steadyBySlope(course, allowed, rule.span);
  const last = change === undefined ? undefined : { change, span: rule.span };
  if (at !== undefined) return { rows: [from + at, to], steady: { ...found, start: times[from + at]!, last } };
  let begin = from;
  while (begin < to - 1 && times[begin]! < until - rule.span) begin++;
  return { rows: [begin, to], steady: { ...found, ...(last ? { last } : { tooShort: true }) } };
}

/** The median of the last half: what a share is a share of. */
function levelOf(values: Float64Array): number {
  const late = values.slice(values.length >> 1).filter((v) => !Number.isNaN(v)).sort();
  return late.length ? late[late.length >> 1]! : 0;
}
