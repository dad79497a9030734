// What is to be told in a writer's form: a fact, and whether it is told with its sign or as a size.
import type { Fact } from '../facts/index.js';
import type { Mention } from '../script/index.js';
import { fits } from './fair.js';

export interface Told {
  /** As in verdicts: mean, difference, ratio, rank … */
  kind: string;
  fact: Fact;
  /** Which way the words say it goes; 0 where they do not. */
  sign: -1 | 0 | 1;
}

/** A fall of 4 is told as 4; a temperature of −4 is not. */
export function toldAsSize({ kind }: Told): boolean {
  return kind !== 'mean' && kind !== 'raw' && kind !== 'constant' && kind !== 'range';
}

/** Whether the fact may be told so. */
export function isFair(m: Mention, told: Told): boolean {
  return fits(m, told.fact, { size: toldAsSize(told) });
}
