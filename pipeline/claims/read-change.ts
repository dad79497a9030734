// A mention read as a change: a difference, a rise over idle, a percentage, against what the words or the context compare with.
import { stretch } from '../script/index.js';
import type { Way } from '../script/index.js';
import { passedOver } from './oblique.js';
import { basesFor, baseWords, changesOf, medianSet } from './bases.js';
import { siblings } from './siblings.js';
import { type Candidate, type Context, polarity, reachOfCosts, sameCellExcept, signOf, subjectCells, unitsOf } from './context.js';
import { type Cell, moved, movedTo } from './grid.js';
import { fit } from './decide.js';
import { aheadOfNext } from './ahead-of-next.js';
import { againstExtreme } from './read-extreme.js';
import { nowFromThen } from './now-from-then.js';
import { medianBefore } from './median-before.js';
import { correctedSpan, correctedTerm } from './corrected.js';
import { paceWay } from './pace.js';
import { overRoomTerm, push, readValue } from './read-value.js';
import { unitBeside } from './unit-beside.js';
import { firstMeant } from './said-by-place.js';
import { firstCell, sameTerm, substitute, type Term } from './terms.js';

export function readChange(c: Context, index: number): Candidate[] {
  const said = c.parsed.said[index]!;
  const { cue, mention } = said;
  const percent = mention.unit?.id === '%';
  const lead = aheadOfNext(c, index);
  if (lead.length) return lead;
  const since = nowFromThen(c, index);
  if (since.length) return since;
  const { cells } = subjectCells(c, index, unitsOf(said, true) ?? unitBeside(c, index));
  // "sinks by 64 millivolts, to 188", "is 8 watts thriftier, at 37": where it ends tells what changes.
  const ends = endBeside(c, index);
  if (ends) {
    for (const x of cells) x.cost += x.cell === ends ? 0 : 0.6;
    if (!cells.some((x) => x.cell === ends)) cells.push({ cell: ends, cost: 0 });
    cells.sort((a, b) => a.cost - b.cost);
  }
  // "turns at 1,260 now, 10 percent less than it used to": of the figure that it stands beside.
  const own = (percent || (!mention.unit && c.parsed.low[mention.to] !== 'and')) && !ends ? figureJoined(c, index) : undefined;
  if (own) {
    for (const x of cells) if (x.cell !== own) x.cost += alike(c, x.cell, own) ? 0.3 : 0.9;
    if (!cells.some((x) => x.cell === own)) cells.push({ cell: own, cost: 0 });
    cells.sort((a, b) => a.cost - b.cost);
  }
  const first = firstMeant(c, index, cells);
  const words = baseWords(c, index);
  // "goes from 74.6 in the one to 68.2, so it clocks 45 megahertz higher": the second is spoken of.
  const [departs, arrives] = c.now.pair && c.now.pair !== c.before.pair && !words.any ? c.now.pair.map((k) => c.grid.byKey.get(k)) : [];
  if (departs && arrives) {
    const turns = sameCellExcept(c.grid, departs, arrives).filter((i) => !c.hits.hits.some((h) => h.slot === i && h.segment === index));
    // Where its setting was not named but arrived at, that is as good as named.
    for (const x of cells) if (turns.length && turns.every((i) => x.cell.at[i] === arrives.at[i])) {
      const before = moved(c.grid, x.cell, new Map(turns.map((i) => [i, departs.at[i]!] as const)));
      x.cost = Math.min(x.cost, cells.find((y) => y.cell === before)?.cost ?? x.cost);
    }
    for (const x of cells) if (turns.some((i) => x.cell.at[i] === departs.at[i])) x.cost += 0.9;
    cells.sort((a, b) => a.cost - b.cost);
  }
  const mover = movedBy(c, index);
  const extreme = againstExtreme(c, index, cells);
  if (extreme.length) return extreme;
  const out: Candidate[] = [];
  const way = cue.way;
  const signAs = (cell: Cell): -1 | 0 | 1 => signOf(c, paceWay(cue.because, cell.unit) ?? way, cell);
  const corrected = correctedSpan(c.parsed.low) !== undefined;
  // "gives up 4 percent of its cold resistance": the state named is what it is a share of.
  const phase = c.grid.of.phase[0]!;
  const state = percent && c.parsed.low[mention.to] === 'of' ? c.hits.hits.find((h) => h.slot === phase && h.from > mention.to && h.from <= mention.to + 3) : undefined;
  if (state && !cue.base) {
    for (const { cell, cost } of cells) {
      if (cell.at[phase] !== state.value || cell.fixed || cost > 1.2) continue;
      for (const v of c.grid.values[phase]!.keys()) {
        const then = v === state.value ? undefined : movedTo(c.grid, cell, phase, v);
        if (then && !then.fixed) push(out, c, { kind: 'percent_change', args: [then.key, cell.key] }, 'percent_change', cost, then, 'against the state named', { sign: signAs(then), firm: true, base: cell });
      }
    }
    if (out.length) return out;
  }
  const told = percent ? undefined : endsTold(c, index);
  if (told) {
    spread(c, index, out, percent);
    return [told, ...out.filter((x) => x.why !== twoLast).map((x) => ({ ...x, cost: x.cost + 0.5 }))];
  }
  const itself = medianBefore(c, index, words, way);
  if (itself.length) return itself;
  for (const { cell, cost } of cells) {
    if (out.length > 150) break;
    if (cell.constant && c.grid.roles.get(cell.at[c.grid.of.phase[0]!]!) === 'offset') continue;
    if (cue.overRoom && !percent) {
      const over = overRoomTerm(c, cell);
      if (over) push(out, c, over, 'rise', cost, cell, 'over the room', { sign: 0 });
      continue;
    }
    const median = c.now.said.find((t) => t.kind === 'median');
    if (!words.any && median && firstCell(c.grid, median)?.at[c.grid.of.measure[0]!] === cell.at[c.grid.of.measure[0]!]) push(out, c, { kind: percent ? 'percent_change' : 'difference', args: [cell.key, median] }, 'difference', cost + 0.4, cell, 'against the median said last', { sign: signAs(cell) });
    // "the median comes down by 4.1": from what it is elsewhere.
    if (cue.median && !words.median && c.parsed.low.slice(said.segment.from, mention.from).includes('median')) {
      const set = siblings(c.grid, cell, c.grid.of.setup);
      const own: Term = { kind: 'median', args: set.map((x) => x.key) };
      if (set.length > 2) for (const b of basesFor(c, cell, index, words, way)) {
        const other = c.grid.of.setup.every((i) => b.cell.at[i] === cell.at[i]) ? substitute(c.grid, own, new Map(sameCellExcept(c.grid, cell, b.cell).map((i) => [i, b.cell.at[i]!]))) : undefined;
        if (other) push(out, c, { kind: percent ? 'percent_change' : 'difference', args: [own, other] }, 'difference', cost + b.cost, cell, 'of the medians', { sign: signAs(cell), firm: b.firm });
      }
      continue;
    }
    if (words.median || (words.pronoun && c.now.said.some((t) => t.kind === 'median'))) {
      // "The median of all six is 41, and the one beats it by 3": that median.
      const spoken = words.median ? undefined : c.now.said.find((t) => t.kind === 'median');
      const set = spoken ? [] : medianSet(c, cell, words);
      if (spoken && firstCell(c.grid, spoken)?.at[c.grid.of.measure[0]!] === cell.at[c.grid.of.measure[0]!]) push(out, c, { kind: percent ? 'percent_change' : 'difference', args: [cell.key, spoken] }, 'difference', cost, cell, 'against the median', { sign: signAs(cell), firm: c.now.said[0] === spoken });
      if (set.length > 2) push(out, c, { kind: percent ? 'percent_change' : 'difference', args: [cell.key, { kind: 'median', args: set.map((x) => x.key) }] }, 'difference', cost, cell, 'against the median', { sign: signAs(cell), firm: words.median || c.now.said[0]?.kind === 'median' });
      if (words.median) continue;
    }
    for (const b of basesFor(c, cell, index, words, way)) {
      const total = cost + b.cost + (mover !== undefined && cell.at[mover] === b.cell.at[mover] ? 1.2 : 0);
      if (total > reachOfCosts) continue;
      if (corrected && cell.unit.dimension === 'temperature') {
        const phase = c.grid.of.phase[0]!;
        const [own, other] = cell.at[phase] === b.cell.at[phase] ? [correctedTerm(c, cell), correctedTerm(c, b.cell)] : [];
        if (own && other && !percent) push(out, c, { kind: 'difference', args: [own, other] }, 'difference', total, cell, `${b.why}, both corrected to the reference room`, { sign: signAs(cell), firm: b.firm, base: b.cell });
        continue;
      }
      const constantBase = b.cell.fixed && !cell.fixed;
      const sign = constantBase && way !== 'up' && way !== 'down' && !/^miss/.test(cue.because) ? 0 : signAs(cell);
      const idle = c.grid.roles.get(b.cell.at[c.grid.of.phase[0]!]!) === 'idle' && b.cell.at.length > 0;
      const differing = sameCellExcept(c.grid, cell, b.cell).map((i) => [i, b.cell.at[i]!] as const);
      push(out, c, { kind: percent ? 'percent_change' : idle ? 'rise' : 'difference', args: [cell.key, b.cell.key] }, percent ? 'percent_change' : idle ? 'rise' : 'difference', total, cell, b.why, { sign, firm: b.firm, base: b.cell, change: differing });
    }
  }
  if (cue.overRoom && !percent && out.length) return out;
  // "… 2,701 megahertz, 44 down": nothing named beside it, so it is about the figure just said.
  if (words.overrides.size === 0 && words.roles.length === 0 && !words.median && !words.leader && !c.hits.paired.has(index) && !c.hits.hits.some((h) => h.segment === index && c.grid.slots[h.slot]!.field !== 'measure') && !cue.another && !first) {
    const values = inOrder(c, index, lastValues(c, index));
    let subject = values[0] && firstCell(c.grid, values[0]);
    if (subject?.fixed) {
      // "1780 where the box says 1800, so twenty short": what was promised is the base.
      const promised = subject;
      subject = undefined;
      for (const t of values.slice(1, 3)) { const x = firstCell(c.grid, t); if (x && !x.fixed) push(out, c, { kind: percent ? 'percent_change' : 'difference', args: [x.key, promised.key] }, percent ? 'percent_change' : 'difference', 0, x, 'against what was set', { sign: signAs(x), base: promised }); }
    }
    if (subject) {
      for (const x of out) if (x.subject !== subject) x.cost += 0.3;
      const other = values[1] && firstCell(c.grid, values[1]);
      if (other && other !== subject && other.at[c.grid.of.measure[0]!] === subject.at[c.grid.of.measure[0]!]) {
        const idle = c.grid.roles.get(other.at[c.grid.of.phase[0]!]!) === 'idle';
        const kind = percent ? 'percent_change' : idle ? 'rise' : 'difference';
        // "Shut in, it idles at 37. Outside it was 33, so it has gone up by 4": the latter is what it was before.
        const was = index === 1 && c.parsed.low.slice(0, c.parsed.said[0]!.mention.from).some((w) => /^(?:was|were|had|used)$/.test(w));
        push(out, c, { kind, args: [subject.key, other.key] }, kind, 0, subject, 'between the two said last', { sign: was ? 0 : signAs(subject), base: other, change: sameCellExcept(c.grid, subject, other).map((i) => [i, other.at[i]!] as const) });
        // "2190 on the one and 1710 on the other, so 28 percent more": the one of which it is true.
        if (subject.at[c.grid.of.phase[0]!] === other.at[c.grid.of.phase[0]!] && (/^(?:more|less|fewer|higher|lower|gone|missing|shed)$/.test(cue.because) || /^(?:sav|gain|los|cost)/.test(cue.because))) push(out, c, { kind, args: [other.key, subject.key] }, kind, 0, other, 'between the two said last', { sign: signAs(other), base: subject, change: sameCellExcept(c.grid, subject, other).map((i) => [i, subject.at[i]!] as const) });
      }
      for (const b of basesFor(c, subject, index, words, way).slice(0, 12)) {
        const differing = sameCellExcept(c.grid, subject, b.cell).map((i) => [i, b.cell.at[i]!] as const);
        push(out, c, { kind: percent ? 'percent_change' : 'difference', args: [subject.key, b.cell.key] }, percent ? 'percent_change' : 'difference', b.cost, subject, b.why, { sign: signAs(subject), base: b.cell, change: differing });
      }
    }
  }
  // "At 39.6 decibels it is 1.1 quieter than the other": it is what the figure beside it was given for.
  const beside = c.done[index - 1];
  if (words.overrides.size > 0 && beside?.subject && beside.term.kind === 'mean' && fit(c.parsed.said[index - 1]!.mention, beside) && !c.hits.hits.some((h) => h.segment === index && h.baseOf !== index && c.grid.slots[h.slot]!.field !== 'measure')) {
    for (const b of basesFor(c, beside.subject, index, words, way)) {
      const differing = sameCellExcept(c.grid, beside.subject, b.cell).map((i) => [i, b.cell.at[i]!] as const);
      push(out, c, { kind: percent ? 'percent_change' : 'difference', args: [beside.subject.key, b.cell.key] }, percent ? 'percent_change' : 'difference', b.cost, beside.subject, b.why, { sign: signAs(beside.subject), firm: b.firm, base: b.cell, change: differing });
    }
  }
  // A change of what was said last: a median, a rise over the room, a share.
  const last = c.now.said[0];
  if (last && last.kind !== 'mean' && cue.op === 'change' && !(last.kind === 'over_room' && words.roles.some((r) => r === 'limit' || r === 'target' || r === 'rated'))) {
    const subject = firstCell(c.grid, last)!;
    for (const change of changesOf(words)) {
      const other = substitute(c.grid, last, change);
      if (other && sized(last)) push(out, c, { kind: percent ? 'percent_change' : 'difference', args: [last, other] }, 'difference', 0.2, subject, 'against the same elsewhere', { sign: sizeSign(way), firm: true });
    }
    if (!changesOf(words).length && sized(last)) {
      const prior = c.now.said.find((t) => t !== last && t.kind === last.kind);
      if (prior) push(out, c, { kind: percent ? 'percent_change' : 'difference', args: [last, prior] }, 'difference', 0.8, subject, 'against the one before');
    }
  }
  spread(c, index, out, percent);
  return out;
}

/** "Slow is at 12, brisk at 15 and flat out at 19, so 7 from one end to the other": of those just told. */
function endsTold(c: Context, index: number): Candidate | undefined {
  if (!cueIsEndToEnd(c.parsed.said[index]!.cue.because)) return undefined;
  const told = lastValues(c, index).flatMap((t) => firstCell(c.grid, t) ?? []);
  const own = told.filter((x) => !x.fixed && alike(c, x, told[0]!)).sort((x, y) => number(c, x) - number(c, y));
  const out: Candidate[] = [];
  if (own.length > 2) push(out, c, { kind: 'difference', args: [own.at(-1)!.key, own[0]!.key] }, 'difference', 0, own.at(-1), 'between the ends just told', { base: own[0]!, firm: true });
  return out[0];
}

/** What the figure right before is of, where the percentage follows it in the same clause with nothing else named between. */
function figureJoined(c: Context, index: number): Cell | undefined {
  const before = c.done[index - 1];
  const { mention } = c.parsed.said[index]!;
  if (!before?.subject || before.term.kind !== 'mean' || before.fact.unit.id === '%' || !fit(c.parsed.said[index - 1]!.mention, before)) return undefined;
  const gap = c.parsed.low.slice(c.parsed.said[index - 1]!.mention.to, mention.from);
  const joint = gap.findIndex((w) => w === ',' || w === 'is');
  const after = mention.from - gap.length + joint;
  if (joint < 0 || joint > 4 || gap.length > 9 || gap.slice(joint + 1).includes(',') || gap.some((w) => /^(?:and|but|while|so|yet|with|for|because|than|where|whereas|though|although|as|at|if)$/.test(w))) return undefined;
  return c.hits.hits.some((h) => h.from >= after && h.from < mention.from && !(h.baseOf === index && ['setup', 'phase'].includes(c.grid.slots[h.slot]!.field))) ? undefined : before.subject;
}

function alike(c: Context, a: Cell, b: Cell): boolean {
  return [...c.grid.of.measure, ...c.grid.of.part].every((i) => a.at[i] === b.at[i]);
}

/** "The stand costs the one 4 minutes": what does it to a thing is what changes for it, and not another thing. */
function movedBy(c: Context, index: number): number | undefined {
  const { segment, mention } = c.parsed.said[index]!;
  const verb = c.parsed.low.findIndex((w, k) => k > segment.from && k < mention.from && /^(?:costs?|saves?|gives?|buys?|brings?|wins?|robs?|spares?|takes?)$/.test(w));
  if (verb < 0) return undefined;
  const by = c.hits.hits.find((h) => h.to === verb && c.grid.slots[h.slot]!.field === 'setting');
  return by && c.hits.hits.some((h) => h.from > verb && h.to <= mention.from && c.grid.slots[h.slot]!.field === 'setup') ? by.slot : undefined;
}

/** "down by 12, to 40", "12 thriftier, at 40", "12 more, to end up at 40". */
const arriving = /^(?:\S+ ){0,2}to$|^(?:\S+ )?, at$|^(?:\S+ )?(?:, )?(?:to|and|before) (?:arrive|arrives|end|ends|end up|ends up|finish|finishes|land|lands|settle|settles|arriving|ending up|settling) (?:at|on)$|^(?:\S+ )?(?:, )?(?:to|and) (?:reach|reaches|get to|gets to|come to|make|hit)$|^(?:\S+ )?, (?:reaching|(?:arriving|ending up|landing|settling|finishing) (?:at|on))$/;

export function endBeside(c: Context, index: number): Cell | undefined {
  const next = c.parsed.said[index + 1];
  const m = c.parsed.said[index]!.mention;
  if (!next || next.mention.type !== 'cardinal' || next.cue.op !== 'value' || !arriving.test(stretch(c.parsed.low, m.to, next.mention.from))) return undefined;
  return readValue(c, index + 1).filter((x) => x.cost <= 1 && x.term.kind === 'mean' && fit(next.mention, x)).sort((a, b) => a.cost - b.cost)[0]?.subject;
}

function sized(t: Term): boolean {
  return t.kind === 'median' || t.kind === 'over_room' || t.kind === 'percent_of';
}

function sizeSign(way: Way | undefined): -1 | 0 | 1 {
  return way === 'up' ? 1 : way === 'down' ? -1 : 0;
}

const twoLast = 'between the two said last';

/** "from top to bottom the spread is 15.4", "the whole field fits into seven kelvin", "10.2 decibels apart": highest less lowest. */
function spread(c: Context, index: number, out: Candidate[], percent: boolean): void {
  const said = c.parsed.said[index]!;
  const { low } = c.parsed;
  const segment = low.slice(Math.max(0, said.segment.from - 6), said.segment.to);
  const field = segment.some((w) => /^(?:field|spread|span|range|bunch|pack|everyone|everything|all|lot)$/.test(w)) || cueIsEndToEnd(said.cue.because) || segment.includes('apart') || segment.includes('between');
  if (!field || percent) return;
  const { cells } = subjectCells(c, index, unitsOf(said, true), { limit: 2 });
  const seen = new Set<string>();
  for (const { cell, cost } of cells) {
    const { setup, setting } = c.grid.of;
    for (const slots of [setup, setting, ...(setting.length > 1 ? setting.map((i) => [i]) : [])]) {
      const set = siblings(c.grid, cell, slots).sort((a, b) => number(c, a) - number(c, b));
      if (set.length < 3) continue;
      const [low0, high] = [set[0]!, set.at(-1)!];
      const id = `${high.key}~${low0.key}`;
      if (seen.has(id)) continue;
      seen.add(id);
      // The subject is the whole field: which member the topic is does not matter.
      push(out, c, { kind: 'difference', args: [high.key, low0.key] }, 'difference', Math.min(cost, 0.5) + (slots === setup ? 0 : 0.6), high, 'from the lowest to the highest', { base: low0 });
    }
  }
  // Two things said last: "that is 10.2 decibels apart", "20.7 degrees between them".
  const [a, b] = lastValues(c, index);
  if (a && b) push(out, c, { kind: 'difference', args: [a, b] }, 'difference', 0, firstCell(c.grid, a), twoLast, { base: firstCell(c.grid, b)! });
}

/** "92 instead of 80, 15 percent better": the first of the two is spoken of, the second is what it is compared with. */
function inOrder(c: Context, index: number, values: Term[]): Term[] {
  const [to, from] = [c.done[index - 2], c.done[index - 1]];
  if (!to || !from || values.length < 2 || !sameTerm(values[0]!, from.term) || !sameTerm(values[1]!, to.term)) return values;
  const { mention } = c.parsed.said[index - 1]!;
  const gap = stretch(c.parsed.low, c.parsed.said[index - 2]!.mention.to, mention.from);
  // "The Cobble needs 44 to the Garth's 51, and it is 7 cheaper"
  const latter = from.subject && c.hits.hits.find((h) => c.grid.of.setup.includes(h.slot) && h.value === from.subject!.at[h.slot] && h.segment === index - 1);
  if (latter && passedOver(c.parsed, index, c.hits.hits, latter)) return [values[1]!, values[0]!, ...values.slice(2)];
  return /\b(?:instead of|rather than|against|versus|vs|up from|down from|compared (?:with|to)|where it (?:was|had been)|after)(?: the| a)?$/.test(gap) ? [values[1]!, values[0]!, ...values.slice(2)] : values;
}

/** Plain values said last that are in the mention's kind of unit. */
export function lastValues(c: Context, index: number): Term[] {
  const units = unitsOf(c.parsed.said[index]!, true);
  return c.now.said.filter((t) => {
    const cell = t.kind === 'mean' ? firstCell(c.grid, t) : undefined;
    return cell && (!units || units.some((u) => u.dimension === cell.unit.dimension));
  });
}

function cueIsEndToEnd(because: string): boolean {
  return because === 'from end to end' || because === 'the whole field';
}

export function number(c: Context, cell: Cell): number {
  const f = c.facts.value(cell.key);
  return 'id' in f ? f.value.toNumber() : 0;
}

export { polarity };
