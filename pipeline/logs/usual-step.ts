/** Samples that are looked at. */
export const earlySamples = 2001;

/** The median step between samples, in seconds. */
export function usualStep(times: ArrayLike<number>): number {
  if (times.length < 2) return 0;
  const steps: number[] = [];
  for (let i = 1; i < Math.min(times.length, earlySamples); i++) steps.push(times[i]! - times[i - 1]!);
  steps.sort((a, b) => a - b);
  return steps[steps.length >> 1]!;
}
