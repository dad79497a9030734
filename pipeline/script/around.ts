// What stands around a number.
import type { Token } from './tokens.js';

/** So many words from one on, in small letters. */
export function lowAt(t: readonly Token[], from: number, many: number): string {
  return t.slice(Math.max(0, from), Math.max(0, from + many)).map((w) => w.low).join(' ');
}

/** A number begins at a word, or with `ends` ends there, as far as one word tells. */
export function startsNumber(t: readonly Token[], i: number, ends = false): boolean {
  const w = t[i];
  if (!w) return false;
  return w.kind === 'number' || (!ends ? /^(?:one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fourteen|sixteen|nineteen|twenty)$/.test(w.low) : /^(?:one|two|three|four|five|six|seven|eight|nine|ten|twelve|hundred|forty|sixty|eighty|twenty)$/.test(w.low));
}
