// Every number of a true trial script that the proof finds right is told wrong, one at a time: does the proof see it?
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Source } from '../../pipeline/places/index.js';
import { Exact, inWords } from '../../pipeline/quantities/index.js';
import { factsOf } from './score-in-process.js';

export const mutations = ['up one', 'down one', 'digits swapped', 'unit', 'way'] as const;
export type Mutation = (typeof mutations)[number];

export interface Change {
  kind: Mutation;
  line: number;
  /** Columns from 1, the end exclusive. */
  column: number;
  endColumn: number;
  text: string;
}
export interface Outcome { change: Change; caught: boolean; was: string; now: string }

/** What is said, in the same form: words stay words. Undefined where the form has no such wording (fractions, "twice"). */
function resay(v: Verdict, value: Exact): string | undefined {
  const m = v.mention;
  if (m.type !== 'cardinal' || m.step || m.decimals < 0 || value.sign() < 0) return undefined;
  const plain = value.toFixed(m.decimals);
  if (m.form === 'digits') {
    const found = /\d[\d,]*(?:\.\d+)?/.exec(v.text);
    if (!found || Exact.parse(found[0].replace(/,/g, ''))?.equals(m.value) !== true) return undefined;
    const number = found[0].includes(',') ? plain.replace(/\B(?=(\d{3})+(?=\.|$))/g, ',') : plain;
    return v.text.replace(found[0], () => number);
  }
  const words = [inWords(m.value.toFixed(m.decimals)), inWords(m.value.toFixed(m.decimals), true)];
  const spaced = (t: string): string => t.replace(/-/g, ' ');
  const said = v.text.toLowerCase();
  const k = words.findIndex((w) => spaced(said).startsWith(spaced(w)));
  if (k < 0) return undefined;
  const other = inWords(plain, k === 1);
  return (said.startsWith(words[k]!) ? other : spaced(other)) + v.text.slice(words[k]!.length);
}

function swapped(value: Exact, decimals: number): Exact | undefined {
  const text = value.toFixed(decimals);
  for (let i = 0; i + 1 < text.length; i++) {
    const j = text[i + 1] === '.' ? i + 2 : i + 1;
    if (text[j] !== undefined && text[i] !== text[j] && text[i] !== '.' && !(i === 0 && text[j] === '0')) return Exact.parse(text.slice(0, i) + text[j] + text.slice(i + 1, j) + text[i] + text.slice(j + 1));
  }
  return undefined;
}

const units: [RegExp, string][] = [
  [/(?<![\p{L}])kilowatts?\b/iu, 'watts'], [/\bwatts?\b(?![- ]?hours?)/i, 'kilowatts'], [/ ?\bW\b/, ' kW'], [/\bmillivolts?\b/i, 'volts'], [/\bvolts?\b/i, 'millivolts'], [/(?<=\d ?)mV\b/, 'V'], [/(?<=\d ?)V\b/, 'mV'],
  [/\bmegahertz\b/i, 'gigahertz'], [/\bgigahertz\b/i, 'megahertz'], [/(?<=\d ?)MHz\b/, 'GHz'], [/(?<=\d ?)GHz\b/, 'MHz'], [/\bkilograms?\b/i, 'grams'], [/(?<!kilo|milli)\bgrams?\b/i, 'kilograms'], [/\bmilliseconds\b/i, 'seconds'],
  [/\bdegrees Fahrenheit\b/i, 'degrees Celsius'], [/\bkelvin\b/i, 'degrees Fahrenheit'], [/\bpercentage points?\b/i, 'percent'], [/\bpercent\b/i, 'percentage points'], [/ ?%/, ' percentage points'],
];

/** Words that say which way, each with its opposite. */
const ways: [string, string][] = [
  ['warmer', 'cooler'], ['hotter', 'cooler'], ['higher', 'lower'], ['louder', 'quieter'], ['faster', 'slower'], ['heavier', 'lighter'], ['longer', 'shorter'], ['above', 'below'], ['over', 'under'], ['more', 'less'], ['more', 'fewer'], ['rises', 'falls'], ['rose', 'fell'],
  ['climbs', 'drops'], ['climbed', 'dropped'], ['goes up', 'goes down'], ['went up', 'went down'], ['gains', 'loses'], ['gained', 'lost'], ['ahead of', 'behind'], ['up', 'down'], ['a rise', 'a fall'], ['an increase', 'a decrease'], ['raises', 'lowers'],
];
const turned = new Map<string, string>([...ways.map(([a, b]): [string, string] => [b, a]), ...ways]);
/** Characters from the number within which such a word goes with it. */
const near = 24;
const relative = new Set(['difference', 'rise', 'percent_change', 'points']);

/** All changes to a script that its true reading allows, one number each. Hedged numbers keep their last place, which may be within the hedge. */
export function changes(lines: readonly string[], mentions: readonly Verdict[]): Change[] {
  const out: Change[] = [];
  mentions.forEach((v, i) => {
    if (v.verdict !== 'agrees') return;
    const { line, column, endColumn } = v.place;
    const m = v.mention;
    const put = (kind: Mutation, text: string | undefined): void => { if (text !== undefined && text.toLowerCase() !== v.text.toLowerCase()) out.push({ kind, line, column, endColumn, text }); };
    if (m.type === 'cardinal' && v.kind !== 'rank' && !m.hedge) {
      const step = Exact.of(1, 10 ** Math.max(0, m.decimals));
      put('up one', resay(v, m.value.plus(step)));
      if (m.value.compare(step) > 0) put('down one', resay(v, m.value.minus(step)));
      const other = swapped(m.value, Math.max(0, m.decimals));
      put('digits swapped', other && resay(v, other));
    }
    if (m.type === 'cardinal' && !m.sharedUnit && !m.hedge) {
      const unit = units.find(([sign]) => sign.test(v.text));
      put('unit', unit && v.text.replace(unit[0], unit[1]));
    }
    if (!relative.has(v.kind)) return;
    // The nearest word that says which way, between the mentions before and behind.
    const text = lines[line - 1]!;
    const beside = (x: Verdict | undefined): x is Verdict => x?.place.line === line;
    const before = mentions[i - 1];
    const next = mentions[i + 1];
    const from = Math.max(beside(before) ? before.place.endColumn - 1 : 0, text.lastIndexOf('. ', column - 1) + 1);
    const to = Math.min(beside(next) ? next.place.column - 1 : text.length, text.indexOf('. ', endColumn - 1) < 0 ? text.length : text.indexOf('. ', endColumn - 1));
    const found = [...turned.keys()].flatMap((w) => [...text.slice(from, to).matchAll(new RegExp(`\\b${w}\\b`, 'gi'))].map((x) => ({ w, at: from + x.index })))
      .filter((x) => (x.at >= endColumn - 1 && x.at < endColumn + near) || (x.at + x.w.length < column && x.at + x.w.length > column - near))
      .sort((a, b) => (Math.abs(a.at - column) - Math.abs(b.at - column)) || b.w.length - a.w.length)[0];
    if (found) out.push({ kind: 'way', line, column: found.at + 1, endColumn: found.at + 1 + found.w.length, text: turned.get(found.w)! });
  });
  return out;
}

/** `every` takes only each so-manieth change. A change is caught where the changed line says something wrong that it did not say before. */
export function mutate(folder: string, every = 1): Outcome[] {
  const facts = factsOf(folder);
  const lines = readFileSync(join(folder, 'script.md'), 'utf8').split('\n');
  const read = (text: readonly string[]): Verdict[] => proof(new Source('script.md', text.join('\n')), facts).mentions;
  const clean = read(lines);
  return changes(lines, clean).filter((_, i) => i % every === 0).map((change) => {
    const edited = [...lines];
    const old = edited[change.line - 1]!;
    edited[change.line - 1] = old.slice(0, change.column - 1) + change.text + old.slice(change.endColumn - 1);
    const there = read(edited).filter((m) => m.place.line === change.line);
    const wrong = (list: readonly Verdict[]): number => list.filter((m) => m.place.line === change.line && m.verdict === 'disagrees').length;
    const reach = change.kind === 'way' ? 40 : 0;
    const now = there.filter((m) => m.place.column < change.column + change.text.length + reach && change.column - reach < m.place.endColumn).map((m) => `"${m.text}" ${m.verdict} ${m.facts[0] ?? m.why}`);
    return { change, caught: wrong(there) > wrong(clean), was: old, now: now.join('; ') };
  });
}
