// A multiple or a fraction: of figures that stand beside it, of the figure beside it, of changes, else of what the words or the
// sentences before compare with.
import type { Mention } from '../script/index.js';
import type { Candidate, Context } from './context.js';
import { decide, readingOf } from './decide.js';
import { changesSaid, readChanges, speaksOfChanges } from './of-changes.js';
import { besideFigure, ofFigureBeside } from './of-figure-beside.js';
import { figuresTold, ofFigures } from './of-figures.js';
import { partMore } from './part-more.js';
import { addsTo, spokenBy } from './ratio-words.js';
import type { Reading } from './read.js';
import { betweenExtremes } from './read-extreme.js';
import { baseWords, changesOf } from './bases.js';
import { measureSaid, namedHere, readRatio, sameElsewhere } from './read-proportion.js';
import { ratioSure } from './support.js';
import { unknownQuantity } from './unknown-quantity.js';
import { readWhatItWas } from './what-it-was.js';

export function readMultiple(c: Context, index: number): Reading {
  const { mention: m, cue } = c.parsed.said[index]!;
  const ends = betweenExtremes(c, index);
  if (ends.length) return { ...decide(m, ends, narrow), mention: m };
  const part = partMore(c.parsed.low, m);
  const adds = part !== undefined || addsTo(c.parsed.low, m) || unknownQuantity(c, index);
  const told = adds ? undefined : figuresTold(c, index);
  const sure = adds ? undefined : told ? judged(c, index, told.candidates, told.sure) : judged(c, index, besideFigure(c, index), true);
  if (sure?.verdict === 'agrees') return sure;
  const was = sure || adds ? undefined : readWhatItWas(c, index);
  // Where but one thing can be meant, that is what it was.
  if (was) return { ...decide(m, [...was, ...readRatio(c, index)], { soft: was.length === 0 || new Set(was.map((x) => x.fact.id)).size > 1, ...narrow }), mention: m };
  const changes = speaksOfChanges(c, index);
  const found = changes ? [...readChanges(c, index), ...readRatio(c, index).map((x) => (typeof x.term.args[0] === 'string' ? { ...x, cost: x.cost + plainer } : x))] : readRatio(c, index);
  const both = measureSaid(c, index) && namedHere(c, index).size > 0 && changesOf(baseWords(c, index)).length > 0;
  // "three times as loud": degrees and decibels are no measure of that.
  const felt = c.parsed.low[m.to] === 'as' && spokenBy(c.parsed.low[m.to + 1]).some((d) => d === 'sound-level' || d === 'temperature');
  const soft = felt || unknownQuantity(c, index) || !ratioSure(c, index) || (changes && !both && !changesSaid(c, index) && !(c.parsed.low[m.to] === 'as' && found.some((x) => x.why === sameElsewhere && x.cost <= 0.2)));
  if (part) return partOf(m, part, found, soft);
  const other: Reading = { ...decide(m, found, { soft, ...narrow, silent: (m.type === 'fraction' && !cue.base) || cue.doubtful }), mention: m };
  return !sure || other.verdict === 'agrees' && other.chosen!.cost <= plainly && alike(c, sure, other) ? other : sure;
}

/** The first of the multiples that the words may make of which it is true, else the plainest. */
function partOf(m: Mention, part: { as: readonly Mention[]; sure: boolean }, found: readonly Candidate[], soft: boolean): Reading {
  const all = part.as.map((as) => decide(as, found, { soft: soft || !part.sure, ...narrow, silent: !found.some((x) => x.firm) }));
  return { ...(all.find((d) => d.verdict === 'agrees') ?? all[0]!), mention: m };
}

/** Of the quantity of the figures, unless the clause names another. */
function alike(c: Context, a: Reading, b: Reading): boolean {
  const measure = c.grid.of.measure[0]!;
  return measureSaid(c, c.parsed.said.findIndex((s) => s.mention === a.mention)) || a.chosen!.subject?.at[measure] === b.chosen!.subject?.at[measure];
}

/** Multiples are few and fit by chance. */
const narrow = { margin: 0.75, doubt: 0.85 } as const;

/** Of figures that stand beside it: nothing in it was left open. */
export function besideFigures(x: Candidate): boolean {
  return x.why === ofFigures || x.why === ofFigureBeside;
}

/** How much dearer a multiple of plain values is where the words speak of changes. */
const plainer = 0.5;

/** A reading that costs no more is what the words say, whatever figures stand beside them. */
const plainly = 0.3;

function judged(c: Context, index: number, candidates: readonly Candidate[], sure: boolean): Reading | undefined {
  const { mention } = c.parsed.said[index]!;
  if (!candidates.length) return undefined;
  const d = decide(mention, candidates, {});
  return d.verdict === 'agrees' || sure ? readingOf(d, mention) : undefined;
}
