// How the numbers of one line were read: the words, the names, what the words say each number is, and every reading that was weighed.
import type { Source } from '../places/index.js';
import { keyFields, type Facts } from '../facts/index.js';
import { show } from '../quantities/index.js';
import { proof, type Seen } from './proof.js';
import type { Verdict } from './verdict.js';

export interface ReadNumber {
  verdict: Verdict;
  /** What it was read as: "29 °C, said in words, hedged (about)". */
  number: string;
  /** What the words around say it is, and the words that said so. */
  operation: string;
  because: string;
  /** Names in its own stretch of the sentence, then those elsewhere in it. */
  own: string[];
  elsewhere: string[];
  compared: string;
}

export interface ReadSentence {
  text: string;
  /** Carried over from what was said before. */
  topics: string[];
  numbers: ReadNumber[];
}

const shownVerdicts = { value: 'a value', change: 'a change', share: 'a share of something', ratio: 'a ratio', rank: 'a place in a ranking', count: 'a count', range: 'a range', points: 'percentage points' } as const;

export function explainProof(script: Source, facts: Facts, line: number): ReadSentence[] {
  const seen: Seen[] = [];
  const { mentions } = proof(script, facts, {
    seen: (s) => {
      const place = script.place(s.sentence.start, s.sentence.start + s.sentence.text.length);
      if (place.line <= line && line <= place.endLine) seen.push(s);
    },
  });
  return seen.map((s) => sentence(s, script, mentions));
}

function sentence(s: Seen, script: Source, mentions: readonly Verdict[]): ReadSentence {
  const { grid, before, parsed, hits } = s;
  const nameOfSlot = (slot: number, value: string): string => `${value} (${grid.slots[slot]!.field})`;
  const topics = before.topics.flatMap((values, slot) => (values.length ? [nameOfSlot(slot, values[0]!)] : []));
  const place = script.place(s.sentence.start, s.sentence.start + s.sentence.text.length);
  const inside = mentions.filter((m) => (m.place.line > place.line || m.place.column >= place.column) && m.place.line >= place.line && (m.place.line < place.endLine || (m.place.line === place.endLine && m.place.endColumn <= place.endColumn)));
  const words = (from: number, to: number): string => parsed.text.slice(parsed.tokens[from]?.start ?? 0, parsed.tokens[to - 1]?.end ?? 0);
  const numbers = inside.map((verdict): ReadNumber => {
    const m = verdict.mention;
    const index = parsed.said.findIndex((x) => x.mention.start === m.start && x.mention.end === m.end);
    const cue = parsed.said[index]?.cue;
    const named = hits.hits.map((h) => ({ text: `"${words(h.from, h.to)}" is ${nameOfSlot(h.slot, h.value)}`, own: h.segment === index, base: h.baseOf === index }));
    const roles = hits.roles.map((r) => ({ text: `"${words(r.from, r.to)}" leans to ${r.role}`, own: r.segment === index, base: r.baseOf === index }));
    const all = [...named, ...roles];
    return {
      verdict, number: numberOf(verdict),
      operation: cue ? `${shownVerdicts[cue.op]}${cue.way ? `, ${way[cue.way]}` : ''}${cue.overRoom ? ', over room temperature' : ''}${cue.perWatt ? ', per watt' : ''}` : '',
      because: cue?.because ?? '',
      own: distinct(all.filter((x) => x.own && !x.base).map((x) => x.text)),
      elsewhere: distinct(all.filter((x) => !x.own && !x.base).map((x) => x.text)),
      compared: cue?.base ? words(cue.base.from, cue.base.to) : '',
    };
  });
  return { text: parsed.text, topics, numbers };
}

const way = { up: 'upwards', down: 'downwards', better: 'for the better', worse: 'for the worse', lost: 'as a loss', gained: 'as a gain', apart: 'either way' } as const;

function distinct(list: string[]): string[] {
  return [...new Set(list)];
}

function numberOf({ mention: m, verdict }: Verdict): string {
  if (!m.value || verdict === 'not-a-claim' && m.type === undefined) return '';
  const value = m.unit ? show(m.value, m.unit, Math.max(0, m.decimals)) : m.value.toFixed(Math.max(0, m.decimals));
  const how = [
    m.type === 'cardinal' ? '' : m.type === 'superlative' ? '' : m.type, m.form === 'words' ? 'in words' : 'in digits',
    m.sharedUnit ? 'its unit said once for the list' : '', m.loose ? '"degrees" may be any scale' : '',
    m.hedge ? `hedged: ${m.hedge.name} (from ${m.hedge.low} to ${m.hedge.high} of it)` : '',
  ].filter(Boolean).join(', ');
  return m.type === 'superlative' ? `place 1${m.superlative?.way ? `, ${way[m.superlative.way]}` : ''}` : `${value}, ${how}`;
}

/** A key without its empty fields, readable: "bench, stock, scene, temperature of core, load". */
export function keyWords(key: string): string {
  return key.split('/').map((v, i) => (v ? `${keyFields[i]} ${v}` : '')).filter(Boolean).join(', ');
}
