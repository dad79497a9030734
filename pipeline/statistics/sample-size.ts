// How many runs it takes to tell two settings apart.
import { normalBelow } from './normal.js';
import { logGamma, tFactor } from './student.js';

/** Nobody does more runs than this. */
const mostRuns = 10_000;

/**
 * Probability that a two-sided t test with `runs` in each of two groups finds a true difference of `effect` standard
 * deviations (non-central t; equal spread in both groups).
 */
export function powerOfRuns(runs: number, effect: number, level = 0.95): number {
  if (runs < 2) return 0;
  const dof = 2 * runs - 2;
  const t = tFactor(level, dof);
  const shift = Math.abs(effect) * Math.sqrt(runs / 2);
  return overSpread(dof, (s) => normalBelow(shift - t * s) + normalBelow(-shift - t * s));
}

/**
 * Runs per setting that find a true `difference` between two settings with probability `power`, where single runs have
 * the standard deviation `sd`; at least 2. Undefined for no difference, or where more than 10,000 would be needed.
 */
export function runsToTell(difference: number, sd: number, power = 0.8, level = 0.95): number | undefined {
  const effect = Math.abs(difference) / sd;
  if (!(sd > 0)) return difference === 0 ? undefined : 2;
  if (!(effect > 0)) return undefined;
  const enough = (runs: number): boolean => powerOfRuns(runs, effect, level) >= power;
  // What it would take if the scatter were known is never far off: the search begins there.
  const guess = 2 * ((tFactor(level, Infinity) + (power > 0.5 ? tFactor(2 * power - 1, Infinity) : 0)) / effect) ** 2;
  let high = Math.min(mostRuns, Math.max(2, Math.ceil(guess) + 1));
  let low = high;
  for (let step = 1; !enough(high); step *= 2) {
    if (high === mostRuns) return undefined;
    [low, high] = [high, Math.min(mostRuns, high + step)];
  }
  for (let step = 1; low === high || (low > 1 && enough(low)); step *= 2) [low, high] = [Math.max(1, low - step), low];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (enough(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** Mean of f over s = √(χ²/dof), the spread that so many degrees of freedom give instead of 1 (Simpson's rule). */
function overSpread(dof: number, f: (s: number) => number): number {
  const wide = 8 / Math.sqrt(2 * dof);
  const from = Math.max(0, 1 - wide);
  const to = 1 + wide * (dof < 4 ? 1.5 : 1);
  const steps = 400;
  const h = (to - from) / steps;
  const scale = Math.log(2) + (dof / 2) * Math.log(dof / 2) - logGamma(dof / 2);
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    const s = from + i * h;
    const density = s === 0 ? 0 : Math.exp(scale + (dof - 1) * Math.log(s) - (dof * s * s) / 2);
    if (density > 0) sum += density * f(s) * (i === 0 || i === steps ? 1 : i % 2 ? 4 : 2);
  }
  return (sum * h) / 3;
}
