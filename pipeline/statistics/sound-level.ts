// Levels in decibels: a mean of sound levels is a mean of energies (the mean level of ISO 3744).

/** 10 lg (mean of 10^(L/10)). */
export function energyMean(levels: readonly number[]): number {
  return 10 * Math.log10(levels.reduce((sum, level) => sum + 10 ** (level / 10), 0) / levels.length);
}

/** What a level `above` its background by so many dB reads too much: K1 of ISO 3744. */
export function backgroundCorrection(above: number): number {
  return -10 * Math.log10(1 - 10 ** (-above / 10));
}

/** Closer to its background than this, a level cannot be corrected: it is an upper bound (ISO 3744, which caps K1 at that of 6 dB, 1.26; ISO 10140-4 takes off 1.3). */
export const leastCorrectable = 6;
/** Farther above its background than this, nothing is taken off a level (ISO 3744). */
export const fullyCorrectedAbove = 15;

/** Level of sources that have nothing to do with each other: 10 lg Σ 10^(L/10). */
export function levelSum(levels: readonly number[]): number {
  return 10 * Math.log10(levels.reduce((sum, level) => sum + 10 ** (level / 10), 0));
}

/** Level at `to` of a small source in a free field that has `level` at `from`, in one unit of length: L + 20 lg (from/to). */
export function atDistance(level: number, from: number, to: number): number {
  return level + 20 * Math.log10(from / to);
}
