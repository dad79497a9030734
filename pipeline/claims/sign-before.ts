// A sign before a number, which makes it a change.
import type { Mention, Token } from '../script/index.js';

/** "-4.3 fps", "+3.3 dB": with a sign before it, what is given is a change. */
export function signBefore(t: readonly Token[], m: Mention): 'up' | 'down' | undefined {
  if (/^[-−–]/.test(t[m.from]!.text)) return 'down';
  return t[m.from - 1]?.low === '+' && t[m.from]!.tight ? 'up' : undefined;
}
