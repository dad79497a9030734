// What stands around a number.
import { stretch } from './stretch.js';
import type { Token } from './tokens.js';

/** The sentence that was looked at last, as one is read at a time. */
let last: readonly Token[] = [];
let low: readonly string[] = [];

/** The words of a sentence in small letters, the same list each time as long as none other is asked for. */
export function lowOf(t: readonly Token[]): readonly string[] {
  if (t !== last) [last, low] = [t, t.map((w) => w.low)];
  return low;
}

/** So many words from one on, in small letters. */
export function lowAt(t: readonly Token[], from: number, many: number): string {
  return stretch(lowOf(t), Math.max(0, from), Math.max(0, from + many));
}

/** A number begins at a word, or with `ends` ends there, as far as one word tells. */
export function startsNumber(t: readonly Token[], i: number, ends = false): boolean {
  const w = t[i];
  if (!w) return false;
  return w.kind === 'number' || (!ends ? /^(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fourteen|sixteen|nineteen|twenty)$/.test(w.low) : /^(?:one|two|three|four|five|six|seven|eight|nine|ten|twelve|hundred|forty|sixty|eighty|twenty)$/.test(w.low));
}
