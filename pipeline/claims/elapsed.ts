// A time that merely passes, against one that was measured: "after ten minutes", "an hour in", "for a few seconds".
//   "it's the Drum, with its 27 minutes"     its own: measured
//   "Steady: 73 minutes."                    given beside its name: measured
//   "93 minutes of the copy"                 of what was run: measured
//   "the Stoat dies after 74 minutes"       how long a thing lasts is what was measured
import { stretch } from '../script/index.js';
import type { Context } from './context.js';

/** Whether a duration need not be about a reading. */
export function elapsed(c: Context, index: number): boolean {
  const { mention: m } = c.parsed.said[index]!;
  if (m.unit?.dimension !== 'duration') return false;
  if (idling.test(stretch(c.parsed.low, Math.max(0, m.from - 6), m.from))) return true;
  if (told(c, index)) return false;
  const { low } = c.parsed;
  const near = timed(c, index);
  if ((m.composed || m.decimals > 0) && near) return false;
  if (m.composed && low[m.from - 1] !== 'of' && c.hits.hits.some((h) => ['setup', 'setting'].includes(c.grid.slots[h.slot]!.field) && !c.grid.holders.has(h.value))) return false;
  return !near || /^(?:after|for|in|within|every|over|another|last|first|next|per|past|until)$/.test(low[m.from - 1] ?? '') || /^(?:in|later|into|long|of|after|before|ago)$/.test(low[m.to] ?? '');
}

/** "after a warm-up of ten minutes", "a break of half an hour": before and between what was measured. */
const idling = /\b(?:warm ?-? ?up|cool ?-? ?down|burn ?-? ?in|soak|pause|break|rest|interval|wait|run ?-? ?up|lead ?-? ?in|settling time) of(?: (?:about|around|roughly|some|at least|another|a good|a full))?$/;

/** The words around it say whose time it is. */
function told(c: Context, index: number): boolean {
  const { mention: m, segment } = c.parsed.said[index]!;
  const { low, tokens, names } = c.parsed;
  const things = names.filter((n) => n.meanings.some((x) => x.own && x.slots.some((s) => ['setup', 'setting', 'workload'].includes(c.grid.slots[s.slot]!.field) && !c.grid.holders.has(s.value))));
  if (/^(?:its|their|his|her)$/.test(low[m.from - 1] ?? '') || tokens[m.from - 1]?.possessive) return true;
  if (low[m.from - 1] === ':' && things.some((n) => n.to === m.from - 1)) return true;
  const next = low[m.to] === 'of' ? (/^(?:the|my|our|that|this)$/.test(low[m.to + 1] ?? '') ? m.to + 2 : m.to + 1) : -1;
  // "twenty minutes of the game", where only the copy was timed: how long it was run.
  if (next > 0 && c.hits.hits.some((h) => h.from >= next - 1 && h.from <= next && c.grid.slots[h.slot]!.field === 'workload' && timesHave(c, h))) return true;
  const said = stretch(low, segment.from, m.from);
  return ends.test(said) || lasting.test(said);
}

function timesHave(c: Context, h: { slot: number; value: string }): boolean {
  return [...c.grid.measureUnits].some(([m, dims]) => dims.has('duration') && c.grid.valuesWith.get(m)![h.slot]!.has(h.value));
}

/** "dies after 92 minutes" */
const ends = /\b(?:dies|died|dead|quits|quit|throttles|throttled|gives up|gave up|gives out|gave out|runs? (?:out|dry|flat)|ran (?:out|dry|flat)|shuts? (?:off|down)|went (?:dark|dead|flat)|goes (?:dark|dead|flat)|empty|flat) (?:again )?(?:after|at|in)(?: (?:just|only|about|exactly|barely))?$/;

/** "holds out for 212 seconds" */
const lasting = /\b(?:lasts|lasted|last|survives|survived|endures|(?:holds|held|hold|holding) (?:out|on)|(?:keeps|kept) (?:going|running)|went on|goes on|keeps? (?:that|it|this) up|kept (?:that|it|this) up)(?: for)?(?: (?:just|only|about|exactly|a full|barely))?$/;

/** The sentence, or the one before, speaks of a measured time. */
export function timed(c: Context, index: number): boolean {
  const g = c.grid;
  const of = (m: string): boolean => g.measureUnits.get(m)?.has('duration') ?? false;
  const slot = g.of.measure[0]!;
  return c.hits.hits.some((h) => h.slot === slot && of(h.value)) || c.hits.dimensions.some((d) => d.dimension.includes('duration')) || (c.now.ages[slot]! <= 2 && of(c.now.topics[slot]![0] ?? '')) || c.done.slice(0, index).some((x) => x?.subject && of(x.subject.at[slot]!));
}
