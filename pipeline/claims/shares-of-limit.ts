// "It draws 412 watts plain and 318 on gentle, out of a limit of 430, so 96 and 74 percent": each figure as a share of the limit
// that was told between.
import { stretch } from '../script/index.js';
import type { Candidate, Context } from './context.js';
import { fit } from './decide.js';
import type { Cell } from './grid.js';
import { push } from './read-value.js';
import { firstCell } from './terms.js';

const leading = /^(?:[,.;:—–] ?)?(?:(?:on|for|in|with) (?:both|all|each|either)(?: of (?:them|these))? )?(?:, )?(?:(?:so|which is|which makes|that's|that is|making|or|and) ?)+(?:(?:about|around|roughly|nearly|almost|just|only) ?)*$/;

export function readSharesOfLimit(c: Context, index: number): Candidate[] {
  const { said, low } = c.parsed;
  const out: Candidate[] = [];
  if (said[index]!.mention.unit?.id !== '%' || said[index]!.cue.base || said[index]!.cue.op === 'change') return out;
  // Where the list of percentages begins, right behind the limit.
  let first = index;
  while (first > 0 && said[first - 1]!.mention.unit?.id === '%') first--;
  const limit = c.done[first - 1];
  if (!limit?.subject?.fixed || limit.term.kind !== 'mean' || !fit(said[first - 1]!.mention, limit) || !leading.test(stretch(low, said[first - 1]!.mention.to, said[first]!.mention.from))) return out;
  let last = index;
  while (said[last + 1]?.mention.unit?.id === '%') last++;
  const g = c.grid;
  const like = (x: Cell | undefined): x is Cell => x !== undefined && !x.fixed && [...g.of.measure, ...g.of.part].every((i) => !limit.subject!.at[i] || x.at[i] === limit.subject!.at[i]);
  // The figures may be those of the sentence before.
  const before = c.before.figureAge <= 1 ? c.before.said.flatMap((t) => (t.kind === 'mean' ? firstCell(g, t) ?? [] : [])).reverse() : [];
  const figures = [...before, ...c.done.slice(0, first - 1).map((d) => (d?.term.kind === 'mean' ? d.subject : undefined))].filter(like);
  const n = last - first + 1;
  const figure = figures.length >= n ? figures[figures.length - n + (index - first)] : undefined;
  if (figure) push(out, c, { kind: 'percent_of', args: [figure.key, limit.subject.key] }, 'percent_of', 0, figure, 'of the limit told beside it', { base: limit.subject, firm: true });
  return out;
}
