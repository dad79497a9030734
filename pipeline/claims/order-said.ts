// The order in which a table is read out, where a sentence says it: "from quietest to loudest", "from quickest to slowest".
import { superlatives, type Way } from '../script/index.js';
import type { Grid } from './grid.js';
import type { Parsed } from './parse.js';
import type { State } from './state.js';

/** Which end comes first; undefined where no word says so, or it depends on what is better. */
export function orderSaid(g: Grid, p: Parsed, s: State): 'lowest' | 'highest' | undefined {
  for (let i = 1; i < p.low.length - 1; i++) {
    if (p.low[i] !== 'to') continue;
    const last = superlatives.get(p.low[p.low[i + 1] === 'the' ? i + 2 : i + 1] ?? '');
    const first = superlatives.get(p.low[i - 1]!);
    if (!first || !last) continue;
    const way = first.way === 'better' || first.way === 'worse' ? paced(g, p.low[i - 1]!, s) : first.way;
    if (way === 'up') return 'highest';
    if (way === 'down') return 'lowest';
  }
  return undefined;
}

const quick = /^(?:fast|quick)/;

/** The quickest takes the least time, and turns or hands on the most. */
function paced(g: Grid, word: string, s: State): Way | undefined {
  if (!quick.test(word) && !word.startsWith('slow')) return undefined;
  const measure = s.topics[g.of.measure[0]!]![0];
  if (measure === undefined) return undefined;
  const time = g.measureUnits.get(measure)!.has('duration');
  return quick.test(word) === time ? 'down' : 'up';
}
