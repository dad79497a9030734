// The means that are not the arithmetic one, each where it is right.
import { mean } from './moments.js';

/** n ÷ Σ(1/x): the rate over equal amounts of work (as many frames at each rate). NaN unless all are above zero. */
export function harmonicMean(values: readonly number[]): number {
  return values.every((v) => v > 0) ? 1 / mean(values.map((v) => 1 / v)) : Number.NaN;
}

/** exp(mean(ln x)): of ratios over several workloads, so that no workload is the base (Fleming & Wallace, CACM 29, 1986). NaN unless all are above zero. */
export function geometricMean(values: readonly number[]): number {
  return values.every((v) => v > 0) ? Math.exp(mean(values.map(Math.log))) : Number.NaN;
}
