// A sensor that sticks: the same number to the last digit, where it should not be.
import type { BucketFigures } from './bucket-figures.js';
import { isNoise, rangeOf, smallestStep } from './noise.js';

/** A column over time, in buckets of one sample each or, of a long log, of several. */
export interface Course {
  /** By bucket, seconds of its first and last sample. */
  times: Float64Array;
  ends: Float64Array;
  values: Float64Array;
  figures: Pick<BucketFigures, 'low' | 'high' | 'filledIn'>;
  /** The samples of one bucket, NaN where there is none, with their lines. */
  samplesOf(bucket: number): { lines: readonly number[]; values: readonly number[] };
}

export interface Stretch {
  /** Buckets [from, to). */
  from: number;
  to: number;
}

export interface Still {
  value: number;
  /** The line of its first sample, and how long it lasted in seconds. */
  line: number;
  seconds: number;
}

/** Samples and seconds that a stretch must last; shorter ones happen to any sensor. */
export const leastSamples = 30;
export const leastSeconds = 10;
/** Another sensor of its kind moved by this share of its range while this one stood still. */
const moved = 0.25;
/** And by this many of the steps in which this one is told (which noise has to span too): a whole degree hides what is below it. */
const coarse = 3;
/** And this one follows that one elsewhere, over this share of its range. */
const follows = 0.3;
/** So many buckets of a long log are looked at sample by sample, and of a short one so many samples. */
const mostBuckets = 16;
const mostSamples = 20_000;

/**
 * The longest stretch of equal values within `phase`, where the rest of the phase is noise that never stands still (then
 * thirty equal samples do not happen), or where a sensor that it otherwise follows moved meanwhile. Where the phase has no
 * rest, and `restless` says that it may not stand still, the rest of the log is held against it.
 */
export function stuckIn(course: Course, phase: Stretch, restless: boolean, fellows: readonly Float64Array[]): Still | undefined {
  const { best: still, second } = longestEqual(course, phase);
  if (still.samples < leastSamples || course.ends[still.to - 1]! - course.times[still.from]! < leastSeconds) return undefined;
  const whole = restless && phase.to - phase.from - (still.to - still.from) < leastSamples;
  const rest = restOf(course, whole ? { from: 0, to: course.values.length } : phase, still);
  const many = still.to - still.from >= leastSamples;
  const among = whole || course.figures.low(still.from) === 0 || isAmong(course, phase, still);
  return (among && isNoise(rest, still.samples, second)) || (many && fellows.some((f) => leftBehind(course.values, f, still))) ? wholly(course, phase, still) : undefined;
}

/** What sticks says what it said before; a level of its own is a rest, as of a pump that stands. Zero may be no rest but nothing. */
function isAmong({ figures }: Course, phase: Stretch, still: Stretch): boolean {
  const value = figures.low(still.from);
  let [low, high] = [Infinity, -Infinity];
  for (let b = phase.from; b < phase.to; b++) {
    if ((b >= still.from && b < still.to) || figures.filledIn(b) === 0) continue;
    low = Math.min(low, figures.low(b));
    high = Math.max(high, figures.high(b));
  }
  return value >= low && value <= high;
}

type Equal = Stretch & { samples: number };

/** Buckets without a value in between are passed over; the second longest is told by its samples. */
function longestEqual({ figures }: Course, { from, to }: Stretch): { best: Equal; second: number } {
  let best: Equal = { from, to: from, samples: 0 };
  let second = 0;
  let now = best;
  const done = (): void => {
    if (now.samples > best.samples) [second, best] = [best.samples, now];
    else if (now.from !== best.from) second = Math.max(second, now.samples);
  };
  for (let b = from; b < to; b++) {
    const n = figures.filledIn(b);
    if (n === 0) continue;
    const level = figures.low(b) === figures.high(b);
    if (level && now.samples && figures.low(b) === figures.low(now.from)) {
      now = { ...now, to: b + 1, samples: now.samples + n };
      continue;
    }
    done();
    now = level ? { from: b, to: b + 1, samples: n } : { from: b, to: b, samples: 0 };
  }
  done();
  return { best, second };
}

/** The samples of `phase` outside of the stretch: all of them, or of a long log those of some buckets; NaN where some are left out. */
function restOf({ values, figures, samplesOf }: Course, phase: Stretch, still: Stretch): number[] {
  const buckets: number[] = [];
  let several = 0;
  for (let b = phase.from; b < phase.to; b++) {
    // The stretch itself begins and ends within the buckets beside it.
    if (b >= still.from - 1 && b <= still.to && (b >= still.from && b < still.to || figures.filledIn(b) > 1)) continue;
    buckets.push(b);
    if (figures.filledIn(b) > 1) several++;
  }
  if (several * 2 <= buckets.length) {
    const kept = buckets.slice(0, mostSamples);
    return kept.flatMap((b, i) => (i > 0 && kept[i - 1] !== b - 1 ? [NaN, values[b]!] : [values[b]!]));
  }
  const some = Array.from({ length: Math.min(mostBuckets, buckets.length) }, (_, i) => buckets[Math.floor((i * buckets.length) / Math.min(mostBuckets, buckets.length))]!);
  return some.flatMap((b) => [...samplesOf(b).values, NaN]);
}

/** With those samples of the buckets before and behind that belong to it. */
function wholly(course: Course, phase: Stretch, still: Equal): Still {
  const { times, ends, figures, samplesOf } = course;
  const value = figures.low(still.from);
  let line = samplesOf(still.from).lines[0]!;
  let [start, end] = [times[still.from]!, ends[still.to - 1]!];
  const [before, behind] = [still.from - 1, still.to];
  if (before >= phase.from && figures.filledIn(before) > 1) {
    const { lines, values } = samplesOf(before);
    const i = values.findLastIndex((v) => v !== value) + 1;
    if (i < values.length) [line, start] = [lines[i]!, at(times[before]!, ends[before]!, i, values.length)];
  }
  if (behind < phase.to && figures.filledIn(behind) > 1) {
    const { values } = samplesOf(behind);
    const n = values.findIndex((v) => v !== value);
    if (n > 0) end = at(times[behind]!, ends[behind]!, n - 1, values.length);
  }
  return { value, line, seconds: end - start };
}

/** When sample `i` of a bucket of `n` was taken, its samples being evenly apart. */
function at(first: number, last: number, i: number, n: number): number {
  return first + ((last - first) * i) / Math.max(1, n - 1);
}

function leftBehind(values: Float64Array, fellow: Float64Array, still: Stretch): boolean {
  const range = rangeOf(fellow);
  if (!(range > 0)) return false;
  const inside = fellow.subarray(still.from, still.to);
  const quarter = inside.length >> 2;
  const move = Math.abs(middle(inside.subarray(-quarter)) - middle(inside.subarray(0, quarter)));
  const outside = Float64Array.from([...values.subarray(0, still.from), ...values.subarray(still.to)]);
  const step = smallestStep(values);
  // A processor that is held at its limit stands at the same whole degree for as long as it is.
  if (step >= 1 && values[still.from]! >= highest(values)) return false;
  return move >= moved * range && move >= coarse * step && rangeOf(outside) >= follows * range;
}

function highest(values: Float64Array): number {
  return values.reduce((a, b) => (b > a ? b : a), -Infinity);
}

function middle(values: Float64Array): number {
  const sorted = values.filter((v) => !Number.isNaN(v)).sort();
  return sorted.length ? sorted[sorted.length >> 1]! : NaN;
}
