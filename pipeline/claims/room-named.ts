// The room in the words: what a figure is set against, and no part that was read.
import { roomParts } from '../facts/index.js';
import type { Grid } from './grid.js';
import type { Name } from './lexicon.js';
import type { Parsed } from './parse.js';

export function isRoom(g: Grid, n: Name): boolean {
  return n.meanings.every((m) => m.slots.length > 0 && m.slots.every((s) => g.of.part.includes(s.slot) && roomParts.includes(s.value)));
}

/** "31 over the room", or said before all figures of a sentence: "Without the room the lid is at 31". */
export function roomCompared(g: Grid, p: Parsed, n: Name): boolean {
  const before = p.low[n.from - 1] === 'the' ? p.low[n.from - 2] : p.low[n.from - 1];
  if (before === 'over' || before === 'above') return true;
  return isRoom(g, n) && n.to <= p.said[0]!.mention.from && p.said[0]!.cue.overRoom && !/^(?:is|was|at|which)$/.test(p.low[n.to] ?? '');
}
