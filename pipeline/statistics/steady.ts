// From when on a quantity is steady.
import { madToSd, medianDeviation } from './mad.js';

/** A series over time: ascending times, NaN for no value. Means over short steps do as well as the samples. */
export interface Course {
  times: ArrayLike<number>;
  values: ArrayLike<number>;
}

export interface Steadiness {
  /** Index from which on it is steady until the end; undefined where it never was, or where the series is shorter than one span. */
  from: number | undefined;
  /** Change over the last span, in the unit of the values; undefined where the series is shorter than one span. */
  change: number | undefined;
}

/** Levels are means over the first of these shares of a span that calms their noise to a fifth of the allowed change, or over the last. */
const smoothings = [0.1, 0.2, 0.35, 0.5];
const calm = 0.2;

/**
 * Steady by its slope over a span, as standards of thermal equilibrium put it: from that sample on, no two levels one
 * `span` apart differ by more than `change`. A level is the mean over a tenth of the span around its moment, or over up to
 * half of it where the samples are noisy. The series must go on for a whole span after that.
 */
export function steadyBySlope({ times, values }: Course, change: number, span: number): Steadiness {
  const n = times.length;
  const none: Steadiness = { from: undefined, change: undefined };
  if (n < 2 || times[n - 1]! - times[0]! < span * (1 - 1e-9)) return none;
  const level = calmLevels({ times, values }, change, span);
  let later = n - 1;
  let i = n - 1;
  while (i >= 0 && times[i]! > times[n - 1]! - span * (1 - 1e-9)) i--;
  let from: number | undefined;
  let last: number | undefined;
  for (; i >= 0; i--) {
    while (later > i + 1 && times[later - 1]! >= times[i]! + span * (1 - 1e-9)) later--;
    const moved = level(later) - level(i);
    if (Number.isNaN(moved)) continue;
    last ??= moved;
    if (Math.abs(moved) > change) break;
    from = i;
  }
  return { from, change: last };
}

function calmLevels(course: Course, change: number, span: number): (i: number) => number {
  const n = course.times.length;
  for (const share of smoothings) {
    const level = levels(course, share * span);
    if (unrest(course.times, level, n >> 1, share * span) <= calm * change) return level;
  }
  return levels(course, smoothings.at(-1)! * span);
}

/**
 * Standard deviation of the difference of neighbouring levels from row `from` on. By second differences, which no straight
 * trend moves, and the median of their sizes, which no single event does.
 */
function unrest(times: ArrayLike<number>, level: (i: number) => number, from: number, width: number): number {
  const bends: number[] = [];
  const apart = Math.max(1, Math.floor((times.length - from) / 400));
  for (let i = from, j = from, k = from; i < times.length; i += apart) {
    while (j < times.length && times[j]! < times[i]! + width) j++;
    while (k < times.length && times[k]! < times[i]! + 2 * width) k++;
    if (k === times.length) break;
    const bend = level(k) - 2 * level(j) + level(i);
    if (!Number.isNaN(bend)) bends.push(bend);
  }
  return bends.length < 8 ? 0 : (madToSd * medianDeviation(bends).mad) / Math.sqrt(3);
}

/** Means of the values within half a `width` on both sides; NaN where there is none. */
function levels({ times, values }: Course, width: number): (i: number) => number {
  const n = times.length;
  const sums = new Float64Array(n + 1);
  const counts = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) {
    const v = values[i]!;
    sums[i + 1] = sums[i]! + (Number.isNaN(v) ? 0 : v - first(values));
    counts[i + 1] = counts[i]! + (Number.isNaN(v) ? 0 : 1);
  }
  const base = first(values);
  const reach = (width / 2) * (1 + 1e-9);
  return (i) => {
    const a = search(times, times[i]! - reach);
    const b = search(times, times[i]! + reach);
    return base + (sums[b]! - sums[a]!) / (counts[b]! - counts[a]!);
  };
}

/** The first index whose time is at least t. */
function search(times: ArrayLike<number>, t: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle]! < t) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * Where the marginal standard error rule cuts (MSER; White, Simulation 69 (1997) 323): the d that makes
 * Σ(xᵢ−m_d)²/(n−d)² over what is left smallest. In means of `batch` samples (MSER-5; White, Cobb and Spratt 2000).
 * Undefined where it wants to cut half of the series or more: then too little is left to tell, and a longer run is needed.
 */
export function steadyByMser(values: ArrayLike<number>, batch = 5): number | undefined {
  const blocks: { start: number; mean: number }[] = [];
  for (let i = 0, kept: number[] = [], start = 0; i < values.length; i++) {
    if (Number.isNaN(values[i]!)) continue;
    if (kept.length === 0) start = i;
    kept.push(values[i]!);
    if (kept.length < batch) continue;
    blocks.push({ start, mean: kept.reduce((a, b) => a + b) / batch });
    kept = [];
  }
  const n = blocks.length;
  const base = n ? blocks[n - 1]!.mean : 0;
  const half = n / 2;
  let best: number | undefined;
  let least = Infinity;
  let sum = 0;
  let squares = 0;
  for (let d = n - 1; d >= 0; d--) {
    const x = blocks[d]!.mean - base;
    sum += x;
    squares += x * x;
    const left = n - d;
    if (d > half || left < 2) continue;
    const error = Math.max(0, squares - (sum * sum) / left) / (left * left);
    if (error <= least) {
      least = error;
      best = d;
    }
  }
  return best === undefined || best >= half ? undefined : blocks[best]!.start;
}

function first(values: ArrayLike<number>): number {
  for (let i = 0; i < values.length; i++) if (!Number.isNaN(values[i]!)) return values[i]!;
  return 0;
}
