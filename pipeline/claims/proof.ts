// A script against the facts of a record: every numeric mention with its verdict.
import type { Finding, Source } from '../places/index.js';
import type { Facts } from '../facts/index.js';
import { type Mention, type Sentence, sentences } from '../script/index.js';
import { notBothEnds } from './both-ends.js';
import type { Context } from './context.js';
import { crossed } from './crossed.js';
import { afterMention, afterNames, afterSentence, newSection } from './discourse.js';
import { grid, type Grid } from './grid.js';
import type { SentenceHits } from './evidence.js';
import { hitsOf } from './hits.js';
import { withRows } from './rows-by-figures.js';
import { withRowsTold } from './rows-told.js';
import { rowsAfter } from './told-row.js';
import { toldByFigures } from './told-by-figures.js';
import { Kept, KeptSteps } from './kept.js';
import { lexicon, type Lexicon } from './lexicon.js';
import { parse, type Parsed } from './parse.js';
import { readMention, type Reading } from './read.js';
import { singular } from './counted.js';
import { selfFindings } from './self.js';
import type { SelfSentence } from './self-check.js';
import { begin, sameState, type State } from './state.js';
import { findingsOf } from './findings.js';
import { ownMark } from './own-mark.js';
import { Pinned } from './pinned.js';
import type { Verdict } from './verdict.js';
import { Agreed, restated } from './restated.js';
import { answersSlope } from './slope-asked.js';
import { takenBack, takenBackTo } from './taken-back.js';
import { mostTold, quietVerdict, tellVerdict } from './tell.js';
import { type Looked, unsupported } from './unsupported.js';

export interface ProofOptions {
  /** Told of each sentence as it was read, for --explain. */
  seen?: (seen: Seen) => void;
}

export interface Seen {
  sentence: Sentence;
  parsed: Parsed;
  hits: SentenceHits;
  grid: Grid;
  before: State;
  readings: readonly Reading[];
}

export interface ProofResult {
  mentions: Verdict[];
  findings: Finding[];
}

interface Read { hits: SentenceHits; readings: Reading[]; after: State }
/** What is kept of one text, by its file. */
interface KeptText { parsed: Kept<Parsed>; read: KeptSteps<State, Read>; headings: KeptSteps<State, Read> }
interface Prepared { grid: Grid; lexicon: Lexicon; texts: Map<string, KeptText> }
const prepared = new WeakMap<Facts, Prepared>();

function prepare(facts: Facts): Prepared {
  let p = prepared.get(facts);
  if (!p) {
    const g = grid(facts);
    prepared.set(facts, (p = { grid: g, lexicon: lexicon(facts, g), texts: new Map() }));
  }
  return p;
}

/** Pure in its arguments. What was read before is kept for the same facts, so that after an edit only what depends on it is read again. */
export function proof(script: Source, facts: Facts, options: ProofOptions = {}): ProofResult {
  const { grid: g, lexicon: lex, texts } = prepare(facts);
  const kept = texts.get(script.file) ?? { parsed: new Kept<Parsed>(), read: new KeptSteps<State, Read>(sameState), headings: new KeptSteps<State, Read>(sameState) };
  texts.set(script.file, kept);
  let state = begin(g);
  const mentions: Verdict[] = [];
  const pins = new Pinned(script, facts);
  const spoken: SelfSentence[] = [];
  const agreed = new Agreed();
  const looked: Looked[] = [];
  let section = 0;
  const all = sentences(script.text);
  for (const [k, s] of all.entries()) {
    if (s.kind === 'comment' || s.kind === 'direction') continue;
    const p = kept.parsed.get(s.text, () => parse(s.text, lex));
    if (s.kind === 'heading') {
      section++;
      const under = state;
      const { readings, after } = kept.headings.get(s.text, under, () => readHeading(facts, g, p, under));
      state = after;
      // A heading names and counts, but claims nothing that could be wrong.
      for (const r of readings) mentions.push(tellVerdict(r.verdict === 'agrees' && (r.chosen?.kind === 'count' || r.chosen?.kind === 'constant') ? r : { ...r, verdict: 'not-a-claim', why: 'a heading' }, script, s, p, facts));
      continue;
    }
    const pinned = pins.within(s.start, s.start + s.text.length);
    // "We said 31 kelvin. That was wrong.": what is taken back claims nothing.
    if (!pinned && takenBack(s.text, all[k + 1]?.text ?? '')) {
      for (const q of [...p.quiet, ...p.said.map(({ mention }) => ({ mention, why: 'it is taken back' }))]) mentions.push(quietVerdict(q, script, s));
      continue;
    }
    if (!pinned && answersSlope(all[k - 1]?.text ?? '', s.text)) {
      for (const { mention } of p.said) mentions.push(quietVerdict({ mention, why: 'a slope' }, script, s));
      continue;
    }
    spoken.push({ sentence: s, parsed: p, section });
    const before = state;
    const done = pinned ? readSentence(facts, g, p, before, (m) => pins.read(g, m, s.start)) : kept.read.get(s.text, before, () => readSentence(facts, g, p, before));
    looked.push({ sentence: s, parsed: p, hits: done.hits, before });
    options.seen?.({ sentence: s, parsed: p, hits: done.hits, grid: g, before, readings: done.readings });
    done.readings.forEach((r, i) => mentions.push(tellVerdict(restated(g, agreed, r, done.hits.hits, i), script, s, p, facts)));
    for (const q of p.quiet) {
      const own = pinned ? pins.read(g, q.mention, s.start) : undefined;
      mentions.push(own ? tellVerdict(own, script, s, p, facts) : quietVerdict(q, script, s));
    }
    state = done.after;
  }
  kept.parsed.turn();
  kept.read.turn();
  kept.headings.turn();
  mentions.sort((a, b) => a.place.line - b.place.line || a.place.column - b.place.column);
  const alone = g.cells.length === 0;
  if (alone) for (const m of mentions) if (m.verdict !== 'not-a-claim' || m.mention.unit) Object.assign(m, { verdict: 'untied', why: 'there is no record' });
  const itself = selfFindings(spoken, mentions, script, alone);
  const said = itself.length === 0 ? mentions : mentions.filter((m) => !itself.some((f) => f.place.line === m.place.line && f.place.column <= m.place.column && m.place.endColumn <= f.place.endColumn));
  return { mentions, findings: [...pins.finish(), ...(alone ? [] : [...findingsOf(said, facts), ...unsupported(looked, mentions, script, g, facts)]), ...itself] };
}

/** The section that a heading opens: what it leaves is what it names. */
function readHeading(facts: Facts, g: Grid, p: Parsed, before: State): Read {
  let after = afterNames(g, newSection(g, before), hitsOf(g, { ...p, said: [] }, before), { heading: true, open: true });
  if (after.title.length === 0) after = { ...after, title: p.tokens.filter((t) => t.kind === 'word' && t.low.length > 3).map((t) => singular(t.low)) };
  return { ...readSentence(facts, g, p, after), after };
}

function readSentence(facts: Facts, g: Grid, p: Parsed, before: State, pinned?: (m: Mention) => Reading | undefined): Read {
  const hits = withRowsTold(facts, g, p, withRows(facts, g, p, hitsOf(g, p, before), before), before);
  const c: Context = { facts, grid: g, parsed: p, hits, before, now: before, done: [], told: [] };
  const readings: Reading[] = [];
  const denied = takenBackTo(p.text);
  for (let i = 0; i < p.said.length; i++) {
    const { mention } = p.said[i]!;
    const r: Reading = pinned?.(mention) ?? (mention.end < denied ? { mention, verdict: 'not-a-claim', why: 'it is taken back', ranked: [] } : readMention(c, i));
    readings.push(r);
    c.told.push(r.verdict);
    c.done.push(r.verdict === 'not-a-claim' || r.unsaid ? undefined : r.chosen);
    const mark = ownMark(c, r);
    c.now = afterMention(c, i, r);
    if (mark) c.now = { ...c.now, mark };
  }
  // All readings of all numbers would be kept for as long as the text is.
  const kept = notBothEnds(c, toldByFigures(c, crossed(c, readings))).map((r) => (r.ranked.length > mostTold ? { ...r, ranked: r.ranked.slice(0, mostTold) } : r));
  // A setting that was settled by a number alone carries no further than its sentence, unless that tells of some thing.
  const told = hits.hits.some((h) => h.baseOf < 0 && g.of.setup.includes(h.slot) && !g.holders.has(h.value));
  const now = c.done.some((d) => d?.settled) ? { ...c.now, topics: c.now.topics.map((t, i) => (g.slots[i]!.field === 'setting' && !told ? before.topics[i]! : t)) } : c.now;
  const after = afterSentence(g, p, afterNames(g, now, hits, { heading: false, open: p.said.length === 0 }), hits);
  const rows = rowsAfter(c);
  return { hits, readings: kept, after: rows === before.rows ? after : { ...after, rows } };
}
