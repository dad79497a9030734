// Which way a table runs, by the figure of whoever is said to win it: "The Corrow wins with 212 seconds, the Ashlar comes second."
import { isFact } from '../facts/index.js';
import { siblingsOf } from './siblings.js';
import type { Candidate, Context } from './context.js';

const winning = new Set('wins won leads led tops topped'.split(' '));

/** The end of the field at which the winner's figure lies; undefined where it lies at neither, or nobody is said to win by it. */
export function leadBy(c: Context, index: number, x: Candidate): 'lowest' | 'highest' | undefined {
  const { segment, mention } = c.parsed.said[index]!;
  if (x.term.kind !== 'mean' || !x.subject || x.subject.fixed || !c.parsed.low.slice(segment.from, mention.from).some((w) => winning.has(w))) return undefined;
  const own = x.fact.value;
  const others = siblingsOf(c.grid, x.subject, c.grid.of.setup).filter((y) => y !== x.subject).map((y) => c.facts.value(y.key)).filter(isFact);
  if (others.length < 2) return undefined;
  const above = others.filter((f) => f.value.compare(own) > 0).length;
  return above === others.length ? 'lowest' : above === 0 ? 'highest' : undefined;
}
