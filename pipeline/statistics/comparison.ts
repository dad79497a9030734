// How surely a mean, or the difference of two, is known from its runs.
import { mean, standardDeviation } from './moments.js';
import { tFactor, twoSidedP } from './student.js';

export interface Interval {
  low: number;
  high: number;
}

/** Confidence interval of a mean, t·s/√n either side; undefined below two values. Of three values it is 2.48 s wide either side. */
export function meanInterval(values: readonly number[], level = 0.95): Interval | undefined {
  const sd = standardDeviation(values);
  if (sd === undefined) return undefined;
  const half = (tFactor(level, values.length - 1) * sd) / Math.sqrt(values.length);
  return { low: mean(values) - half, high: mean(values) + half };
}

export interface Welch {
  t: number;
  dof: number;
  p: number;
  difference: number;
  interval: Interval;
}

/**
 * Welch's test of two means (unequal variances, Welch–Satterthwaite degrees of freedom). Needs two values a side, and
 * tells little below three; undefined when both sides have no scatter at all.
 */
export function welch(a: readonly number[], b: readonly number[], level = 0.95): Welch | undefined {
  if (a.length < 2 || b.length < 2) return undefined;
  const parts = [a, b].map((v) => ({ u2: standardDeviation(v)! ** 2 / v.length, dof: v.length - 1 }));
  const u2 = parts[0]!.u2 + parts[1]!.u2;
  if (u2 === 0) return undefined;
  const difference = mean(a) - mean(b);
  const dof = effectiveDof(parts);
  const t = difference / Math.sqrt(u2);
  const half = tFactor(level, dof) * Math.sqrt(u2);
  return { t, dof, p: twoSidedP(t, dof), difference, interval: { low: difference - half, high: difference + half } };
}

/** Welch–Satterthwaite: degrees of freedom of a sum of squared standard uncertainties (JCGM 100:2008, G.4); Infinity where none scatters. */
export function effectiveDof(parts: readonly { u2: number; dof: number }[]): number {
  const total = parts.reduce((s, p) => s + p.u2, 0);
  const bottom = parts.reduce((s, p) => s + (p.u2 === 0 || p.dof === Infinity ? 0 : p.u2 ** 2 / p.dof), 0);
  return bottom === 0 ? Infinity : total ** 2 / bottom;
}
