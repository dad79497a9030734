// "12 percent slower" of what turns, "the quickest" by the time that it takes: that neither is good or bad, the word still says which way.
import type { Unit } from '../quantities/index.js';
import type { Way } from '../script/index.js';

export function paceWay(word: string, of: Unit): Way | undefined {
  const slow = /^slow(?:er|est)$/.test(word);
  if (!slow && !/^(?:fast|quick)(?:er|est)$/.test(word)) return undefined;
  return of.dimension === 'rotation' ? (slow ? 'down' : 'up') : of.dimension === 'duration' ? (slow ? 'up' : 'down') : undefined;
}
