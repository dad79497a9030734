// A change that a thing goes through by itself.
import { changeVerbs, phraseAt } from '../script/index.js';
import type { Context } from './context.js';

/** "went up by 9": a thing that rises is compared with itself, in another setting or phase. */
export function becoming(c: Context, index: number): boolean {
  const { mention, cue, segment } = c.parsed.said[index]!;
  const words = cue.because.split(' ');
  // "The biggest saving is the Ashlar's, 6 watts", "an hour of filing took 9 seconds off it": with itself, before.
  if (cue.whose || (cue.because === 'off' && !cue.base && c.hits.hits.some((h) => h.segment === index && h.from > mention.to && c.grid.slots[h.slot]!.field === 'setup'))) return true;
  if (/^(?:up|down)$/.test(words[0]!)) return c.parsed.low.slice(segment.from, mention.from).some((w) => /^(?:go|goes|went|gone|going|come|comes|came)$/.test(w));
  const verb = phraseAt(changeVerbs, words, 0);
  return verb !== undefined && (verb.value === 'up' || verb.value === 'down');
}
