// Proofs generated texts, true and altered, and counts by template and by slip.
import { proof, type Verdict } from '../../../pipeline/claims/index.js';
import { Source } from '../../../pipeline/places/index.js';
import type { Facts } from '../../../pipeline/facts/index.js';
import type { Piece, Slip } from './say.js';

export interface Written {
  text: string;
  /** What is stated, with its place in the text. */
  said: { start: number; end: number; text: string; slips: Slip[]; turn: boolean }[];
}

/** A template's pieces put together; `slip` names one that is told wrong. */
export function write(pieces: readonly Piece[], slip?: { index: number; kind: Slip }): Written {
  let text = '';
  let index = 0;
  const said: Written['said'] = [];
  for (const p of pieces) {
    let words = typeof p === 'string' ? p : slip?.index === index ? p.wrong[slip.kind]! : p.text;
    if (text === '' || /(?:[.?!]\s|\n)$/.test(text)) words = words.slice(0, 1).toUpperCase() + words.slice(1);
    words = words.replace(/([.?!]\s+)([a-z])/g, (_, a: string, b: string) => a + b.toUpperCase());
    if (typeof p !== 'string') {
      const slips = Object.keys(p.wrong) as Slip[];
      said.push({ start: text.length, end: text.length + words.length, text: words, slips, turn: slips[0] === 'other way' });
      index++;
    }
    text += words;
  }
  return { text, said };
}

export interface Tally {
  texts: number; said: number; agrees: number; alarms: string[]; silent: string[];
  slips: Partial<Record<Slip, { made: number; caught: number; missed: string[] }>>;
}
export const tally = (): Tally => ({ texts: 0, said: 0, agrees: 0, alarms: [], silent: [], slips: {} });

const offset = (text: string, v: Verdict): { start: number; end: number } => {
  const lines = text.split('\n');
  const before = lines.slice(0, v.place.line - 1).reduce((n, l) => n + l.length + 1, 0);
  return { start: before + v.place.column - 1, end: before + v.place.endColumn - 1 };
};
const tell = (v: Verdict): string => `"${v.text}" ${v.verdict}${v.recorded ? `, recorded ${v.recorded}` : ''} (${v.facts[0] ?? v.why})`;

/** Adds one text of a template to its tally: as it is, and with every slip, one at a time. */
export function measure(facts: Facts, pieces: readonly Piece[], into: Tally): void {
  const true_ = write(pieces);
  into.texts++;
  const read = (text: string): Verdict[] => proof(new Source('script.md', text), facts).mentions;
  const found = read(true_.text);
  for (const v of found) if (v.verdict === 'disagrees') into.alarms.push(`${true_.text} -> ${tell(v)}`);
  true_.said.forEach((x, index) => {
    if (!x.turn) {
      into.said++;
      const there = found.filter((v) => { const o = offset(true_.text, v); return o.start < x.end && x.start < o.end; });
      if (there.some((v) => v.verdict === 'agrees')) into.agrees++;
      else into.silent.push(`${true_.text} -> ${there.map(tell).join('; ') || `"${x.text}" not seen`}`);
    }
    for (const kind of x.slips) {
      const altered = write(pieces, { index, kind });
      const row = (into.slips[kind] ??= { made: 0, caught: 0, missed: [] });
      row.made++;
      const verdicts = read(altered.text);
      if (verdicts.some((v) => v.verdict === 'disagrees')) row.caught++;
      else row.missed.push(`${altered.text} [${x.text}] -> ${verdicts.map(tell).join('; ')}`);
    }
  });
}
