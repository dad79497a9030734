// How sure a comparison is, as it is said.
import type { Closeness, Fact, Facts } from '../facts/index.js';

/**
 * ", in single runs": said behind a comparison of what was not repeated, one that is too small to matter included. Of results
 * from earlier episodes it is said that they are.
 */
export function onceRead(facts: Facts, close: Closeness | undefined, compared: readonly Fact[]): string {
  const once = close === 'single' || (close === 'matters' && compared.some((f) => f.spread?.sd === undefined));
  if (!once || compared.some((f) => facts.isQuoted(f.subject))) return '';
  if (compared.some((f) => f.spread?.sd !== undefined)) return ', not all of it from repeated runs';
  return compared.some((f) => f.kind === 'constant') ? ', each read once' : ', in single runs';
}
