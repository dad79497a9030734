// "You get 54 minutes from the Cobble", "I bought four lamps": what is received is a plain figure, whoever gives it, and what was acquired is counted.
import type { Mention } from '../script/index.js';
import type { Name } from './lexicon.js';

const receiving = /^(?:gets?|got|getting|gotten|had|have|has|sees?|saw|seen|coax|coaxed|squeezed?|squeezes|wring|wrung|expect|hear|heard|measured|received?|counted|read|recorded|logged)$/;
const acquiring = /^(?:buys?|bought|gets?|got|gets us|puts?|takes?|took|leaves?|left|brings?|brought|makes?|made)$/;

/** The number is followed by "from" and a thing, and the clause says that it was received. */
export function givenBy(low: readonly string[], m: Mention, names: readonly Name[]): boolean {
  if (low[m.to] !== 'from' || !names.some((n) => n.from > m.to && n.from <= m.to + 2 && n.meanings.some((x) => x.own && x.fields.length === 1 && x.fields[0] === 'setup'))) return false;
  if (listed(low, m, names)) return true;
  for (let k = m.from - 1; k >= 0 && !/^[;:]$/.test(low[k]!); k--) if (receiving.test(low[k]!)) return !/^(?:away|up|down)$/.test(low[m.from - 1] ?? '');
  return false;
}

/** "9.4 litres from the Cobble, 7.1 from the Garth": one figure after the other, each with where it came from. How far one thing lies from another is said with a verb of being. */
function listed(low: readonly string[], m: Mention, names: readonly Name[]): boolean {
  const sources = names.filter((n) => (low[n.from - 1] === 'from' || (low[n.from - 1] === 'the' && low[n.from - 2] === 'from') || (low[n.from] === 'the' && low[n.from - 1] === 'from')) && n.meanings.some((x) => x.own && x.fields[0] === 'setup'));
  if (sources.length < 2) return false;
  return !low.slice(0, m.from).some((w) => /^(?:away|apart|far|distance|differs?|is|are|was|were|it's|lies|lie|lay|sits|sit|sat|stays?|stood|stands)$/.test(w)) && !/^(?:up|down|rise|rises|climb|drop)$/.test(low[m.from - 1] ?? '');
}

/** A verb of change before a number of things is no change of anything: they were come by. */
export function acquired(verb: string): boolean {
  return acquiring.test(verb);
}
