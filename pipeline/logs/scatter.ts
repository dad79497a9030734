// What the samples of a window say of its mean: neighbours in a log resemble each other.
import type { Unit } from '../quantities/index.js';
import { seriesMean } from '../statistics/index.js';

export interface Scatter {
  /** Standard uncertainty of the mean as a figure of this one window, in the unit of differences; what runs differ by is not in it. */
  standardError: number;
  /** How many independent samples would tell it as well. */
  effective: number;
}

/** Of the finite values of rows [from, to); levels are energies. Undefined below two. */
export function scatterOf(values: ArrayLike<number>, rows: readonly (readonly [from: number, to: number])[], unit: Unit): Scatter | undefined {
  const levels = unit.dimension === 'sound-level';
  const samples: number[] = [];
  for (const [from, to] of rows) for (let i = from; i < to; i++) if (Number.isFinite(values[i]!)) samples.push(levels ? 10 ** (values[i]! / 10) : values[i]!);
  const found = seriesMean(samples);
  if (!found) return undefined;
  const { mean, standardError, effective } = found;
  return { standardError: levels ? (10 / Math.LN10) * (standardError / mean) : standardError, effective };
}
