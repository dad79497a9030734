// The uncertainty of a fact as a table, and what it allows to be said.
import { differenceUnit, showNumber } from '../quantities/index.js';
import type { Fact } from './fact.js';
import type { Facts } from './facts.js';
import { figure } from './figure.js';
import { type DifferenceOutcome, judge } from './outcome.js';
import { mostRunsTold, runsNeeded } from './runs-needed.js';
import { uncertaintyOf } from './uncertainty.js';

export interface BudgetLine {
  source: string;
  kind: 'A' | 'B';
  /** In the unit of the source. */
  standard: string;
  sensitivity: string;
  /** "2", or "∞" where the standard uncertainty is taken as known. */
  dof: string;
  /** In the unit of the fact: |sensitivity · standard|. */
  contribution: string;
}

export interface BudgetTable {
  lines: BudgetLine[];
  /** Combined standard uncertainty, its effective degrees of freedom, the coverage factor for 95 % and their product. */
  standard: string;
  dof: string;
  coverageFactor: string;
  expanded: string;
  unit: string;
}

/** Largest contribution first; figures with two digits, as an uncertainty is known no better. */
export function budgetTable(facts: Facts, fact: Fact): BudgetTable | undefined {
  const u = uncertaintyOf(facts, fact);
  if (!u) return undefined;
  const lines = [...u.rows].sort((a, b) => b.contribution - a.contribution).map((r): BudgetLine => ({
    source: r.source, kind: r.kind, standard: figure(r.standard, 2), sensitivity: signed(r.sensitivity), dof: degrees(r.dof), contribution: figure(r.contribution, 2),
  }));
  return { lines, standard: figure(u.standard, 2), dof: degrees(u.dof), coverageFactor: figure(u.factor), expanded: figure(u.half95, 2), unit: differenceUnit(fact.unit).symbol };
}

const columns = ['source', 'type', 'standard', 'sensitivity', 'dof', 'contribution'] as const;

export function printBudget(table: BudgetTable): string[] {
  const rows = [[...columns], ...table.lines.map((l) => [l.source, l.kind, l.standard, l.sensitivity, l.dof, l.contribution])];
  const widths = columns.map((_, c) => Math.max(...rows.map((r) => r[c]!.length)));
  const printed = rows.map((r) => r.map((cell, c) => (c < 2 ? cell.padEnd(widths[c]!) : cell.padStart(widths[c]!))).join('  ').trimEnd());
  const unit = table.unit ? ` ${table.unit}` : '';
  return [...printed, `combined ${table.standard}${unit} with ${table.dof} degrees of freedom; times ${table.coverageFactor} is ± ${table.expanded}${unit} at 95 %`];
}

export interface OutcomeTold {
  outcome: DifferenceOutcome;
  says: string;
  /** "1.0 ± 1.4 K at 95 %"; empty where it is not known. */
  interval: string;
  /** How many runs of each would settle it, where so many would; see runs-needed.ts. */
  runs?: number;
}

export function tellOutcome(facts: Facts, fact: Fact): OutcomeTold | undefined {
  const judged = judge(facts, fact);
  if (!judged) return undefined;
  const { outcome, difference, half95, matters } = judged;
  const unit = difference.unit.symbol && ` ${difference.unit.symbol}`;
  if (half95 === undefined) return { outcome, interval: '', says: 'it rests on a single run or on a value of unknown uncertainty, so that nothing can be said' };
  const half = figure(half95, 2);
  const interval = `${showNumber(difference.value, half.split('.')[1]?.length ?? 0)} ± ${half}${unit} at 95 %`;
  const least = matters ? `${figure(matters.toNumber(), 2)}${unit}` : '';
  if (outcome === 'same') return { outcome, interval, says: `${interval}, all of it within the ${least} that matters` };
  if (outcome !== 'undecided') return { outcome, interval, says: `${interval}, which leaves out zero` };
  const needed = runsNeeded(facts, fact);
  const open = `${interval}${least ? `, which is neither clear of zero nor all within the ${least} that matters` : ', which takes in zero'}`;
  return { outcome, interval, says: `${open}; ${tellRuns(needed?.runs)}`, ...(needed?.runs && needed.runs <= mostRunsTold && { runs: needed.runs }) };
}

/** "7 runs of each would probably tell". */
export function tellRuns(runs: number | undefined): string {
  if (runs === undefined) return 'no number of runs would tell, as the instrument is too coarse for it';
  return runs > mostRunsTold ? `it would take more than ${mostRunsTold} runs of each to tell` : `${runs} runs of each would probably tell`;
}

function degrees(dof: number): string {
  return Number.isFinite(dof) && dof < 1e6 ? figure(dof, 2).replace(/\.0+$/, '') : '∞';
}

function signed(x: number): string {
  return x < 0 ? `−${figure(-x, 2)}` : figure(x, 2);
}
