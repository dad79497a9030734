// A superlative or an ordinal, judged: whether it states a place at all, and whether an alarm may rest on it.
import { stretch } from '../script/index.js';
import type { Candidate, Context } from './context.js';
import { decide, type Decision } from './decide.js';
import { subjectUnknown } from './placed-subject.js';
import { figureBeside, readRank, sizeSaid } from './read-rank.js';
import { firstCell } from './terms.js';

export function readPlace(c: Context, index: number): Decision {
  const said = c.parsed.said[index]!;
  const m = said.mention;
  const { low, tokens } = c.parsed;
  if (m.type === 'ordinal') {
    const next = tokens[m.to];
    const follows = !next || next.kind === 'mark' || /^(?:place|and|with|at|in|by|is|comes|goes|on|again|overall|here|there|now|the|of|behind|ahead|but|while|so|then|for)$/.test(next.low);
    const preceded = /^(?:the|a|an|this|that|our|my|its|every|each)$/.test(low[m.from - 1] ?? '');
    const copula = /^(?:is|comes|came|finishes|finished|takes|took|holds|held|in|lands|landed|are|to|'s|it's|placed|ranks|ranked|only|still|be)$/.test(low[m.from - 1] ?? '');
    // "Check the maker's instructions first.": before all else.
    if (m.value.toNumber() === 1 && !c.hits.hits.some((h) => h.segment === index) && low.slice(said.segment.from, m.from).some((w) => /^(?:check|read|ask|see|switch|unplug|try|test|save|consult|look|watch|let|do|get|talk|think)$/.test(w))) return decide(m, [], { silent: true });
    // "The Rowan went first, and it was on the bench for an hour": whose turn it was, and no place.
    if (/^(?:first|next|last|second|third)$/.test(low[m.from]!) && /^(?:go|goes|going|went|gone|tried|tested|mounted|fitted|installed|measured|ran|arrived)$/.test(low[m.from - 1] ?? '') && !c.parsed.said.some((s, k) => k !== index && s.mention.type === 'ordinal')) return decide(m, [], { silent: true });
    if ((!follows && !(copula && !/s$/.test(next?.low ?? ''))) || (preceded && next?.low !== 'place') || m.form === 'digits' && preceded) return decide(m, [], { silent: true });
  }
  if (m.superlative) {
    // "from coolest to hottest" states an order; "most of you", "at best" state nothing.
    const beside = [low[m.to], low[m.to + 1], low[m.from - 1], low[m.from - 2]];
    if ((low[m.to] === 'to' && c.parsed.said[index + 1]?.mention.superlative) || (low[m.from - 1] === 'to' && c.parsed.said[index - 1]?.mention.superlative)) return decide(m, [], { silent: true });
    // "6.1 more than the least" compares with it; "at its best" ranks nothing.
    if (/^(?:its|their|his|her|my|our|your)$/.test(low[m.from - 1] ?? '') || c.parsed.said.some((s, k) => k !== index && s.cue.base && m.from >= s.cue.base.from && m.from < s.cue.base.to)) return decide(m, [], { silent: true });
    // "Warmest hour, °C: the Larch 52, the Rowan 57": the head of a row, and no place.
    const colon = low.indexOf(':', m.to);
    if (colon > 0 && colon < m.to + 5 && m.value.toNumber() === 1 && new Set(c.hits.hits.filter((h) => h.from > colon && c.grid.slots[h.slot]!.field === 'setup').map((h) => h.value)).size > 1) return decide(m, [], { silent: true });
    // "and draws the most, 31 watts": what there is most of is the figure behind it.
    const next = c.parsed.said[index + 1];
    const figured = low[m.from - 1] === 'the' && next?.mention.unit !== undefined && next.cue.op === 'value' && /^(?:,|at|with|, at|, with)$/.test(stretch(low, m.to, next.mention.from)) && figureBeside(c, index) !== undefined;
    if (low[m.to] === 'first' || !figured && /^(?:most|least)$/.test(low[m.from]!) && !(low[m.from - 1] === 'the' && sizeSaid(c, index) !== undefined) && (beside[0] === 'of' || !/^(?:efficient|power|noise|heat|frames)$/.test(beside[0] ?? ''))) return decide(m, [], { silent: true });
  }
  // "buy whichever is the cheapest", where the record has no prices: a quantity that was never measured.
  if (m.superlative?.of.length && !m.superlative.of.some((d) => [...c.grid.measureUnits.values()].some((dims) => dims.has(d)))) return decide(m, [], { silent: true });
  const candidates = readRank(c, index);
  const d = decide(m, candidates, { silent: true, margin: 0.35 });
  // "It gives you 31 grams and third place": got beside the figure, and not by it.
  if (d.verdict === 'agrees' || (low[m.to] === 'place' && low[m.from - 1] === 'and' && c.parsed.said[index - 1]?.mention.to === m.from - 1)) return d;
  // "the loudest and the quietest are 9 apart": the two ends, whichever they are.
  if (pairedEnds(c, index)) return decide(m, [], { silent: true });
  if (subjectUnknown(c, index)) return { ...d, verdict: 'untied', why: 'what is placed is not understood' };
  const subjectSaid = c.hits.hits.some((h) => ['setup', 'setting', 'workload'].includes(c.grid.slots[h.slot]!.field) && (h.segment === index || h.segment === index + 1));
  const best0 = d.ranked[0]?.candidate;
  // What is ranked is what the figure beside it was given for.
  const figure = best0?.subject !== undefined && !(m.superlative && c.done[index - 1]?.subject === best0.subject) && figureBeside(c, index) === best0.subject;
  const measureSaid = figure || (m.superlative?.of.length ?? 0) > 0 || c.hits.dimensions.length > 0 || c.hits.hits.some((h) => c.grid.slots[h.slot]!.field === 'measure' || c.grid.slots[h.slot]!.field === 'part') || m.type === 'ordinal' || (sizeSaid(c, index) !== undefined && best0 !== undefined && spokenLast(c, best0));
  const best = d.ranked[0];
  // "The Larch and the Rowan are the quietest": one of them is, and which is not said.
  if (m.superlative && /(?:^| )(?:are|were)(?: the| also| still| clearly)*$/.test(stretch(low, Math.max(0, m.from - 3), m.from))) return d;
  // "the biggest heat sink": what is ranked is nothing that was measured.
  const noun = tokens[m.to];
  const foreignNoun = m.superlative !== undefined && m.superlative.of.length === 0 && noun?.kind === 'word' && !rankTrailers.test(noun.low) && !c.parsed.names.some((n) => n.from <= m.to + 1 && m.to < n.to && n.meanings.some((x) => x.own));
  const standing = !foreignNoun && (figure || subjectSaid || sizeSaid(c, index) !== undefined || low.slice(said.segment.from, m.from).some((w) => /^(?:this|that|it|which|it's|that's)$/.test(w)));
  if (best && best.candidate.cost <= 0.8 && standing && measureSaid && !besideOther(c, index, best.candidate) && !d.ranked.some((r) => r.fits && !otherThanSaid(c, index, r.candidate) && r.candidate.cost <= best.candidate.cost + (m.superlative ? (m.value.toNumber() === 1 && sizeSaid(c, index) === undefined ? 0.9 : m.value.toNumber() === 1 ? 0.5 : 0.35) : 0.5)) && (m.type !== 'ordinal' || (ranking(c, index) && measureSpoken(c, index, best.candidate)))) return { ...d, verdict: 'disagrees', chosen: best.candidate, why: best.candidate.why };
  return d;
}

/** Two superlatives joined, that say the two ends of a field. */
function pairedEnds(c: Context, index: number): boolean {
  const { said, low } = c.parsed;
  return [[index - 1, index], [index, index + 1]].some(([i, k]) => {
    const [a, b] = [said[i!]?.mention, said[k!]?.mention];
    return a?.superlative && b?.superlative && a.superlative.way !== b.superlative.way && /^(?:and|from|versus|against|minus)(?: the)?$/.test(stretch(low, a.to, b.from));
  });
}

/** A place by itself says nothing about what is ranked: its measure is named with it, or that of the figure beside it or said last. */
function measureSpoken(c: Context, index: number, x: Candidate): boolean {
  const g = c.grid;
  const measure = g.of.measure[0]!;
  const of = x.subject?.at[measure];
  if (c.parsed.said.some((s) => s.mention.unit?.parts && s.mention.unit.id !== x.fact.unit.id) || /\b(?:per|for each|for every) watt\b/.test(c.parsed.low.join(' '))) return false;
  const before = c.done[index - 1];
  const figure = c.parsed.said[index - 1]?.mention;
  if (figure?.type === 'cardinal' && figure.unit && (before?.subject?.at[measure] !== of || before?.kind === 'per_watt')) return figureBeside(c, index)?.at[measure] === of;
  const dims = g.measureUnits.get(of ?? '');
  if (c.hits.hits.some((h) => h.segment <= index && h.slot === measure && h.value === of) || c.hits.dimensions.some((d) => d.segment <= index && d.dimension.some((y) => dims?.has(y)))) return true;
  const last = c.now.said[0] && firstCell(g, c.now.said[0]);
  return figureBeside(c, index)?.at[measure] === of || last?.at[measure] === of || c.now.placed.some((k) => g.byKey.get(k)?.at[measure] === of) || c.done.slice(0, index).some((d) => d?.subject?.at[measure] === of);
}

/** It is of the quantity that was said last. */
function spokenLast(c: Context, x: Candidate): boolean {
  const y = c.now.said[0] && firstCell(c.grid, c.now.said[0]);
  return y !== undefined && [...c.grid.of.measure, ...c.grid.of.part].every((i) => y.at[i] === x.subject?.at[i]);
}

/** Words after a superlative that are no noun. */
const rankTrailers = /^(?:of|in|on|at|with|here|there|by|and|or|but|is|was|are|were|to|for|the|overall|too|again|now|so|while|as|from|under|than|that|which|it|one|ones|among|ever|yet|when|only|also|this|between|across|all|still|both|not|with|because|though|although|we|i|you)$/;

const placing = /\b(?:comes?|came|finish(?:es|ed)?|lands?|landed|slips?|slipped|drops?|dropped|falls?|fell|moves?|moved|climbs?|climbed|rises|rose|takes|took|ends up|ended up|places?|ranks?|runs|is)(?: up| down| back)?(?: to| in| at| a| the)?$/;

/** Places are being given: several in the sentence, one before, or "place" itself. */
function ranking(c: Context, index: number): boolean {
  const { said, low } = c.parsed;
  // "The coolest of all six is the one, and second is the other"
  if (said.some((s, k) => k < index && s.mention.superlative && sizeSaid(c, k) !== undefined)) return true;
  // "The Corrow wins with 212 seconds, the Ashlar comes second"
  if (c.now.leads && c.now.leads !== c.before.leads && placing.test(stretch(low, 0, said[index]!.mention.from))) return true;
  return said.filter((s) => s.mention.type === 'ordinal').length > 1 || low.includes('place') || low.slice(said[index]!.mention.to, said[index]!.mention.to + 4).some((w) => /^(?:table|list|ranking|field|order)$/.test(w)) || (figureBeside(c, index) !== undefined && /^(?:with|at|,|\.)?$/.test(low[said[index]!.mention.to] ?? '')) || (c.now.placed.length > 0 && (low.length <= 6 || (said[index]!.mention.from === 0 && low[said[index]!.mention.to] === ',')));
}

/** "Third, the Rowan, 3.1 decibels back": no other quantity than the one that the places are told in. */
function otherThanSaid(c: Context, index: number, x: Candidate): boolean {
  const [m, next] = [c.parsed.said[index]!.mention, c.parsed.said[index + 1]?.mention];
  if (!next?.unit || ['share', 'points', 'ratio'].includes(next.unit.dimension) || next.from - m.to > 6 || c.parsed.low.slice(m.to, next.from).some((w) => /^(?:and|but|while|so)$/.test(w))) return false;
  const of = x.subject && c.grid.measureUnits.get(x.subject.at[c.grid.of.measure[0]!]!);
  return of !== undefined && !of.has(next.unit.dimension) && !(next.unit.dimension.startsWith('temperature') && (of.has('temperature') || of.has('temperature-difference')));
}

/** "It warms fastest, within 11 minutes": what is ranked is the figure beside it, and not what the reading taken is of. */
function besideOther(c: Context, index: number, x: Candidate): boolean {
  const m = c.parsed.said[index]!.mention;
  const next = c.parsed.said[index + 1]?.mention;
  const of = x.subject && c.grid.measureUnits.get(x.subject.at[c.grid.of.measure[0]!]!);
  if (!of || !next?.unit || next.unit.id === '%' || next.unit.id === 'points' || next.from - m.to > 4) return false;
  return !of.has(next.unit.dimension) && !(next.unit.dimension.startsWith('temperature') && (of.has('temperature') || of.has('temperature-difference')));
}
