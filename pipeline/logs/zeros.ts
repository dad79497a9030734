// A sensor that reads zero: nothing was measured, and a mean of it is silently too low.
import type { BucketFigures } from './bucket-figures.js';

/** What is not zero stands at least this share of its median away from it: a quantity that may come near zero is left alone. */
const wellAbove = 0.2;
/** What reads zero that often, time and again, is a quantity of two states, as a load that pulses; a sensor that fails does so seldom or stays away. */
const often = 0.1;
const timeAndAgain = 3;
/** Buckets of a long log that are read again. */
const mostLookedAt = 16;

export interface Zeros {
  /** The bucket and, where it was looked at, the line of the first. */
  first: number;
  line?: number;
  /** How many, of how many values; undefined where a long log has too many stretches with zeros among others to look at all. */
  count: number | undefined;
  all: number;
  /** Which share of all they are, at least about. */
  share: number;
}

type Stretches = readonly (readonly [from: number, to: number])[];

/**
 * The zeros where zero cannot be: what else there is stands well away from it on one side, or there is nothing else. A bucket
 * whose lowest or highest is zero, but not both, is read again (`again` gives its lines and values).
 */
export function zerosAmong(figures: BucketFigures, rows: Stretches, again: (bucket: number) => { lines: readonly number[]; values: readonly number[] }): Zeros | undefined {
  const others: number[] = [];
  const mixed: number[] = [];
  let [count, all, first, times] = [0, 0, -1, 0];
  for (const [from, to] of rows) {
    let before = false;
    for (let b = from; b < to; b++) {
      const [low, high, filled] = [figures.low(b), figures.high(b), figures.filledIn(b)];
      if (filled === 0) continue;
      all += filled;
      const has = low === 0 || high === 0;
      if (has && first < 0) first = b;
      if (has && !before) times++;
      before = has;
      if (low === 0 && high === 0) count += filled;
      else if (has) mixed.push(b);
      else others.push(low, high);
    }
  }
  if (first < 0 || !wellAway(others)) return undefined;
  const looked = mixed.length > mostLookedAt ? Array.from({ length: mostLookedAt }, (_, i) => mixed[Math.floor((i * mixed.length) / mostLookedAt)]!) : mixed;
  let [seen, seenZero] = [0, 0];
  let line: number | undefined;
  for (const b of looked) {
    const { lines, values } = again(b);
    let before = false;
    values.forEach((v, i) => {
      if (Number.isNaN(v)) return;
      seen++;
      if (v === 0) {
        seenZero++;
        if (b === first) line ??= lines[i];
        if (!before && i > 0) times++;
      } else others.push(v);
      before = v === 0;
    });
  }
  if (!wellAway(others)) return undefined;
  const inMixed = mixed.reduce((n, b) => n + figures.filledIn(b), 0);
  const about = count + (seen ? (inMixed * seenZero) / seen : 0);
  const share = about / all;
  if (share < 1 && times >= timeAndAgain && share >= often) return undefined;
  return { first, ...(line !== undefined && { line }), count: looked === mixed ? count + seenZero : undefined, all, share };
}

function wellAway(values: readonly number[]): boolean {
  const sizes = values.map(Math.abs).sort((a, b) => a - b);
  const oneSide = values.every((v) => v > 0) || values.every((v) => v < 0);
  return sizes.length === 0 || (oneSide && sizes[0]! >= wellAbove * sizes[sizes.length >> 1]!);
}
