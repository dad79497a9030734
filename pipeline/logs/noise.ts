// Whether samples are noise that never stands still: then a long stretch of equal ones does not happen.

/** So few tell nothing. */
const leastSteps = 30;
/** Noise: it changes from nearly every sample to the next, and turns back as often as noise does. */
const restless = 0.9;
const turning = 0.2;
/** And spans so many of the steps in which it is told. */
const coarse = 3;
/** Where equal samples follow each other now and then: it changes at least so often, */
const lively = 0.5;
/** so many of its steps turn back by two steps of the sensor or more, so that its noise spans three levels wherever it stands, */
const wide = 0.1;
/** and the stretch is so many times as long as any other of equal samples. */
const outstanding = 4;

/** `samples` without those in question, NaN where some lie in between; `equal` is how many equal ones the stretch in question has, `longest` how many any other has. */
export function isNoise(samples: readonly number[], equal: number, longest: number): boolean {
  let [steps, changes, turns, wideTurns, before] = [0, 0, 0, 0, 0];
  const step = smallestStep(samples);
  for (let i = 1; i < samples.length; i++) {
    const by = samples[i]! - samples[i - 1]!;
    if (Number.isNaN(by)) continue;
    steps++;
    if (by === 0) continue;
    changes++;
    if (by * before < 0) {
      turns++;
      if (Math.abs(by) > 1.5 * step) wideTurns++;
    }
    before = by;
  }
  // Between two neighbouring steps of a coarse sensor it flickers only as long as the truth lies on their border.
  if (steps < leastSteps || rangeOf(samples) < coarse * step || turns < turning * changes) return false;
  return changes >= restless * steps || (changes >= lively * steps && wideTurns >= wide * steps && equal >= outstanding * Math.max(longest, longestEqual(samples)));
}

function longestEqual(samples: readonly number[]): number {
  let [best, now] = [0, 0];
  samples.forEach((v, i) => {
    now = Number.isNaN(v) ? 0 : v === samples[i - 1] ? now + 1 : 1;
    best = Math.max(best, now);
  });
  return best;
}

export function smallestStep(values: ArrayLike<number>): number {
  let step = Infinity;
  for (let i = 1; i < values.length; i++) {
    const by = Math.abs(values[i]! - values[i - 1]!);
    if (by > 1e-9 && by < step) step = by;
  }
  return step;
}

export function rangeOf(values: ArrayLike<number>): number {
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < values.length; i++) {
    const v = values[i]!;
    if (v < low) low = v;
    if (v > high) high = v;
  }
  return high - low;
}
