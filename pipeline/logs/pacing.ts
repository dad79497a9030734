// The figures that a log of frame durations can give, each by a definition that stands in words beside it.
import { Exact, type Quantity, type Unit, unit } from '../quantities/index.js';
import { quantileSorted, type QuantileType, slowestCount, slowestOfTime, stuttersOf } from '../statistics/index.js';
import type { LowDefinition, StutterDefinition, TimeDefinition } from './layout.js';
import { exactSum, shownDecimals } from './means.js';

/** The frames that count, in the order in which they came and by length, as they were written: in `unit`, with `decimals` decimals at most. */
export interface Frames {
  durations: Float64Array;
  ascending: Float64Array;
  decimals: number;
  unit: Unit;
  /** All of them together, in seconds. */
  total: Exact;
}

export function framesOf(durations: Float64Array, decimals: number, u: Unit): Frames {
  return { durations, ascending: durations.slice().sort(), decimals, unit: u, total: exactSum(durations, decimals).times(u.factor) };
}

/** Frames over time, which is the harmonic mean of the frames' rates. */
export function meanRate(f: Frames): Quantity {
  return rate(Exact.of(f.durations.length).over(f.total));
}

export function lowRate(f: Frames, low: LowDefinition): Quantity {
  const { ascending, unit: { factor } } = f;
  if (low.kind === 'slowest') {
    const n = slowestCount(ascending.length, low.percent);
    return rate(Exact.of(n).over(exactSum(ascending.subarray(ascending.length - n), f.decimals).times(factor)));
  }
  if (low.kind === 'slowest-time') {
    const { frames, time } = slowestOfTime(ascending, low.percent);
    return rate(Exact.fromNumber(frames / time).over(factor));
  }
  if (low.kind === 'frame-time-percentile') return rate(Exact.of(1).over(Exact.fromNumber(quantileSorted(ascending, low.percent / 100, low.type as QuantileType)).times(factor)));
  const rates = new Float64Array(ascending.length);
  for (let i = 0; i < rates.length; i++) rates[i] = 1 / ascending[rates.length - 1 - i]!;
  return rate(Exact.fromNumber(quantileSorted(rates, low.percent / 100, low.type as QuantileType)).over(factor));
}

/** A frame time as finely as it was logged, two places more where a percentile lies between two frames. */
export function frameTime(f: Frames, time: TimeDefinition): Quantity {
  const { ascending } = f;
  const x = time.kind === 'longest' ? ascending.at(-1)! : quantileSorted(ascending, time.percent / 100, time.type as QuantileType);
  const value = Exact.fromNumber(x).round(f.decimals + 2);
  return { value, unit: f.unit, decimals: shownDecimals(value, f.decimals, ascending.length) };
}

export function stutterFigure(f: Frames, { gives, times, span }: StutterDefinition): Quantity {
  const { count, time } = stuttersOf(f.durations, times, span);
  if (gives === 'count') return { value: Exact.of(count), unit: unit('1'), decimals: 0 };
  return { value: Exact.fromNumber(time).times(f.unit.factor).over(f.total).times(Exact.of(100)).round(4), unit: unit('%'), decimals: 1 };
}

/** Frames per second, kept to four decimals and shown with one: 96.2 fps. */
function rate(value: Exact): Quantity {
  return { value: value.round(4), unit: unit('fps'), decimals: 1 };
}

/** A definition in words, to stand with the measure. */
export function lowInWords(low: LowDefinition): string {
  if (low.kind === 'slowest') return `mean rate of the slowest ${low.percent} % of frames`;
  if (low.kind === 'slowest-time') return `mean rate over the slowest ${low.percent} % of the time`;
  return low.kind === 'frame-time-percentile' ? `rate at the ${nth(low.percent)} percentile of frame times (type ${low.type})` : `${nth(low.percent)} percentile of frame rates (type ${low.type})`;
}

export function timeInWords(time: TimeDefinition): string {
  return time.kind === 'longest' ? 'longest frame' : `${nth(time.percent)} percentile of frame times (type ${time.type})`;
}

export function stutterInWords({ gives, times, span }: StutterDefinition): string {
  return `${gives === 'count' ? 'frames' : 'share of the time spent in frames'} longer than ${times} times the median of the ${span} frames around them`;
}

function nth(n: number): string {
  const plain = !Number.isInteger(n) || (n % 100 > 10 && n % 100 < 14);
  return `${n}${plain ? 'th' : ['th', 'st', 'nd', 'rd'][n % 10] ?? 'th'}`;
}
