// So much of one thing for one of another, of which the record has neither end.
//   "2 more frames for every 10 watts", "7 watts a frame", "so one more frame is 7 watts"
import { lowAt, startsNumber } from './around.js';
import type { NumberSpan } from './numbers.js';
import type { Token } from './tokens.js';
import type { UnitSpan } from './unit-words.js';

const forEach = /^for (?:each|every)$/;
const opening = /^(?:(?:and|but|so) )?for (?:each|every|any) \p{L}/u;
const units = /^(?:frame|watt|degree|decibel|volt|gram|percent|point|megahertz|litre|kelvin)$/;
const more = /^(?:extra|more|additional|single|further)$/;
/** "each one costs it", "every extra frame takes about"; but "each of them takes 40 seconds" says what each does. */
const costing = /\b(?:(?:one|each|every|an) (?:extra|more|additional|single|further) \p{L}+ (?:is|was|costs?|takes?|needs?|eats?|comes? (?:to|at)|works out at)|(?:each|every) (?:one(?: of (?:them|those))?|of (?:them|those)) costs?)(?: (?:it|you|us|me|at|about|only|just|around|roughly|some|almost|nearly|an|extra))*$/u;
/** What may stand right before what something costs. */
const costs = /^(?:is|was|costs?|takes?|needs?|eats?|to|at|it|you|us|me|about|only|just|around|roughly|some|almost|nearly|an|extra)$/;
const longest = 10;

export function isSlope(t: readonly Token[], n: NumberSpan, unit: UnitSpan | undefined): boolean {
  if (!unit) return /^(?:more|less|fewer|extra)$/.test(t[n.to]?.low ?? '') && forEach.test(lowAt(t, n.to + 2, 2)) && endsIn(t, n.to + 4);
  if (forEach.test(lowAt(t, n.from - 2, 2))) return true;
  // "For each degree that it gains, the one carries 14 grams more"
  if (n.from > 2 && n.from < 24 && (t[0]!.low === 'for' || t[1]!.low === 'for') && opening.test(lowAt(t, 0, 5))) return true;
  if (costs.test(t[n.from - 1]?.low ?? '') && costing.test(lowAt(t, n.from - longest, longest))) return true;
  return [unit.to, unit.to + 1].some((at) => forEach.test(lowAt(t, at, 2)) && endsIn(t, at + 2)) || forOne(t, unit.to);
}

/** "… every 10 watts", and not "every one". */
function endsIn(t: readonly Token[], at: number): boolean {
  return startsNumber(t, at) && t[at]!.low !== 'one';
}

/** "watts a frame", "watts for every extra frame" */
function forOne(t: readonly Token[], at: number): boolean {
  const lead = /^(?:a|an|each)$/.test(t[at]?.low ?? '') ? 1 : /^for (?:each|every|any)$/.test(lowAt(t, at, 2)) ? 2 : 0;
  return lead > 0 && units.test(t[at + lead + (more.test(t[at + lead]?.low ?? '') ? 1 : 0)]?.low ?? '');
}
