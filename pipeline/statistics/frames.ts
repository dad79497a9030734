// Frame pacing from frame durations, in any one unit of time. Ascending durations serve all that asks for the slowest;
// only stutters ask for the order in which the frames came.
import { quantileSorted } from './quantile.js';

/** How many frames the slowest `percent` of them are: at least one, rounded to the nearest. */
export function slowestCount(frames: number, percent: number): number {
  return Math.max(1, Math.round((frames * percent) / 100));
}

/** The frames that fill the slowest `percent` of the time, the last of them in part: `frames` ÷ `time` is their mean rate. */
export function slowestOfTime(ascending: ArrayLike<number>, percent: number): { frames: number; time: number } {
  let total = 0;
  for (let i = 0; i < ascending.length; i++) total += ascending[i]!;
  const time = (total * percent) / 100;
  let left = time;
  let frames = 0;
  for (let i = ascending.length - 1; i >= 0 && left > 0; i--) {
    const d = ascending[i]!;
    frames += Math.min(1, left / d);
    left -= d;
  }
  return { frames, time };
}

export interface Stutters {
  /** Frames longer than so many times the median of the frames around them. */
  count: number;
  /** Time spent in them. */
  time: number;
}

/**
 * A frame is a stutter when it lasts longer than `times` the running median: the median of the `span` frames around it (an odd
 * number; fewer at either end), itself included. A scene that grows heavier slowly has none; one late frame among even ones is
 * one. Keeps no more than `span` values beside the durations.
 */
export function stuttersOf(durations: ArrayLike<number>, times: number, span: number): Stutters {
  const n = durations.length;
  const half = span >> 1;
  const around = new Float64Array(2 * half + 1);
  let held = 0;
  const placeOf = (d: number): number => {
    let low = 0;
    let high = held;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (around[middle]! < d) low = middle + 1;
      else high = middle;
    }
    return low;
  };
  const add = (d: number): void => {
    const at = placeOf(d);
    around.copyWithin(at + 1, at, held++);
    around[at] = d;
  };
  const drop = (d: number): void => {
    const at = placeOf(d);
    around.copyWithin(at, at + 1, held--);
  };
  for (let i = 0; i < Math.min(half, n); i++) add(durations[i]!);
  let count = 0;
  let time = 0;
  for (let i = 0; i < n; i++) {
    if (i > half) drop(durations[i - half - 1]!);
    if (i + half < n) add(durations[i + half]!);
    const median = (around[(held - 1) >> 1]! + around[held >> 1]!) / 2;
    if (durations[i]! > times * median) {
      count++;
      time += durations[i]!;
    }
  }
  return { count, time };
}

/** Below this many frames none is told to be a warm-up. */
const fewestForWarmUp = 20;
/** A first frame this many times as long as the 99th percentile of those after it is a warm-up. Common practice, no published source. */
const warmUpFactor = 1.5;

/** How many leading frames are a warm-up (compiling, filling caches): each longer than `warmUpFactor` × the 99th percentile of the frames that follow the first; never more than one in a hundred. */
export function warmUpFrames(durations: Float64Array): number {
  if (durations.length < fewestForWarmUp) return 0;
  const limit = warmUpFactor * quantileSorted(durations.slice(1).sort(), 0.99);
  const most = Math.max(1, durations.length / 100);
  let n = 0;
  while (n < most && durations[n]! > limit) n++;
  return n;
}
