// The short telling: what a presenter reads who has three minutes.
import type { Sentence } from './sentence.js';

/** About three minutes; common practice, no published source. */
const budget = 180;

/**
 * One sentence a section, the first, in the order of the sections, as long as there is time. Sections lead with what they are
 * about, and each sentence names its subject, so they can be read one after another.
 */
export function shortTelling(sentences: readonly Sentence[]): Sentence[] {
  const seen = new Set<string>();
  const chosen: Sentence[] = [];
  let seconds = 0;
  for (const s of sentences) {
    if (seen.has(s.section)) continue;
    seen.add(s.section);
    if (seconds + s.seconds > budget) continue;
    seconds += s.seconds;
    chosen.push(s);
  }
  return chosen;
}
