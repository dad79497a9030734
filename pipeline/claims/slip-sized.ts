// An alarm says that a number is a slip of what the record gives. Where the words prove little (what lies further off than slips
// go, what stands by no name, what follows a number that was not understood), a number that is just right for something else that
// was measured is rather misread, and left untied. This is asked last, of alarms alone: it looks through the whole record.
//   "… and the other loses forty-six"      no difference of 17 told wrong, where a difference of 46 stands beside it
//   "The Sorrel moved up to first"         no seventh place told wrong: those who sort a list know its two ends
import { stretch } from '../script/index.js';
import type { Mention } from '../script/index.js';
import { type Candidate, type Context, oddlySized } from './context.js';
import { fit } from './decide.js';
import { endsSaid } from './doubt.js';
import { against, digitOff, digitsSwapped, near } from './far-off.js';
import { givesJust } from './gives-just.js';
import { inSaidUnit } from '../wording/index.js';
import { significant } from './insist.js';
import { nowhereNear } from './nowhere-near.js';
import type { Reading } from './read.js';
import { evaluate } from './terms.js';

/** How much dearer than the reading taken one may be that is meant nearly as well. */
const reach = 0.6;

/** More pairs than this are not tried. */
const most = 20000;

/** What is this near is told wrong in its last places, or rounded wrong. */
const closely = { low: 0.95, high: 1.05 } as const;

/** A place is told wrong by one; common practice, no published source. */
const places = 1;

/** Why an alarm rests on no slip; undefined where it may well be one. */
export function noSlip(c: Context, index: number, r: Reading): string | undefined {
  const x = r.chosen;
  if (r.verdict !== 'disagrees' || !x) return undefined;
  // "holds on to 61.3, the hottest of the four": whose that is was not understood.
  const figure = c.parsed.said[index - 1]?.mention;
  if (x.kind === 'rank' && figure?.type === 'cardinal' && (figure.unit || figure.decimals > 0) && r.mention.from - figure.to <= 2 && /^,? ?the$/.test(stretch(c.parsed.low, figure.to, r.mention.from)) && c.done[index - 1]?.subject !== x.subject) return 'the figure that it stands beside was not understood';
  if (x.kind === 'rank') return r.mention.type === 'ordinal' && Math.abs(Math.abs(r.mention.value.toNumber()) - x.fact.value.toNumber()) > places ? 'hardly told wrong by so many places' : undefined;
  const other = plainlyOther(c, index, x);
  if (other) return `just what ${other} gives`;
  const paired = c.hits.paired.has(index);
  // What the rest of the sentence was not understood to say, this number may go on from.
  const unsure = !paired && c.told.some((v) => v === 'untied' || v === 'disagrees') ? 'a number before it in the sentence was not understood'
    : !paired && !r.why.startsWith('it goes ') && nothingNamed(c, index, x) && !slipSized(r.mention, x, closely) ? 'nothing that it could be of is named beside it'
      : tooFar(c, index, r, x) ? 'too far from what the record gives for a slip' : undefined;
  const right = unsure && rightForSomething(c, index, x);
  return right && `${unsure}; right for ${right}`;
}

/** A round number, or one told as a change, that is just what one reading gives: rather that one's. */
function plainlyOther(c: Context, index: number, x: Candidate): string | undefined {
  const { mention: m } = c.parsed.said[index]!;
  const change = x.kind === 'difference' || x.kind === 'rise';
  const round = significant(m) === 1 && (change || x.kind === 'mean' || x.kind === 'constant' || x.kind === 'raw');
  if (m.type !== 'cardinal' || m.hedge || (!change && !round) || (x.base && endsSaid(c, x)) || slipSized(m, x, closely)) return undefined;
  return c.grid.cells.find((a) => a !== x.subject && (m.unit && round || a.unit.id === x.subject?.unit.id) && givesJust(c.facts, a, m, x))?.key;
}

function tooFar(c: Context, index: number, r: Reading, x: Candidate): boolean {
  const between = x.kind === 'difference' || x.kind === 'rise';
  // Multiples and counts are small numbers, which are right for something by chance.
  // "buy it for its 2.3 degrees": what is said in degrees may lie between two as well.
  const degrees = r.mention.loose && x.subject && oddlySized(c, index, x.subject);
  if (!between && ((r.mention.unit && !degrees) || x.kind === 'ratio' || x.kind === 'count')) return false;
  // "62 and 55, so 20 lower": wrong by what stands beside it.
  if (between && ((x.subject && x.base && endsSaid(c, x)) || allNamed(c, x))) return false;
  // "gets to 89.5 degrees, 0.9 under the limit": so does one that stands beside what it is of, and says from what it is counted.
  const beside = c.done[index - 1];
  if (between && x.firm && x.base && x.cost <= 0.1 && beside?.subject === x.subject && fit(c.parsed.said[index - 1]!.mention, beside!)) return false;
  // What the words may mean nearly as well is a slip's size off: that is what was meant, and told wrong.
  return !slipSized(r.mention, x) && !r.ranked.some((y) => y.candidate.cost <= x.cost + reach && slipSized(r.mention, y.candidate));
}

/** "…, then 41.2": a plain figure beside which nothing is named that it could be of; all that it is said of was carried over. */
function nothingNamed(c: Context, index: number, x: Candidate): boolean {
  const { setup, setting, part } = c.grid.of;
  // "up by 0.12 volts, to reach 1.22": of what the change was of.
  const step = c.told[index - 1] === 'agrees' ? c.done[index - 1] : undefined;
  if (step?.base && (step.subject === x.subject || step.base === x.subject)) return false;
  const figure = c.parsed.said.findLastIndex((s, k) => k < index && s.mention.type === 'cardinal');
  // A share of a whole has few values, and is right for something by chance.
  return x.term.kind === 'mean' && !x.subject?.fixed && x.subject?.unit.id !== '%' && ![...setup, ...setting, ...part].some((slot) => c.hits.bySlot[slot]!.some((h) => (h.segment > figure || figure < 0) && h.segment <= index));
}

/** Which setup, setting and work it is of, on both sides, is said in the sentence: nothing was carried over. */
function allNamed(c: Context, x: Candidate): boolean {
  const g = c.grid;
  return [...g.of.setup, ...g.of.setting, ...g.of.workload].every((slot) => [x.subject, x.base].every((cell) => !cell || !cell.at[slot] || g.values[slot]!.size < 2 || c.hits.bySlot[slot]!.some((h) => h.value === cell.at[slot])));
}

/** No further from what the record gives than slips go. */
export function slipSized(m: Mention, x: Candidate, bounds: { low: number; high: number } = near): boolean {
  const own = inSaidUnit(x.fact, m);
  if (!own) return true;
  if (own.sign() === 0) return false;
  if (digitsSwapped(m, x) || digitOff(m, x)) return true;
  const factor = Math.abs(m.value.over(own).toNumber());
  return factor >= bounds.low && factor <= bounds.high;
}

/** A reading, or a comparison of two, of which the number is true. */
function rightForSomething(c: Context, index: number, x: Candidate): string | undefined {
  const { mention: m } = c.parsed.said[index]!;
  const { cells } = c.grid;
  const plain = cells.find((a) => givesJust(c.facts, a, m, x));
  if (plain) return plain.key;
  const kinds = m.unit?.id === '%' ? ['percent_change', 'percent_of'] as const : m.unit ? ['difference'] as const : ['difference', 'percent_change', 'percent_of', 'ratio'] as const;
  let tried = 0;
  for (const kind of kinds) for (const a of cells) {
    if (kind !== 'difference' && a.unit.dimension === 'temperature') continue;
    const off = nowhereNear(c.facts, m, kind, { in: a.unit, of: a.unit });
    for (const b of against(c, a)) {
      if (tried++ > most) return undefined;
      if (off?.(a, b) || (a === x.subject && b === x.base) || (a === x.base && b === x.subject)) continue;
      const fact = evaluate(c.facts, { kind, args: [a.key, b.key] });
      if (fact && fit(m, { ...x, kind, sign: 0, fact })) return `${a.key} against ${b.key}`;
    }
  }
  return undefined;
}
