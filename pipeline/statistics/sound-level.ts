// Levels in decibels: a mean of sound levels is a mean of energies (the mean level of ISO 3744).

/** 10 lg (mean of 10^(L/10)). */
export function energyMean(levels: readonly number[]): number {
  return 10 * Math.log10(levels.reduce((sum, level) => sum + 10 ** (level / 10), 0) / levels.length);
}

/** What a level `above` its background by so many dB reads too much: K1 of ISO 3744. */
export function backgroundCorrection(above: number): number {
  return -10 * Math.log10(1 - 10 ** (-above / 10));
}
