// "The processor rests at 88.1 degrees", where the product whose limits are on record is called so too: the part is meant.
import { stretch } from '../script/index.js';
import type { Grid } from './grid.js';
import type { Name } from './lexicon.js';
import type { Parsed } from './parse.js';
import type { State } from './state.js';

/** A name of a part and of who holds its limits, said of what was measured. */
export function partNotHolder(g: Grid, p: Parsed, n: Name, state: State): boolean {
  if (!n.meanings.some((m) => m.own && m.fields.includes('part'))) return false;
  return ofAll(p, n) || measuredSince(g, p, n, state) || p.names.some((o) => o !== n && o.meanings.some((m) => m.own && m.fields[0] === 'setup' && m.slots.some((s) => !g.holders.has(s.value))));
}

/** "the median processor temperature", "the spread in processor temperature": of limits there is none. */
function ofAll(p: Parsed, n: Name): boolean {
  return /(?:^| )(?:median|(?:spread|range|median|gap|difference) (?:of|in|between))(?: the| our| all)?$/.test(stretch(p.low, Math.max(0, n.from - 3), n.from));
}

/** Of a thing spoken of before, and of no limit up to the figure. */
function measuredSince(g: Grid, p: Parsed, n: Name, state: State): boolean {
  const figure = p.said.find((s) => s.mention.from >= n.to)?.mention;
  if (!figure?.unit || !g.of.setup.some((i) => state.topics[i]!.length > 0 && state.ages[i]! <= 2)) return false;
  return !p.names.some((o) => o.from < figure.from && o.meanings.some((m) => m.role && /^(?:limit|target|rated)$/.test(m.role.role)));
}
