// One sentence read with the record's names: its mentions, the names around each, and what the words say each one is. Pure.
import { comparatives, findMentions, findNumbers, type Mention, type Token, tokens, unitAt, lowOf, stretch } from '../script/index.js';
import { type Unit, unit } from '../quantities/index.js';
import { coverOf } from './cover.js';
import { type Cue, cueOf } from './cues.js';
import { reach, type Segment, segments } from './clauses.js';
import { levelNames } from './axis-levels.js';
import { findNames, isVerb, type Lexicon, type Meaning, meaningsOf, type Name } from './lexicon.js';
import { endOfOrder, endsOfField, isEndOfField } from './end-to-end.js';
import { elide, mostChanged } from './elide.js';
import { gapped } from './gapped.js';
import { gigs } from './gigs.js';
import { headless } from './headless.js';
import { isLedTo } from './led-names.js';
import { numberLists } from './lists.js';
import { overRoomSaid } from './over-room-said.js';
import { oppositeEnd } from './opposite-end.js';
import { atoms } from './name-keys.js';
import { toldByOwn } from './own-names.js';
import { saidShort } from './said-short.js';
import { sharedHeads } from './shared-head.js';
import { takenBackByNext } from './amiss.js';
import { misheard } from './misheard.js';
import { withoutAlone } from './without-alone.js';
import { thanBefore } from './than-before.js';
import { shortRates } from './short-rates.js';

export interface Said {
  mention: Mention;
  segment: Segment;
  cue: Cue;
  /** The name that the mention itself is ("205 watts" for a load step). */
  named?: Name;
}

export interface Parsed {
  text: string;
  tokens: readonly Token[];
  low: readonly string[];
  names: readonly Name[];
  said: readonly Said[];
  /** Mentions that are parts of names, idioms, labels: no claims. */
  quiet: readonly { mention: Mention; why: string }[];
  /** What was worked out of it, each in a place of its own: `keptOf`. */
  kept: unknown[];
}

export function parse(text: string, lex: Lexicon): Parsed {
  const t = tokens(text);
  const low = lowOf(t);
  const numbers = findNumbers(t);
  const all = findMentions(t, numbers);
  const found = misheard(t, toldByOwn(findNames(lex, atoms(t, numbers)), low, lex), lex);
  const names = found.filter((n) => (!isVerb(t, n) || n.meanings.every((m) => !m.own)) && !otherUnit(lex, n, all, low) && !endsOfField(low, n, found) && !overRoomSaid(low, n, found, all, lex) && !(n.meanings.every((m) => m.led) && !isLedTo(low, n.from)) && !(n.to - n.from === 1 && (low[n.from] === 'ratio' || low[n.from] === 'factor') && /^(?:of|is|between)$/.test(low[n.to] ?? '')) && !all.some((m) => (m.composed || m.type === 'multiplier') && m.from <= n.from && n.to <= m.to));
  const alone = [...headless(t, names, lex), ...levelNames(lex.levels, low, names), ...sharedHeads(t, names, lex), ...withoutAlone(t, names, lex)];
  if (alone.length) names.splice(0, names.length, ...[...names, ...alone].sort((a, b) => a.from - b.from));
  shortRates(all, names, low, lex);
  gigs(all, low, lex);
  const score = all.some((m) => m.unit?.id === 'points') ? [...lex.unitOf.entries()].find(([, u]) => u.dimension === 'score') : undefined;
  if (score) for (const m of all) if (m.unit?.id === 'points' && !low.slice(m.from, m.to).includes('percentage') && (Math.abs(m.value.toNumber()) > 100 || names.some((n) => n.meanings.some((x) => x.own && x.slots.some((s) => s.slot === lex.measureSlot && s.value === score[0]))))) Object.assign(m, { unit: score[1] });
  // "140 points per watt", where a score for each watt is on record
  for (const m of all) if (m.unit?.parts?.[0].id === 'points') for (const u of lex.unitOf.values()) if (u.parts?.[0].dimension === 'score' && u.parts[1].id === m.unit.parts[1].id) { Object.assign(m, { unit: u }); break; }
  const quiet: { mention: Mention; why: string }[] = [];
  const live: { mention: Mention; named?: Name }[] = [];
  const announced = announcedUnit(t, low);
  if (announced && /^(?:[:,]|it's|that's|it|that|this)$/.test(low[announced.to] ?? '')) for (const m of all) if (!m.unit && m.type === 'cardinal') Object.assign(m, { unit: announced.unit, loose: announced.loose, sharedUnit: true });
  const aside = percentAside(low);
  if (aside > 0) for (const m of all) if (m.from >= aside && !m.unit && m.type === 'cardinal') Object.assign(m, { unit: unit('%'), loose: false, sharedUnit: true });
  const amiss = takenBackByNext(low, all);
  for (const m of all) {
    if (amiss.has(m)) { quiet.push({ mention: m, why: 'it is taken back' }); continue; }
    // "14.2 watts per metre-kelvin", "0.41 frames per watt": what the record calls the measure is its unit.
    // But "8 decibels louder", where that measure is called so, tells a change of it.
    const called = names.find((n) => n.from > m.from && !comparatives.has(low[n.from]!) && n.from < m.to + 1 && n.to > m.to && n.from >= m.to - 3 && n.meanings.some((x) => x.own && x.slots.some((s) => s.slot === lex.measureSlot && lex.unitOf.has(s.value))));
    if (called && m.type === 'cardinal' && m.unit && !m.sharedUnit) {
      const of = called.meanings.flatMap((x) => x.slots).find((s) => s.slot === lex.measureSlot && lex.unitOf.has(s.value))!;
      Object.assign(m, { unit: lex.unitOf.get(of.value)!, loose: false, adjectival: false, to: called.to, end: t[called.to - 1]!.end });
    }
    const name = names.find((n) => n.from <= m.from && m.from < n.to && n.meanings.some((x) => x.slots.length > 0));
    if (name && m.type !== 'superlative' && m.type !== 'ordinal') {
      // "the 240 is louder": no thing is measured by what it is called, and no stretch of its own ends with it.
      if (name.meanings.every((x) => x.own && x.fields.length > 0 && x.fields.every((f) => f === 'setup')) && low[name.from - 1] === 'the') quiet.push({ mention: m, why: 'part of a name' });
      else if (m.to >= name.to && m.type === 'cardinal' && !m.idle && (name.from === m.from || name.meanings.some((x) => x.slots.some((s) => lex.setTo.has(`${s.slot}=${s.value}`)))) && low.slice(name.from, m.from).every((w) => /^(?:at|on|with|the|in|of)$/.test(w))) live.push({ mention: m, named: name });
      else quiet.push({ mention: m, why: 'part of a name' });
      continue;
    }
    if (name && (m.type === 'superlative' || m.type === 'ordinal')) { quiet.push({ mention: m, why: 'part of a name' }); continue; }
    const place = m.type === 'ordinal' && /^(?:the|a)$/.test(low[m.from - 1] ?? '') ? lex.places.get(m.value.sign() < 0 ? 'last' : low[m.from]!) : undefined;
    if (place && m.to - m.from === 1 && (!t[m.to] || t[m.to]!.kind === 'mark' || /^(?:is|was|has|does|did|draws|saves|takes|gets|costs|and|one|at|already|still|only)$/.test(low[m.to]!))) {
      (names as Name[]).push({ from: m.from, to: m.to, meanings: [place] });
      quiet.push({ mention: m, why: 'a name' });
      continue;
    }
    const like = m.superlative && low[m.from - 1] === 'the' ? sharedNoun(names, low, m, lex) ?? oppositeEnd(names, low, m, lex) : m.superlative ? oppositeEnd(names, low, m, lex) : undefined;
    if (like) { (names as Name[]).push({ from: m.from, to: m.to, meanings: [like] }); quiet.push({ mention: m, why: 'a name' }); continue; }
    if (m.type === 'ordinal' && isEndOfField(low, m)) { quiet.push({ mention: m, why: 'an end of the field' }); continue; }
    if (m.type === 'superlative' && endOfOrder(low, m, all, names)) { quiet.push({ mention: m, why: 'an order' }); continue; }
    if (m.idle) { quiet.push({ mention: m, why: m.idle }); continue; }
    const short = saidShort(low, m, all, names, lex);
    if (short) {
      const name = { from: m.from, to: m.to, meanings: short };
      (names as Name[]).push(name);
      // What it is set to is on record: said as plainly as by its whole name.
      if (short.some((x) => x.slots.some((s) => lex.setTo.has(`${s.slot}=${s.value}`)))) live.push({ mention: m, named: name });
      else quiet.push({ mention: m, why: 'a name' });
      continue;
    }
    live.push({ mention: m });
  }
  for (const w of t) if (w.kind === 'time') quiet.push({ mention: { ...all[0], from: 0, to: 0, start: w.start, end: w.end } as Mention, why: 'a time mark' });
  if (live.length === 0) return { text, tokens: t, low, names, said: [], quiet, kept: [] };
  // "out of every hundred watts it keeps 80": a percentage.
  const hundred = low.findIndex((w, k) => (w === 'every' || w === 'each') && /^(?:hundred|100)$/.test(low[k + 1] ?? '') && low[k - 1] === 'of');
  if (hundred >= 0) {
    const at = live.findIndex((l) => l.mention.from === hundred + 1);
    if (at >= 0) quiet.push({ mention: live.splice(at, 1)[0]!.mention, why: 'a hundred of which so many are told' });
    const next = live.find((l) => l.mention.from > hundred)?.mention;
    if (next?.type === 'cardinal' && !next.unit) Object.assign(next, { unit: unit('%'), sharedUnit: true });
  }
  const measures = [...lex.unitOf.values()];
  // "from 58 percent to 41": the unit of the one end is that of the other.
  for (const [k, { mention: b }] of live.entries()) {
    const a = live[k - 1]?.mention;
    if (!a?.unit || b.unit || a.adjectival || b.type !== 'cardinal' || a.type !== 'cardinal' || low[b.from - 1] !== 'to' || b.from - a.to > 4 || !low.slice(Math.max(0, a.from - 3), a.from).includes('from') || !measures.some((u) => u.dimension === a.unit!.dimension)) continue;
    if (low.slice(a.to, b.from).some((w) => w === ',' || w === 'and')) continue;
    Object.assign(b, { unit: a.unit, loose: a.loose, sharedUnit: true });
  }
  gapped(low, live.filter((l) => !l.named).map((l) => l.mention), names);
  // "10, 30 and 65 watts": each is the name of a load, with the unit said once.
  for (const [k, l] of live.entries()) {
    const next = live[k + 1];
    if (l.named || !l.mention.sharedUnit || !next) continue;
    const last = live.slice(k + 1).find((x) => !x.mention.sharedUnit);
    if (!last?.named) continue;
    const unitWords = atoms(t.slice(last.mention.from, last.mention.to), findNumbers(t.slice(last.mention.from, last.mention.to))).slice(1).map((a) => a.key);
    const meanings = meaningsOf(lex, [`#${l.mention.value.toString()}`, ...unitWords]);
    // "from sixty to ninety percent": where it starts is named as well as where it ends.
    if (meanings) l.named = low[l.mention.to] === 'to' ? nameAt(names, l.mention, meanings) : { from: l.mention.from, to: l.mention.to, meanings };
  }
  // "set to 20, 40 and 80 percent of its travel": as the last one is, so are those before it.
  for (const l of live.filter((x) => !x.named && x.mention.sharedUnit)) {
    const last = all.find((m) => m.from > l.mention.from && !m.sharedUnit);
    const name = last && names.find((n) => n.from === last.from && n.to > last.from + 1 && n.meanings.some((x) => x.own));
    const rest = name && meaningsOf(lex, [`#${l.mention.value.toString()}`, ...atoms(t.slice(last!.from, name.to), findNumbers(t.slice(last!.from, name.to))).slice(1).map((a) => a.key)]);
    if (rest?.some((x) => x.own && x.fields[0] === name!.meanings.find((y) => y.own)!.fields[0])) l.named = nameAt(names, l.mention, rest);
  }
  const cuts = segments(t, live.map((l) => l.mention), names);
  const cover = coverOf(names, t.length);
  const said = live.map((l, i): Said => ({ mention: l.mention, named: l.named, segment: cuts[i]!, cue: cueOf(t, low, l.mention, cuts[i]!, reach(t, l.mention, live[i + 1]?.mention), names, cover) }));
  const parsed = { text, tokens: t, low, names, said, quiet, kept: [] };
  // "As a percentage that is 8 for the one and 9 for the other": the changes said before.
  if (announced?.unit.id === '%' || aside > 0) for (const { mention, cue } of said) if (mention.from >= aside && cue.op === 'value' && mention.unit?.id === '%' && low[mention.to] !== 'of') Object.assign(cue, { op: 'change', because: 'as a percentage' });
  // "As a factor: the one 5.9, the other 2.4"
  if (/^(?:and|so|but|or|,|expressed|put|taken|in|as|by)$/.test(low[0] ?? '') && /^(?:(?:and|so|but|or|,) )?(?:expressed |put |taken )?(?:in|as|by) (?:a |the )?(?:factors?|ratios?|multiples?|multipliers?)(?: terms)?(?: ?[:,]| (?:that's|that|it's|it|this)\b)/.test(stretch(low, 0, 6))) for (const { mention, cue } of said) if (cue.op === 'value' && mention.type === 'cardinal' && !mention.unit) Object.assign(cue, { op: 'ratio', because: 'as a factor', placed: true });
  thanBefore(parsed);
  shareCues(parsed);
  mostChanged(parsed);
  elide(parsed);
  sameMedian(parsed);
  for (let i = 1; i < said.length; i++) {
    const [a, b] = [said[i - 1]!.cue, said[i]!.cue];
    const gap = low.slice(said[i - 1]!.mention.to, said[i]!.mention.from);
    // "The median hum was 31 in spring and 34 in autumn": both are medians.
    if (a.median && b.op === 'value' && gap.length <= 8 && gap.every((w, k) => /^(?:and|or|to|then|,|on|at|in|with|the|degrees|decibels|watts)$/.test(w) || names.some((n) => n.from <= said[i - 1]!.mention.to + k && said[i - 1]!.mention.to + k < n.to && n.meanings.some((x) => x.own && x.fields.every((f) => f === 'setting' || f === 'workload'))))) b.median = true;
    // "3 degrees cooler and 2 decibels quieter than the other": both are compared with it.
    if (a.op === 'change' && !a.base && b.op === 'change' && b.base && b.base.from >= said[i]!.mention.to && gap.length <= 4 && gap.includes('and') && comparatives.has(gap[0]!) && gap.slice(1).every((w) => /^(?:and|also|about|around|nearly|almost|roughly|some|just|over|under|only|a|,)$/.test(w))) a.base = b.base;
    // But "20 percent off the cap, and it's 3 decibels quieter": what is taken from is no rival.
    const taken = a.because === 'off' && said[i - 1]!.mention.unit?.id === '%';
    if ((b.op === 'change' || b.op === 'points') && !taken && !b.base && !b.another && (a.op === 'change' || a.op === 'points') && a.base && a.base.to > a.base.from && gap.some((w) => w === 'and' || w === ',' || w === 'or' || w === 'but' || w === 'for' || w === 'with' || w === 'at') && gap.length <= 14 && a.base.from >= said[i - 1]!.mention.to) b.base = a.base;
  }
  return parsed;
}

/** A number that is a name as well, put where it stands among the names. */
function nameAt(names: Name[], m: Mention, meanings: readonly Meaning[]): Name {
  const name = { from: m.from, to: m.to, meanings };
  if (!names.some((n) => n.from < name.to && n.to > name.from)) {
    const at = names.findIndex((n) => n.from > name.from);
    names.splice(at < 0 ? names.length : at, 0, name);
  }
  return name;
}

/** "18 gone for the one and 11 for the other, or, in percent, 24 and 17": where such figures start. */
function percentAside(low: readonly string[]): number {
  for (let k = low.indexOf('in', 2); k > 0; k = low.indexOf('in', k + 1)) {
    if (!/^(?:percent|percentages?|%)$/.test(low[k + 1] ?? '') || !/(?:^|[ ,])(?:or|so|that's|which is|which makes)(?: ,)?$/.test(stretch(low, Math.max(0, k - 3), k))) continue;
    return low[k + 2] === 'terms' ? k + 3 : k + 2;
  }
  return -1;
}

/** "In watts it's 12 and 15", "As a percentage, that is 8 for the one and 9 for the other": the unit of the figures that follow. */
function announcedUnit(t: readonly Token[], low: readonly string[]): { unit: Unit; loose: boolean; to: number } | undefined {
  if (!/^(?:and|so|but|or|,|expressed|put|given|taken|seen|said|told|written|counted|in|as|into)$/.test(low[0] ?? '')) return undefined;
  const head = /^(?:(?:and|so|but|or|,) )?(?:(?:expressed|put|given|taken|seen|said|told|written|counted) )?(?:in|as|into) (?:a )?(?:percentages?|per cent|percent)(?: terms| points)?/.exec(stretch(low, 0, 7));
  if (head && !head[0].endsWith('points')) return { unit: unit('%'), loose: false, to: head[0].split(' ').length };
  return /^(?:in|as)$/.test(low[0] ?? '') ? unitAt(t, 1, false) : undefined;
}

/** "from the slowest pace to the fastest", "at the slowest pace it draws 5 watts, and at the fastest it is 9": the noun of the one is that of the other. */
function sharedNoun(names: readonly Name[], low: readonly string[], m: Mention, lex: Lexicon): Meaning | undefined {
  const place = lex.places.get(low[m.from]!);
  const lead = low[m.from - 2] ?? '';
  const far = /^(?:at|on|in|with|under|for)$/.test(lead) && /^(?:it|it's|that|that's|this|they|there|the|we|you|is|was|,|\.|and|a)?$/.test(low[m.to] ?? '');
  if (!place || (lead !== 'to' && !far)) return undefined;
  return names.some((n) => n.to <= m.from && (far ? /^(?:at|on|in|with|under|for)$/.test(low[n.from - 1] === 'the' ? low[n.from - 2] ?? '' : low[n.from - 1] ?? '') && n.to - n.from === 2 : m.from - n.to <= 3) && n.meanings.some((x) => x.own && x.fields[0] === place.fields[0])) ? place : undefined;
}

/** "20 percent more" where a setting is called "20": a bare number names nothing where it has a unit that nothing is set to. */
function otherUnit(lex: Lexicon, n: Name, all: readonly Mention[], low: readonly string[]): boolean {
  const m = all.find((x) => x.from === n.from && x.unit && x.to > n.to);
  // "is 31 grams, or 20 percent less", where a setting is called "20 percent"
  if (low[n.from - 1] === 'or' && /^(?:more|less|fewer)$/.test(low[n.to] ?? '') && all.some((x) => x.from === n.from && x.to === n.to && x.unit?.id === '%')) return true;
  if (!m || (m.unit!.id !== '%' && m.unit!.id !== 'points')) return false;
  return n.meanings.some((x) => x.slots.length > 0) && !n.meanings.some((x) => x.slots.some((s) => lex.setIn.get(`${s.slot}=${s.value}`)?.has(m.unit!.dimension)));
}

/** "The median is 31 for the one and 28 for the other": both are medians. */
function sameMedian(p: Parsed): void {
  for (let i = 1; i < p.said.length; i++) {
    const [a, b] = [p.said[i - 1]!, p.said[i]!];
    const lead = p.low[b.mention.to] ?? '';
    if (!a.cue.median || b.cue.op !== 'value' || !/^(?:for|with|on|in)$/.test(lead) || p.low[a.mention.to] !== lead || !/^(?:and|but|,)$/.test(p.low[b.mention.from - 1] ?? '') || b.mention.from - a.mention.to > 6) continue;
    b.cue.median = true;
  }
}

/** "works at 41.2, or 2.7 cooler than …", "arrives on 385, or 9 percent less": with a comma after it, what a preposition leads to is where it stands. */
function standing(low: readonly string[], m: Mention, again: Mention): boolean {
  return low[m.to] === ',' && low[again.to] !== ',' && /^(?:at|to|on|with|in)$/.test(low[m.from - 1] ?? '');
}

/** "trailing by 9.6, 11.1 and 14.8", "71 and 85 degrees warmer": what is said once holds for the whole list. */
function shareCues(p: Parsed): void {
  for (let i = 1; i < p.said.length; i++) {
    const [a, b] = [p.said[i - 1]!, p.said[i]!];
    const gap = p.low.slice(a.mention.to, b.mention.from).filter((w) => w !== ',' && !/^(?:about|around|roughly|nearly|almost|just|over|under)$/.test(w));
    if (gap.length === 1 && gap[0] === 'or' && !standing(p.low, a.mention, b.mention) && a.cue.op === 'value' && b.cue.op === 'change' && b.mention.unit && a.mention.unit?.id !== b.mention.unit.id) Object.assign(a.cue, { op: 'change', way: b.cue.way, of: b.cue.of, base: b.cue.base, because: b.cue.because });
  }
  for (const list of numberLists(p)) {
    if (p.low.slice(p.said[list[0]!]!.mention.to, p.said[list.at(-1)!]!.mention.from).includes('to')) continue;
    // "at 35.6, or 3.4 cooler than …": the second says the first another way.
    if (list.length === 2 && /^, or/.test(p.low.slice(p.said[list[0]!]!.mention.to, p.said[list[1]!]!.mention.from).slice(0, 2).join(' ')) && /^(?:at|is|to|was|it's|that's|now|hits?|reads?|reaches|reached|makes|made|gives|gave|shows|showed|gets|got|measures|measured|averages|averaged|needs|needed|takes|took|draws|drew|of|on|with)$/.test(p.low[p.said[list[0]!]!.mention.from - 1] ?? '')) continue;
    // "62.0, just 57 percent of the desktop's": a value, and what share of another it is.
    if (list.length === 2 && p.low[p.said[list[0]!]!.mention.to] === ',' && p.said[list[1]!]!.cue.op === 'share' && !/^(?:and|or)$/.test(p.low[p.said[list[0]!]!.mention.to + 1] ?? '')) continue;
    // "42 decibels and 30 watts, or 6 watts less than the other": a figure, and how far it lies from another.
    const [last, other] = [p.said[list.at(-1)!]!, p.said[list.at(-2)!]!];
    if (last.cue.op === 'change' && last.mention.unit && last.mention.unit === other.mention.unit && other.cue.op === 'value' && /^, or\b/.test(stretch(p.low, other.mention.to, last.mention.from))) continue;
    const cues = list.map((i) => p.said[i]!.cue);
    // "over the room that is 48, 43 and 39 degrees"
    if (cues[0]!.overRoom) for (const cue of cues) cue.overRoom = true;
    // "lets it burn 164, or 97 percent": the figure, and what share that is.
    if (list.length === 2 && cues[0]!.op === 'value' && cues[1]!.op !== 'change' && p.said[list[1]!]!.mention.unit?.id === '%' && /^, (?:or|so|that's|which)$/.test(stretch(p.low, p.said[list[0]!]!.mention.to, p.said[list[0]!]!.mention.to + 2))) continue;
    const source = cues.at(-1)!.op === 'share' && cues[0]!.op !== 'share' && (cues[0]!.op === 'value' || cues[0]!.way === 'apart') ? cues.at(-1)! : cues[0]!.op === 'change' ? cues[0]! : cues.at(-1)!.op === 'change' && cues.at(-1)!.because && p.low.slice(p.said[list.at(-2)!]!.mention.to, p.said[list.at(-1)!]!.mention.from).some((w) => w === 'and' || w === 'or') ? cues.at(-1)! : cues.at(-1)!.op === 'share' ? cues.at(-1)! : undefined;
    if (!source) continue;
    // "Next to the plain one that's 8 and 5 degrees cooler": what opens it is what both are compared with.
    if (!source.base && cues[0]!.base && cues[0]!.base.to <= p.said[list[0]!]!.mention.from) source.base = cues[0]!.base;
    for (const cue of cues) {
      if (cue === source || (cue.op !== 'value' && !(source.op === 'share' && cue.op === 'change'))) continue;
      Object.assign(cue, { op: source.op, way: source.way, of: source.of, base: source.base, because: source.because, overRoom: source.overRoom });
    }
  }
}
