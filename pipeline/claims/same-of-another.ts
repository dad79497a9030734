// "The Cobble gains 14 degrees. For the Garth it's 9.": a sentence that names one thing and tells one figure goes on with the
// change that was told before it, where it can be no plain figure.
import { stretch } from '../script/index.js';
import { isFact } from '../facts/index.js';
import type { Candidate, Context } from './context.js';
import { fit } from './decide.js';
import { significant } from './insist.js';
import { push } from './read-value.js';
import type { Reading } from './read.js';
import { firstCell, sameTerm, substitute } from './terms.js';

const opens = /^(?:(?:and|but|so|while|then|now|,|whereas) )*(?:(?:for|with|on|in|at|under|when|over) )?(?:the )?$/;
const leads = /^(?:,? ?(?:it's|that's|it is|that is|it was|that was|it's only|only|just|is|was|gets|got|has|had|comes to|by|about|around|nearly|almost|even|still|more like|a|and)(?: |$))*$/;

const same = 'the same of another';

/** A sentence of no more words says nothing else. */
const brief = 10;

export function asOfAnother(c: Context, index: number, r: Reading): Reading {
  const g = c.grid;
  const { mention: m, cue } = c.parsed.said[index]!;
  const paired = c.hits.paired.get(index)?.[0];
  if (r.verdict === 'agrees' || m.type !== 'cardinal' || m.unit?.id === '%' || !/^(?:value|change)$/.test(cue.op) || cue.base || (index > 0 && (!paired || c.done[0]?.why !== same)) || c.before.figureAge > 1) return r;
  const named = c.hits.hits.filter((h) => h.baseOf < 0 && !h.departs && ['setup', 'setting', 'workload', 'part'].includes(g.slots[h.slot]!.field) && h.to <= c.parsed.said[0]!.mention.from);
  const [first, last] = [named[0], named.at(-1)];
  if (!first || !last || new Set(named.map((h) => h.slot)).size < named.length || !opens.test(`${stretch(c.parsed.low, 0, first.from)} `.trimStart()) || !leads.test(stretch(c.parsed.low, last.to, c.parsed.said[0]!.mention.from))) return r;
  const change = new Map(named.map((h) => [h.slot, h.value] as const));
  for (const t of c.before.said.slice(0, paired ? 4 : 2)) {
    if (paired && firstCell(g, t)?.at[paired.slot] !== paired.value) continue;
    if (!/^(?:difference|rise|percent_change|over_room)$/.test(t.kind)) continue;
    const term = substitute(g, t, change);
    if (!term || sameTerm(term, t) || new Set(term.args.map((a) => (typeof a === 'string' ? a : JSON.stringify(a)))).size < term.args.length) continue;
    const out: Candidate[] = [];
    push(out, c, term, t.kind === 'percent_change' ? 'percent_change' : t.kind === 'over_room' || t.kind === 'rise' ? 'rise' : 'difference', 0, firstCell(g, term), same, {});
    const [x] = out;
    if (!x || !isFact(x.fact)) continue;
    const mention = m.unit ? m : { ...m, unit: x.fact.unit };
    if (fit(mention, x)) return { ...r, mention, verdict: 'agrees', chosen: x, why: x.why };
    if (r.verdict !== 'disagrees' && significant(m) > 1 && (c.parsed.said.length === 1 || (paired && index > 0)) && c.parsed.low.length <= brief) return { ...r, mention, verdict: 'disagrees', chosen: x, why: x.why };
    return r;
  }
  return r;
}
