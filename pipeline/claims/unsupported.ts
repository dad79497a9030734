// Claims that hold by the means alone: a winner, or more or less of something, where the readings cannot tell.
import type { Finding, Place, Source } from '../places/index.js';
import { type Fact, type Facts, isFact, judge, nameOf, ofNoAccount, quantityName, readId, runsNeeded, splitKey, subjectKey, tellOutcome, tellRuns, tooClose, whyClose } from '../facts/index.js';
import type { Sentence } from '../script/index.js';
import type { SentenceHits } from './evidence.js';
import type { Grid } from './grid.js';
import { belittled, playedDown } from './belittled.js';
import { keptOf } from './kept-of.js';
import type { Parsed } from './parse.js';
import type { State } from './state.js';
import { type Heard, winning, type WordlessClaim, wordlessClaims } from './wordless.js';
import type { Verdict } from './verdict.js';

/** A sentence as it was read. */
export interface Looked {
  sentence: Sentence;
  parsed: Parsed;
  hits: SentenceHits;
  before: State;
}

/** Whoever says that it is close claims no winner. */
const careful = /\btoo close\b|\bwithin (?:the |a |our )?(?:spread|noise|margin|error|scatter|uncertainty)|\b(?:can(?:no|')?t|cannot|could(?:n't| not)) (?:be )?(?:told?|tell|separate|call)|\babout (?:the same|level|equal)|\b(?:a tie|tied|dead heat|no real difference|no difference|neck and neck|(?:almost|nearly|much|practically|virtually) (?:alike|the same|equal|identical)|within an? (?:\w+ )?\w+ of (?:each other|one another)|by a hair|photo finish|call it even|in the noise|single runs?|one run each)\b/i;

interface Doubt {
  place: Place;
  said: string;
  fact: Fact;
  /** "the runs overlap", and how many would tell; undefined where it rests on single runs. */
  why?: string;
  /** Nothing is open: there is hardly a difference, or one that is of no account. */
  small?: boolean;
}

/**
 * Warnings; the verdicts stay as they are, since the figures agree. What rests on single runs is told once for the whole text:
 * of how far runs scatter nothing is known there, whichever is compared.
 */
export function unsupported(looked: readonly Looked[], mentions: readonly Verdict[], script: Source, g: Grid, facts: Facts): Finding[] {
  const doubts: Doubt[] = [];
  const turned: Finding[] = [];
  // Sentences and mentions both stand in the order of the script: they are gone through side by side.
  let next = 0;
  for (const [i, { sentence, parsed, hits, before }] of looked.entries()) {
    const [start, end] = [sentence.start, sentence.start + sentence.text.length];
    const own: Verdict[] = [];
    let wrong = false;
    for (; next < mentions.length; next++) {
      const m = mentions[next]!;
      const at = script.offset(m.place.line, m.place.column);
      if (at >= end) break;
      if (at < start) continue;
      if (m.verdict === 'agrees') own.push(m);
      // What is told wrong with its number is told once.
      if (m.verdict === 'disagrees' && compares.has(m.kind)) wrong = true;
    }
    if (isCareful(parsed)) continue;
    const small = belittled(parsed.text, looked[i + 1]?.parsed);
    const told = (d: Doubt): boolean => !d.small || !(small || playedDown(sentence.text.slice(0, script.offset(d.place.line, d.place.column) - start)));
    const said = own.flatMap((m) => doubtOf(facts, m) ?? []).filter(told);
    doubts.push(...said);
    if (wrong || said.length > 0 || own.some((m) => compares.has(m.kind))) continue;
    for (const claim of claimsIn({ g, parsed, hits, before, facts })) {
      const place = script.place(start + claim.start, start + claim.end);
      if (claim.opposite) turned.push(otherWay(facts, claim, place, script.text.slice(start + claim.start, start + claim.end)));
      else if (weighable(facts, claim.difference)) doubts.push(...[{ place, said: script.text.slice(start + claim.start, start + claim.end), fact: claim.difference, ...reasonOf(facts, claim.difference) }].filter(told));
    }
  }
  const single = doubts.filter((d) => d.why === undefined);
  return [...doubts.flatMap((d) => (d.why === undefined ? [] : [warning(facts, d)])), ...(single.length ? [onSingleRuns(single)] : []), ...turned];
}

const isCareful = keptOf((p) => careful.test(p.text));

const none: readonly WordlessClaim[] = [];
const heard = new WeakMap<SentenceHits, readonly WordlessClaim[]>();

/** What the sentence claims without a number, kept for as long as its reading is. */
function claimsIn(h: Heard): readonly WordlessClaim[] {
  if (!h.parsed.low.includes('than') && !winning.in(h.parsed.low)) return none;
  let claims = heard.get(h.hits);
  if (!claims) {
    const found = wordlessClaims(h);
    heard.set(h.hits, (claims = found.length > 0 ? found : none));
  }
  return claims;
}

/** A ratio is said of sizes ("three quarters of it") more than of winners. */
const compares: ReadonlySet<string> = new Set(['difference', 'percent_change', 'points', 'rank']);

function doubtOf(facts: Facts, m: Verdict): Doubt | undefined {
  const fact = m.facts[0] === undefined ? undefined : facts.get(m.facts[0]);
  if (!isFact(fact) || !compares.has(fact.kind)) return undefined;
  if (fact.kind === 'rank') return ofWinner(facts, m, fact);
  const judged = judge(facts, fact);
  if (!judged || (judged.outcome !== 'undecided' && !ofNoAccount(judged)) || judged.difference.value.sign() === 0 || !weighable(facts, judged.difference)) return undefined;
  return { place: m.place, said: m.text, fact, ...reasonOf(facts, judged.difference) };
}

/**
 * Of known scatter, or of runs that were not repeated. How far something stays from a limit, a target or a rating is no question of
 * scatter alone, what was noted without a run may be any of these, and through a median scatter is not followed.
 */
function weighable(facts: Facts, difference: Fact): boolean {
  if (!difference.keys.every((k) => facts.readings(k).some((r) => !r.constant))) return false;
  return judge(facts, difference)?.half95 !== undefined || difference.keys.some((k) => facts.readings(k).length === 1);
}

function reasonOf(facts: Facts, difference: Fact): Pick<Doubt, 'why' | 'small'> {
  const judged = judge(facts, difference);
  if (judged?.half95 === undefined) return {};
  if (ofNoAccount(judged)) return { why: tellOutcome(facts, difference)!.says, small: true };
  return { why: `${tellOutcome(facts, difference)!.interval}; ${tellRuns(runsNeeded(facts, difference)?.runs)}` };
}

/** The first of a ranking against the second. */
function ofWinner(facts: Facts, m: Verdict, fact: Fact): Doubt | undefined {
  if (fact.shown !== '1') return undefined;
  const operands = readId(fact.id)?.operands ?? [];
  const all = operands.map((o) => facts.value(subjectKey(o) ?? '')).filter(isFact);
  const [own, ...others] = all;
  if (!own || others.length === 0 || all.length < operands.length) return undefined;
  const nearest = others.reduce((a, b) => (b.value.minus(own.value).abs().compare(a.value.minus(own.value).abs()) < 0 ? b : a));
  const close = tooClose(facts, own, nearest);
  const difference = facts.derive('difference', [own.subject, nearest.subject]);
  if (!close || close === 'level' || !isFact(difference) || !weighable(facts, difference)) return undefined;
  const { why, small } = reasonOf(facts, difference);
  return { place: m.place, said: m.text, fact: difference, ...(why && { why: small ? why : `${whyClose[close].best}: ${why}` }), ...(small && { small }) };
}

function warning(facts: Facts, { place, said, fact, why, small }: Doubt): Finding {
  const [a, b] = namesOf(facts, fact);
  const what = uncapital(whatOf(facts, fact));
  return {
    code: 'claim-unsupported', severity: 'warning', place, said, subject: fact.id, derivation: `${fact.formula} = ${fact.shown}`,
    message: small ? `Says ${said}, and what ${a} and ${b} differ by on ${what} is too small to matter: ${why}.` : `Says ${said}, and the readings do not tell ${a} from ${b} on ${what}: ${why}.`,
    related: fact.readings.slice(0, 6).map((r) => ({ place: r.place, label: r.run ? `run ${r.run}` : '' })),
  };
}

function onSingleRuns(all: readonly Doubt[]): Finding {
  const [first, ...more] = all;
  const others = more.length === 0 ? '' : more.length === 1 ? ', as does another comparison in this text' : `, as do ${more.length} other comparisons in this text`;
  return {
    code: 'claim-unsupported', severity: 'warning', place: first!.place, said: first!.said, subject: first!.fact.id,
    message: `Says ${first!.said}, which rests on single runs${others}: how far runs scatter is not known, so that nothing can be said to be more or less. Run each at least three times, or say that it was run once.`,
    related: more.slice(0, 6).map((d) => ({ place: d.place, label: d.said })),
  };
}

function otherWay(facts: Facts, claim: WordlessClaim, place: Place, said: string): Finding {
  const [a, b] = namesOf(facts, claim.difference);
  return {
    code: 'claim-unsupported', severity: 'warning', place, said, subject: claim.difference.id, derivation: `${claim.difference.formula} = ${claim.difference.shown}`,
    message: `Says ${said}, and the readings say the other way round of ${a} and ${b}: ${tellOutcome(facts, claim.difference)!.interval}.`,
  };
}

/** The two sides by what tells them apart. */
function namesOf(facts: Facts, fact: Fact): [string, string] {
  const [a, b] = (readId(fact.id)?.operands ?? []).map((o) => splitKey(subjectKey(o) ?? ''));
  if (!a || !b) return ['the one', 'the other'];
  const fields = (['setup', 'setting', 'workload', 'part', 'phase'] as const).filter((f) => a[f] !== b[f]);
  const name = (at: typeof a): string => fields.map((f) => nameOf(facts.about, f, at[f])).filter(Boolean).join(', ') || 'the one';
  return [name(a), name(b)];
}

/** "core temperature". */
function whatOf(facts: Facts, fact: Fact): string {
  const at = splitKey(fact.subject);
  return at ? quantityName(facts.about, at.measure, at.part) : 'that';
}

function uncapital(text: string): string {
  return /^\p{Lu}\p{Ll}/u.test(text) ? text[0]!.toLowerCase() + text.slice(1) : text;
}
