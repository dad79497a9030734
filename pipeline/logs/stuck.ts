// A sensor that sticks: the same number to the last digit, where it should not be.

export interface Stretch {
  /** Rows [from, to). */
  from: number;
  to: number;
}

/** Samples and seconds that a stretch must last; shorter ones happen to any sensor. */
const leastSamples = 30;
const leastSeconds = 10;
/** Noise: the value changes from nearly every sample to the next, and turns back as often as noise does. */
const restless = 0.9;
const turning = 0.2;
/** Another sensor of its kind moved by this share of its range while this one stood still. */
const moved = 0.25;
/** And by this many of the steps in which this one is told (which noise has to span too): a whole degree hides what is below it. */
const coarse = 3;
/** And this one follows that one elsewhere, over this share of its range. */
const follows = 0.3;

/**
 * The longest stretch of equal values within `phase`, where the rest of the phase is noise that never stands still (then
 * thirty equal samples do not happen), or where a sensor that it otherwise follows moved meanwhile.
 */
export function stuckIn(times: Float64Array, values: Float64Array, phase: Stretch, fellows: readonly Float64Array[]): Stretch | undefined {
  const still = longestEqual(values, phase);
  if (still.samples < leastSamples || times[still.to - 1]! - times[still.from]! < leastSeconds) return undefined;
  return isNoise(values, phase, still) || fellows.some((f) => leftBehind(values, f, still)) ? still : undefined;
}

/** Rows without a value in between are passed over. */
function longestEqual(values: Float64Array, { from, to }: Stretch): Stretch & { samples: number } {
  let best = { from, to: from, samples: 0 };
  let now = best;
  for (let i = from; i < to; i++) {
    const v = values[i]!;
    if (Number.isNaN(v)) continue;
    now = now.samples && v === values[now.from] ? { ...now, to: i + 1, samples: now.samples + 1 } : { from: i, to: i + 1, samples: 1 };
    if (now.samples > best.samples) best = now;
  }
  return best;
}

function isNoise(values: Float64Array, phase: Stretch, still: Stretch): boolean {
  const rest = [...values.subarray(phase.from, still.from), NaN, ...values.subarray(still.to, phase.to)];
  let [steps, changes, turns, before] = [0, 0, 0, 0];
  for (let i = 1; i < rest.length; i++) {
    const step = rest[i]! - rest[i - 1]!;
    if (Number.isNaN(step)) continue;
    steps++;
    if (step === 0) continue;
    changes++;
    if (step * before < 0) turns++;
    before = step;
  }
  // Between two neighbouring steps of a coarse sensor it flickers only as long as the truth lies on their border.
  const others = Float64Array.from(rest);
  return steps >= leastSamples && rangeOf(others) >= coarse * smallestStep(others) && changes >= restless * steps && turns >= turning * changes;
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

function smallestStep(values: Float64Array): number {
  let step = Infinity;
  for (let i = 1; i < values.length; i++) {
    const by = Math.abs(values[i]! - values[i - 1]!);
    if (by > 1e-9 && by < step) step = by;
  }
  return step;
}

function highest(values: Float64Array): number {
  return values.reduce((a, b) => (b > a ? b : a), -Infinity);
}

function rangeOf(values: Float64Array): number {
  let [low, high] = [Infinity, -Infinity];
  for (const v of values) {
    if (v < low) low = v;
    if (v > high) high = v;
  }
  return high - low;
}

function middle(values: Float64Array): number {
  const sorted = values.filter((v) => !Number.isNaN(v)).sort();
  return sorted.length ? sorted[sorted.length >> 1]! : NaN;
}
