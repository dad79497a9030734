// A change that a thing goes through by itself.
import { changeVerbs, phraseAt } from '../script/index.js';
import type { Context } from './context.js';

/** "went up by 9": a thing that rises is compared with itself, in another setting or phase. */
export function becoming(c: Context, index: number): boolean {
  const { mention, cue, segment } = c.parsed.said[index]!;
  const words = cue.because.split(' ');
  if (/^(?:up|down)$/.test(words[0]!)) return c.parsed.low.slice(segment.from, mention.from).some((w) => /^(?:go|goes|went|gone|going|come|comes|came)$/.test(w));
  const verb = phraseAt(changeVerbs, words, 0);
  return verb !== undefined && (verb.value === 'up' || verb.value === 'down');
}
