// "Between the quickest and the slowest there are 41 seconds": both ends of a field, and how far they lie apart.
import { superlatives } from '../script/index.js';

const ends = [...superlatives.keys(), 'first', 'last', 'top', 'bottom', 'front', 'back'].join('|');
/** Between the verb and the number stands nothing but what softens it. */
const softening = 'only|just|about|around|roughly|nearly|almost|still|now|a|some|another|no|more|than|not|over|under|well';
const pattern = new RegExp(String.raw`\b(?:between|from) (?:the )?(?:very )?(?:${ends})(?: \S+)? (?:and|to) (?:the )?(?:very )?(?:${ends})(?: \S+){0,5}? (?:is|was|are|were|be|been|lies?|lay|it's|that's|there's|makes?|made|find|found|see|saw|measured?)(?: (?:${softening}))*$`);

/** Whether such words lead to the number at `at`. */
export function fromEndToEnd(low: readonly string[], at: number): boolean {
  const since = Math.max(0, at - 16);
  return low.slice(since, at).some((w) => w === 'between' || w === 'from') && pattern.test(low.slice(since, at).join(' '));
}

/** "From quickest to slowest: the Ashlar 61, …": the order in which they are read out, and nothing that lies between. */
export function toldInOrder(low: readonly string[], from: number, at: number, named: (k: number) => boolean): boolean {
  return low.slice(from, at).includes(':') && named(at - 1);
}

const after = new RegExp(String.raw`^(?:from )?(?:one end(?: of (?:the|that|this|my|our|its) \S+)? to the other|(?:the )?(?:${ends}) to (?:the )?(?:${ends})|end to end|one (?:side|extreme) to the other)\b`);

/** "That's 12 watts from one end to the other", "12 watts from best to worst": the same, said after the number. */
export function endToEndAfter(low: readonly string[], from: number): boolean {
  return after.test(low.slice(from, from + 9).join(' '));
}
