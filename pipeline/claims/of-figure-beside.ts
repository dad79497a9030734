// A multiple of what the figure beside it is of: "1,840 rpm, 1.3 times what the slow one asks for"; "That is 11.5 past the limit,
// 23 percent too much, and three times what the other does." What it is a multiple of is named; what it speaks of is the figure.
import { changeVerbs, phraseAt } from '../script/index.js';
import { basesFor, baseWords, changesOf } from './bases.js';
import type { Candidate, Context } from './context.js';
import { fit } from './decide.js';
import { multiplies } from './of-figures.js';
import { push } from './read-value.js';
import { substitute } from './terms.js';

export const ofFigureBeside = 'of the figure beside it';

const glue = /^(?:[,;:(—–-]|or|and|so|which|is|was|that|that's|it|it's|about|around|roughly|nearly|almost|more|less|than|just|over|under|well|only|still|exactly|some|a|an|little|bit|good|fully|in|all|no|then)$/;

/** Empty where no figure stands beside it, or nothing is named that it is a multiple of. */
export function besideFigure(c: Context, index: number): Candidate[] {
  const { mention: m, segment } = c.parsed.said[index]!;
  const { low } = c.parsed;
  // "12 minutes or 9 percent, twice what the other gained": of the change, and not of how it was said again.
  const [again, said] = [c.done[index - 1], c.done[index - 2]];
  const x = again?.kind === 'percent_change' && said?.kind === 'difference' && said.subject === again.subject && said.base === again.base ? said : again;
  const beside = c.parsed.said[index - 1]?.mention;
  if (!x?.subject || !beside || beside.type !== 'cardinal' || x.subject.fixed || !fit(beside, again!) || !low.slice(beside.to, m.from).every((w) => glue.test(w)) && !(/^(?:that|that's|it|it's)$/.test(low[0]!) && trailing(c, index))) return [];
  const words = baseWords(c, index);
  const changes = changesOf(words);
  if (!changes.length || words.low.some((_, k) => { const p = phraseAt(changeVerbs, words.low, k); return p !== undefined && p.value !== 'apart'; })) return [];
  // What it is said of is named anew.
  if (c.hits.hits.some((h) => h.segment === index && h.from >= beside.to && h.from < m.from) || c.hits.hits.some((h) => h.from >= m.to && h.from < segment.to && ['measure', 'part'].includes(c.grid.slots[h.slot]!.field) && x.subject!.at[h.slot] !== h.value)) return [];
  const out: Candidate[] = [];
  if ((x.term.kind === 'mean' || x.base?.fixed) && multiplies(x.subject)) for (const b of basesFor(c, x.subject, index, words, 'up')) if (b.firm && b.why === 'named') push(out, c, { kind: 'ratio', args: [x.subject.key, b.cell.key] }, 'ratio', b.cost, x.subject, ofFigureBeside, { firm: true, base: b.cell });
  if (x.term.kind !== 'mean' && x.kind !== 'rank') for (const change of changes) {
    const other = substitute(c.grid, x.term, change);
    if (other) push(out, c, { kind: 'ratio', args: [x.term, other] }, 'ratio', 0.1, x.subject, ofFigureBeside, { firm: true });
  }
  return out;
}

/** One thing after another is said of the same: what stands between the two names nothing. */
function trailing(c: Context, index: number): boolean {
  const { mention: m } = c.parsed.said[index]!;
  const { to } = c.parsed.said[index - 1]!.mention;
  const between = c.parsed.low.slice(to, m.from);
  return between.length <= 8 && between.includes(',') && !c.hits.hits.some((h) => h.from >= to && h.from < m.from);
}
