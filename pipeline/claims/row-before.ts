// "For the Cobble that price is 1.4, for the Garth 2.7": a name and a number go on with what was said of the one before, be it a
// change, a share or a multiple.
import { isFact } from '../facts/index.js';
import type { Candidate, Context } from './context.js';
import { fit } from './decide.js';
import { significant } from './insist.js';
import { push } from './read-value.js';
import type { Reading } from './read.js';
import { firstCell, sameTerm, substitute, type Term } from './terms.js';

const goesOn = /^(?:,|;|and|but|while|for|on|in|with|at|to|by|the|a|an|only|just|mere|even|about|around|roughly|nearly|almost|still|then|another|some|of|also|it's|finally|lastly)$/;

export function asInRowBefore(c: Context, index: number, r: Reading): Reading {
  const g = c.grid;
  const { mention: m, cue } = c.parsed.said[index]!;
  if (r.verdict === 'agrees' || m.type !== 'cardinal' || m.hedge || m.unit || !/^(?:value|change|ratio)$/.test(cue.op) || cue.base) return r;
  const named = new Map([...c.hits.hits.filter((h) => h.segment === index && h.baseOf < 0 && ['setup', 'setting', 'workload'].includes(g.slots[h.slot]!.field)).map((h) => [h.slot, h.value] as const), ...(c.hits.paired.get(index) ?? []).map((x) => [x.slot, x.value] as const)]);
  const before = c.done[index - 1];
  const first = c.parsed.said[index - 1]?.mention;
  const gap = first ? c.parsed.low.slice(first.to, m.from) : [];
  const told = (k: number): boolean => c.parsed.names.some((n) => n.from <= first!.to + k && first!.to + k < n.to);
  if (!named.size || !before || !first || before.term.kind === 'mean' || !/^(?:difference|rise|percent_change|percent_of|ratio)$/.test(before.kind) || !fit(first, before) || !gap.every((w, k) => goesOn.test(w) || told(k))) return r;
  const mention = first.unit ? { ...m, unit: first.unit, loose: first.loose } : m;
  const term = substitute(g, before.term, named);
  if (!term || sameTerm(term, before.term) || new Set(term.args.map((a) => (typeof a === 'string' ? a : JSON.stringify(a)))).size < term.args.length) return r;
  const out: Candidate[] = [];
  push(out, c, term, before.kind, 0, firstCell(g, term), 'as in the row before', { sign: before.sign });
  const [x] = out;
  if (!x || !isFact(x.fact)) return r;
  if (fit(mention, x)) return { ...r, mention, verdict: 'agrees', chosen: x, why: x.why };
  return r.verdict === 'untied' && before.why !== x.why && significant(m) > 1 ? { ...r, mention, verdict: 'disagrees', chosen: x, why: x.why } : r;
}

/** "Its label says 40, also 91": what the one before was said to reach, of this one. */
export function asOfTheOneBefore(c: Context, index: number, r: Reading): Reading {
  const g = c.grid;
  const m = r.mention;
  if (r.verdict !== 'untied' && r.verdict !== 'disagrees' || m.type !== 'cardinal' || m.unit || m.hedge || significant(m) < 2 || index === 0 || c.done[index - 1]?.term.kind !== 'mean') return r;
  const named = new Map(c.hits.hits.filter((h) => h.segment <= index && h.baseOf < 0 && ['setup', 'setting', 'workload'].includes(g.slots[h.slot]!.field)).map((h) => [h.slot, h.value] as const));
  if (!named.size) return r;
  for (const last of c.before.shares.slice(0, 2)) {
    const term: Term | undefined = substitute(g, last, named);
    if (!term || sameTerm(term, last)) continue;
    const out: Candidate[] = [];
    push(out, c, term, 'percent_of', 0, firstCell(g, term), 'as of the one before');
    const [x] = out;
    const mention = { ...m, ...(x && { unit: x.fact.unit }) };
    if (x && fit(mention, x)) return { ...r, mention, verdict: 'agrees', chosen: x, why: x.why };
  }
  return r;
}
