// Neighbouring samples of a log resemble each other, so that a thousand of them say less than a thousand runs would.
import { mean, standardDeviation } from './moments.js';

/** Longer series are averaged down to this many blocks first; the mean stays the same and so does what is known of it. */
const mostBlocks = 4096;

export interface SeriesMean {
  mean: number;
  /** Standard uncertainty of the mean as a figure of this stretch, in the unit of the samples. 0 where all are equal: the step of the sensor is not in it. */
  standardError: number;
  /** How many independent samples would tell the mean as well: between 1 and the number of samples. */
  effective: number;
}

/**
 * Mean of evenly spaced samples in order, with its standard uncertainty from their autocorrelation. Below four samples
 * nothing is known of it and they count as independent; undefined below two.
 */
export function seriesMean(samples: readonly number[]): SeriesMean | undefined {
  const sd = standardDeviation(samples);
  if (sd === undefined) return undefined;
  const n = samples.length;
  const m = mean(samples);
  if (!(sd > Math.abs(m) * 1e-14)) return { mean: m, standardError: 0, effective: n };
  const blocks = inBlocks(samples, mostBlocks);
  const time = correlationTime(blocks.map((v) => v - m));
  const variance = (standardDeviation(blocks)! ** 2 * time) / blocks.length;
  const effective = Math.min(n, Math.max(1, sd ** 2 / variance));
  return { mean: m, standardError: sd / Math.sqrt(effective), effective };
}

/** Correlation of neighbours: Σ(xᵢ−m)(xᵢ₊₁−m)/Σ(xᵢ−m)² as the NIST StRD certify it; NaN where all are equal. */
export function lagOne(samples: readonly number[]): number {
  const m = mean(samples);
  let [over, under] = [0, 0];
  samples.forEach((v, i) => {
    under += (v - m) ** 2;
    if (i > 0) over += (v - m) * (samples[i - 1]! - m);
  });
  return over / under;
}

/** Samples to one independent one where each only remembers the one before: n samples count as n(1−r)/(1+r). */
export function firstOrderTime(r: number): number {
  return (1 + r) / (1 - r);
}

/** A series is short where the correlation reaches over more than this share of it. */
const shortSeries = 0.03;

/**
 * How many samples make one independent one, 1 + 2 Σρₖ; at least 1, and at most a half of the series. By the initial
 * monotone positive sequence of autocovariances (Geyer, Statistical Science 7 (1992) 473). In short series it comes out too
 * small; there the larger of it and of a first-order process by the neighbours' correlation counts, with the bias (1+4r)/n
 * of that put back (Kendall, Biometrika 41 (1954) 403). `taken`: how many values were fitted to the series before (1 for
 * the mean), which make it look less correlated than it is.
 */
export function correlationTime(rests: readonly number[], taken = 1): number {
  const n = rests.length;
  if (n < 4) return 1;
  const covariance = (lag: number): number => {
    let sum = 0;
    for (let i = lag; i < n; i++) sum += rests[i]! * rests[i - lag]!;
    return sum / n;
  };
  const variance = covariance(0);
  if (!(variance > 0)) return 1;
  let sum = -variance;
  let before = Infinity;
  let lags = 0;
  for (let k = 0; k + 1 < n; k += 2) {
    const pair = Math.min(before, covariance(k) + covariance(k + 1));
    if (pair <= 0) break;
    sum += 2 * pair;
    before = pair;
    lags = k + 2;
  }
  const share = (2 * lags - 1) / n;
  const time = sum / variance / (1 - Math.min(0.75, taken * share));
  const first = lagOne(rests);
  const firstOrder = share > shortSeries ? firstOrderTime(Math.min(1 - 2 / n, first + (1 + 4 * first) / n)) : 1;
  return Math.min(n / 2, Math.max(1, time, firstOrder));
}

/** Means of equal blocks, at most so many; the samples themselves where there are no more. A rest too short for a block joins the last one. */
export function inBlocks(samples: readonly number[], most: number): number[] {
  const size = Math.ceil(samples.length / most);
  if (size <= 1) return [...samples];
  const count = Math.floor(samples.length / size);
  return Array.from({ length: count }, (_, i) => mean(samples.slice(i * size, i === count - 1 ? samples.length : (i + 1) * size)));
}
