// Passages of narration with their arithmetic, rendered against a record and scored: what is told true must not be flagged, and
// what is altered should be caught. Expressions in braces are worked out from the readings here, without the program's facts:
//   {v KEY} a value   {d KEY KEY} how far two lie apart   {pc FROM TO} a change in percent   {ps PART WHOLE} a share in percent
//   {x A B} a ratio   {med KEY …} a median   {dpt A B C D} points between two shares   {dd A B C D} two differences apart
//   {xd A B C D} a ratio of differences   {mv A B}, {mvv A} millivolts   {ghz A} gigahertz   {min A} minutes   {=words} said outright
// The last word says how: .0 .1 .2 decimals, w in words, wh with halves, w1 with one place in words.
import { readFileSync } from 'node:fs';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Facts, isFact } from '../../pipeline/facts/index.js';
import { Source } from '../../pipeline/places/index.js';
import { wholeInWords } from '../../pipeline/quantities/words.js';
import { bareEpisode, readNames, readReadings } from '../../pipeline/records/index.js';

interface Span { start: number; end: number; literal: boolean }
interface Rendered { text: string; spans: Span[] }
export interface Tally { passages: number; claims: number; covered: number; alarms: string[]; altered: number; caught: number }

const here = (path: string): string => readFileSync(new URL(path, import.meta.url), 'utf8');
const size = (x: number): number => Math.abs(x);

function median(list: readonly number[]): number {
  const s = [...list].sort((a, b) => a - b);
  return s.length % 2 ? s[(s.length - 1) / 2]! : (s[s.length / 2 - 1]! + s[s.length / 2]!) / 2;
}

const operations: Record<string, (v: readonly number[]) => number> = {
  v: ([a]) => a!, d: ([a, b]) => size(a! - b!), pc: ([a, b]) => (size(b! - a!) / a!) * 100, ps: ([a, b]) => (a! / b!) * 100, x: ([a, b]) => a! / b!, med: median,
  dpt: ([a, b, c, d]) => size((100 * a!) / b! - (100 * c!) / d!), dd: ([a, b, c, d]) => size(size(a! - b!) - size(c! - d!)), xd: ([a, b, c, d]) => size(a! - b!) / size(c! - d!),
  mv: ([a, b]) => size(a! - b!) * 1000, mvv: ([a]) => a! * 1000, ghz: ([a]) => a! / 1000, min: ([a]) => a! / 60, sum: (v) => v.reduce((p, q) => p + q, 0),
};

function shown(value: number, how: string | undefined): string {
  const round = (d: number): string => (Math.round(size(value) * 10 ** d + 1e-7) / 10 ** d).toFixed(d);
  const words = (n: number): string => wholeInWords(BigInt(n), true);
  if (how === 'w') return words(Number(round(0)));
  if (how === 'wh') { const halves = Math.round(size(value) * 2); return halves % 2 ? (halves === 1 ? 'half' : `${words((halves - 1) / 2)} and a half`) : words(halves / 2); }
  if (how === 'w1') { const [whole, tenth] = round(1).split('.'); return `${words(Number(whole))} point ${words(Number(tenth))}`; }
  return round(how === undefined ? 1 : Number(how.slice(1))).replace(/^(\d+)(\d{3})(?=\.|$)/, '$1,$2');
}

/** Scores one file of passages against the record beside it. */
export function scorePassages(record: string, file: string): Tally {
  const read = (name: string): Source => new Source(name, here(`${record}/${name}`));
  const facts = new Facts(bareEpisode(readReadings(read('readings.csv')).value!, readNames(read('names.csv')).value!, new Source('readings.csv', '').place(0)));
  const keys = new Map(here(`${record}/words.csv`).trim().split('\n').slice(1).map((l) => l.split(',') as [string, string]));
  const valueOf = (word: string): number => {
    const key = keys.get(word);
    const fact = key === undefined ? undefined : facts.value(key);
    if (fact && isFact(fact)) return fact.value.toNumber();
    if (!/^[\d.]+$/.test(word)) throw new Error(`${record}/${file}: no reading ${word}`);
    return Number(word);
  };
  const render = (passage: string, alter?: { nth: number; to: (v: number) => number }): Rendered => {
    const spans: Span[] = [];
    let text = '';
    let last = 0;
    for (const m of passage.matchAll(/\{([^}]*)\}/g)) {
      text += passage.slice(last, m.index);
      last = m.index + m[0].length;
      const literal = m[1]!.startsWith('=');
      const parts = m[1]!.trim().split(/\s+/);
      const how = /^(?:\.\d|w|wh|w1)$/.test(parts.at(-1)!) ? parts.pop() : undefined;
      const value = literal ? 0 : operations[parts[0]!]!(parts.slice(1).map(valueOf));
      const said = literal ? m[1]!.slice(1) : shown(alter?.nth === spans.length ? alter.to(value) : value, how);
      spans.push({ start: text.length, end: text.length + said.length, literal });
      text += said;
    }
    return { text: text + passage.slice(last), spans };
  };
  const run = (text: string): readonly Verdict[] => proof(new Source('script.md', text), facts).mentions;
  const tally: Tally = { passages: 0, claims: 0, covered: 0, alarms: [], altered: 0, caught: 0 };
  for (const passage of here(`${record}/${file}`).split(/\n\s*\n/).map((p) => p.trim().replace(/\n/g, ' ')).filter(Boolean)) {
    const { text, spans } = render(passage);
    const clean = run(text);
    const flagged = clean.filter((m) => m.verdict === 'disagrees').map((m) => m.text);
    tally.passages++;
    tally.alarms.push(...flagged.map((t) => `${t}: ${text}`));
    for (const [nth, s] of spans.entries()) {
      tally.claims++;
      if (clean.some((m) => m.verdict === 'agrees' && Math.min(m.place.endColumn - 1, s.end) > Math.max(m.place.column - 1, s.start))) tally.covered++;
      // Far enough for any rounding and any hedge.
      if (!s.literal) for (const to of [(v: number): number => v * 1.23 + (v < 4 ? 1 : 0), (v: number): number => (v < 4 ? v + 2 : v * 0.81)]) {
        const wrong = render(passage, { nth, to }).text;
        if (wrong === text) continue;
        tally.altered++;
        if (run(wrong).some((m) => m.verdict === 'disagrees' && !flagged.includes(m.text))) tally.caught++;
      }
    }
  }
  return tally;
}
