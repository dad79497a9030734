// A mark that the speaker sets by a number, which the record does not have, and what is told from it afterwards.
//   "Eighty degrees is where I get nervous. The Larch is past that by 3, the Rowan by 9."
//   "My goal was 120 frames. It gets 119.5, so it misses by 0.5."
import { stretch } from '../script/index.js';
import { convert, type Exact, unit } from '../quantities/index.js';
import { type Fact, isFact, withValue } from '../facts/index.js';
import type { Mention } from '../script/index.js';
import { type Candidate, type Context, subjectCells } from './context.js';
import { fits } from '../wording/index.js';
import { push } from './read-value.js';
import type { Reading } from './read.js';
import { valueOf } from './terms.js';

export interface OwnMark { value: Exact; unit?: string; /** How many sentences it is still at hand for. */ left: number }

/** It is gone back to for as many sentences. */
const reach = 2;

const setBehind = /^,? ?(?:is|was|'s|are|were|would be) (?:about |roughly )?(?:where (?:i|we|you|my|our|anyone|anybody)|(?:the|my|our) (?:most|least|highest|lowest|maximum|minimum|max|limit|ceiling|worst|point|line)(?: that| where)? (?:i|we|you|an?|any|anyone|anybody)|as (?:much|many|far|hot|loud|high) as|what (?:i|we)(?:'d| would)? (?:want|need|like|accept|tolerate|call|ask)|my|our|all (?:i|we|that)|enough|plenty)\b/;
const setBefore = /\b(?:(?:my|our) (?:own )?(?:goal|target|aim|line|limit|mark|ceiling|cap|budget|threshold|rule|bar|wish)(?: \p{L}+){0,3}? (?:is|was|of|at|:)|(?:i|we)(?:'d| would| had)? (?:want|wanted|aim|aimed|aiming|hope|hoped|hoping|asked?|need|needed|drew the line|draw the line|set myself|accept|tolerate|can (?:stand|take|live with|bear))(?: \p{L}+){0,4}?|the (?:most|least) (?:i|we)(?:'d| will| would| can)? \p{L}+ is)(?: (?:at|for|of|to|about|around|under|over|below|above|no|more|less|than|least|most|a|an|is))*$/u;

/** "80 is where I get nervous", "a gram and a half is the most I put up with": what follows makes a mark of it. */
export function setsMark(low: readonly string[], m: Mention): boolean {
  return setBehind.test(stretch(low, m.to, m.to + 7));
}

/** The mark that a number sets; undefined where it sets none, or one that the record has. */
export function ownMark(c: Context, r: Reading): OwnMark | undefined {
  const { mention: m } = r;
  if (m.type !== 'cardinal' || !speaks.test(c.parsed.text) || (r.verdict === 'agrees' && r.chosen?.subject?.fixed)) return undefined;
  const { low } = c.parsed;
  if (!setsMark(low, m) && !setBefore.test(stretch(low, Math.max(0, m.from - 12), m.from))) return undefined;
  return { value: m.value, ...(m.unit && !m.loose && { unit: m.unit.id }), left: reach };
}

/** Somebody's wish or nerve is spoken of at all: most sentences need no closer look. */
const speaks = /\b(?:i|i'd|we|we'd|my|our|most|least|where|enough|plenty|what)\b/i;

const from = /^(?:over|under|above|below|past|beyond|short|short of|shy of|off|miss|misses|missed|clear|clears|cleared|pass|passes|passed|beat|beats|in hand|to spare|spare|left|too many|too much|too hot|too high|too loud|away|in reserve|of headroom)$/;

/** A change that is told from such a mark: how far what is named lies from it; untied where it lies elsewhere. */
export function fromOwnMark(c: Context, index: number, r: Reading): Reading {
  const { mention: m, cue } = c.parsed.said[index]!;
  const mark = c.now.mark;
  if (!mark || r.verdict === 'agrees' || m.type !== 'cardinal' || m.unit?.id === '%') return r;
  const goesOn = cue.elided !== undefined && passes(c, m, cue.elided.because);
  if (!goesOn && (cue.op !== 'change' || !passes(c, m, cue.because) || !pointsBack(c, cue.base))) return r;
  const beside = c.done[index - 1]?.term.kind === 'mean' ? c.done[index - 1]!.subject : undefined;
  for (const { cell, cost } of [...(beside ? [{ cell: beside, cost: 0 }] : []), ...subjectCells(c, index, undefined, { limit: 2 }).cells]) {
    if (cell.fixed || cost > 1) continue;
    const fact = c.facts.value(cell.key);
    const gap = isFact(fact) ? gapTo(fact, mark) : undefined;
    if (!gap || !fits(m, gap, { size: true })) continue;
    const out: Candidate[] = [];
    push(out, c, valueOf(cell.key), 'mean', 0, cell, 'from a mark of one\'s own');
    return { ...r, verdict: 'agrees', chosen: { ...out[0]!, kind: 'difference' }, why: 'from a mark of one\'s own' };
  }
  return r.verdict === 'disagrees' ? { ...r, verdict: 'untied', why: 'from a mark of one\'s own' } : r;
}

/** "past that by 3", "misses by 3", "3 over". */
function passes(c: Context, m: Mention, because: string): boolean {
  if (!/(?:^| )by$/.test(because)) return from.test(because);
  return c.parsed.low.slice(Math.max(0, m.from - 6), m.from).some((w) => from.test(w));
}

function pointsBack(c: Context, base: { from: number; to: number } | undefined): boolean {
  return !base || base.to <= base.from || c.parsed.low.slice(base.from, base.to).every((w) => /^(?:it|that|this|them|mark|line|goal|target|the|my|by|in|on)$/.test(w)) || /^(?:it|that|this)$/.test(c.parsed.low[base.from]!);
}

/** How far a reading lies from the mark; undefined where it is of another kind, or lies on it. */
function gapTo(fact: Fact, mark: OwnMark): Fact | undefined {
  const set = mark.unit === undefined ? mark.value : convert(mark.value, unit(mark.unit), fact.unit);
  const gap = set && fact.value.minus(set);
  return gap && gap.sign() !== 0 ? withValue(fact, gap) : undefined;
}
