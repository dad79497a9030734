// Scores the proofreader on a trial folder without starting a process for each script; counts as score.mjs does.
import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { proof, type Verdict } from '../../pipeline/claims/index.js';
import { Facts } from '../../pipeline/facts/index.js';
import { Source } from '../../pipeline/places/index.js';
import { bareEpisode, readNames, readReadings } from '../../pipeline/records/index.js';

export interface Score {
  folder: string;
  mistakes: number; caught: number; falseAlarms: number; claims: number; covered: number; tied: number; distractors: number; quiet: number;
  /** Of the mistakes caught, those in a number, a unit, a place or a direction (not in a name), and how many the words suggested undo. */
  undoable: number; undone: number;
  missed: string[]; alarms: string[]; uncovered: string[]; loose: string[];
}

interface Span { start: number; end: number }
const overlap = (a: Span, b: Span): number => Math.min(a.end, b.end) - Math.max(a.start, b.start);
const refs = (list: readonly string[]): string => [...new Set(list.map((r) => r.trim()).filter(Boolean))].sort().join(' | ');

function rows(file: string): Record<string, string>[] {
  return parse(readFileSync(file, 'utf8'), { columns: true, relax_column_count: true }) as Record<string, string>[];
}

export function factsOf(folder: string): Facts {
  const read = (name: string): Source => new Source(name, readFileSync(join(folder, name), 'utf8'));
  const readings = readReadings(read('readings.csv')).value ?? [];
  const names = readNames(read('names.csv')).value ?? [];
  return new Facts(bareEpisode(readings, names, new Source('readings.csv', '').place(0)));
}

/** Whether the words suggested make the line what it was; points are percentage points, and a word for the other way may have a like one. */
function undoes(m: Verdict, edited: string, was: string): boolean {
  const plain = (line: string): string => line.replace(/percentage points?/g, 'points').replace(/\bhotter\b/g, 'warmer').replace(/\bquicker\b/g, 'faster');
  const put = m.suggest !== undefined ? { place: m.place, text: m.suggest } : m.turn && { place: m.turn.place, text: m.turn.suggest };
  return put !== undefined && plain(edited.slice(0, put.place.column - 1) + put.text + edited.slice(put.place.endColumn - 1)) === plain(was);
}

export function score(folder: string): Score {
  const facts = factsOf(folder);
  const lines = readFileSync(join(folder, 'script.md'), 'utf8').split('\n');
  const run = (text: readonly string[]): (Verdict & Span)[] => proof(new Source('script.md', text.join('\n')), facts).mentions.map((m) => ({ ...m, start: m.place.column, end: m.place.endColumn }));
  const claims = rows(join(folder, 'claims.csv'));
  const mistakes = rows(join(folder, 'mistakes.csv'));
  const out: Score = { folder: basename(folder), mistakes: mistakes.length, caught: 0, falseAlarms: 0, claims: 0, covered: 0, tied: 0, distractors: 0, quiet: 0, undoable: 0, undone: 0, missed: [], alarms: [], uncovered: [], loose: [] };
  const clean = run(lines);
  const wrong = clean.filter((m) => m.verdict === 'disagrees');
  const key = (m: Verdict): string => `${m.place.line} ${m.text}`;
  out.falseAlarms = wrong.length;
  out.alarms = wrong.map((m) => `${key(m)} (${m.kind} ${m.recorded}; ${m.facts[0]}; ${m.why})`);
  const cursor = new Map<number, number>();
  for (const c of claims) {
    const line = Number(c.line);
    const at = lines[line - 1]!.indexOf(c.text!, cursor.get(line) ?? 0);
    if (at < 0) throw new Error(`${folder} ${c.id}: '${c.text}' is not on line ${line}`);
    cursor.set(line, at + c.text!.length);
    const span = { start: at + 1, end: at + 1 + c.text!.length };
    const m = clean.filter((x) => x.place.line === line && overlap(x, span) > 0).sort((a, b) => overlap(b, span) - overlap(a, span) || (a.end - a.start) - (b.end - b.start))[0];
    if (c.kind === 'distractor') {
      out.distractors++;
      if (m?.verdict !== 'agrees' && m?.verdict !== 'disagrees') out.quiet++;
      else out.uncovered.push(`${line} ${c.text} (no claim, but ${m.verdict}: ${m.facts[0]})`);
      continue;
    }
    out.claims++;
    if (m?.verdict !== 'agrees') { out.uncovered.push(`${line} ${c.text} (${c.kind}, ${m ? m.verdict : 'not seen'}) ${m?.why ?? ''}`); continue; }
    out.covered++;
    if (refs(m.from) === refs(c.refs!.split('|'))) out.tied++;
    else out.loose.push(`${line} ${c.text} (${c.kind}) rests on ${refs(c.refs!.split('|'))}; said: ${m.facts[0]}`);
  }
  const before = new Set(wrong.map(key));
  for (const x of mistakes) {
    const n = Number(x.line);
    const edited = [...lines];
    const from = edited[n - 1]!.indexOf(x.find!);
    edited[n - 1] = edited[n - 1]!.replace(x.find!, () => x.replace!);
    const reach = { start: from + 1 - 60, end: from + 1 + x.replace!.length + 60 };
    const hits = run(edited).filter((m) => m.verdict === 'disagrees' && m.place.line === n && !before.has(key(m)) && overlap(m, reach) > 0);
    if (hits.length > 0) {
      out.caught++;
      if (x.kind !== 'swapped' && x.kind !== 'wrong_subject') out.undoable++;
      if (x.kind !== 'swapped' && x.kind !== 'wrong_subject' && hits.some((m) => undoes(m, edited[n - 1]!, lines[n - 1]!))) out.undone++;
    } else {
      const span = { start: from + 1, end: from + 1 + x.replace!.length };
      const there = run(edited).filter((m) => m.place.line === n && overlap(m, span) > 0).map((m) => `${m.text}: ${m.verdict} ${m.facts[0] ?? ''} ${m.why}`);
      out.missed.push(`${x.id} ${x.kind} line ${n}: '${x.find}' -> '${x.replace}' [${there.join(' ; ')}]`);
    }
  }
  return out;
}
