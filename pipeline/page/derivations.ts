// How each figure was made: what it is, where, how it was computed, and where its readings stand.
import { budgetTable, expandedShown, type Fact, factName, type Facts, isFact, judge, splitKey } from '../facts/index.js';
import { nameInRecord } from '../places/index.js';
import { held } from './held.js';
import { whereShown } from './places-of.js';

export interface DerivationRow {
  id: string;
  name: string;
  where: string;
  shown: string;
  formula: string;
  /** "± 0.96 K at 95 %", and of a difference what may be said of it; empty where it is not known. */
  sure: string;
  /** What viewers get who subtract the rounded figures. */
  sofa: string;
  /** "readings.csv:12–14". */
  stands: string;
}

/** Every fact handed in and every id that names one, each once, in that order. */
export function derivations(facts: Facts, given: readonly Fact[], ids: readonly string[]): DerivationRow[] {
  const all = new Map<string, Fact>();
  for (const f of [...given, ...ids.map((id) => facts.get(id))]) if (isFact(f)) all.set(f.id, f);
  return [...all.values()].map((f) => {
    const parts = splitKey(f.subject);
    return { id: f.id, name: factName(facts.about, f), where: parts ? whereShown(facts, parts) : '', shown: held(f.shown), formula: f.formula, sure: sureness(facts, f), sofa: f.sofa ?? '', stands: standsIn(f) };
  });
}

function sureness(facts: Facts, fact: Fact): string {
  const budget = budgetTable(facts, fact);
  const interval = budget ? expandedShown(budget) : '';
  const judged = judge(facts, fact);
  const small = judged?.small && judged.outcome !== 'undecided' && judged.outcome !== 'same';
  return [interval, judged ? outcomeWords[judged.outcome] : '', small ? 'by less than matters' : ''].filter(Boolean).join(', ');
}

const outcomeWords = { higher: 'higher', lower: 'lower', same: 'about the same', undecided: 'cannot be told' } as const;

function standsIn(fact: Fact): string {
  const files = new Map<string, number[]>();
  for (const { place } of fact.readings) {
    const name = nameInRecord(place.file);
    files.set(name, [...(files.get(name) ?? []), place.line]);
  }
  return [...files].map(([file, lines]) => `${file}:${spans(lines)}`).join(', ');
}

/** "12–14, 20". */
function spans(lines: readonly number[]): string {
  const sorted = [...new Set(lines)].sort((a, b) => a - b);
  const runs: [number, number][] = [];
  for (const line of sorted) {
    const last = runs.at(-1);
    if (last && line === last[1] + 1) last[1] = line;
    else runs.push([line, line]);
  }
  return runs.map(([a, b]) => (a === b ? `${a}` : `${a}–${b}`)).join(', ');
}
