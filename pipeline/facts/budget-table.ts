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
  standard: number;
  sensitivity: number;
  /** Null where the standard uncertainty is taken as known. */
  dof: number | null;
  /** In the unit of the fact: |sensitivity · standard|. */
  contribution: number;
}

/** Plain data, figures with six significant digits. */
export interface BudgetTable {
  lines: BudgetLine[];
  /** Combined standard uncertainty, its effective degrees of freedom, the coverage factor for 95 % and their product. */
  standard: number;
  dof: number | null;
  /** Those of Welch and Satterthwaite, where they were not taken: the interval would be narrower than the scatter alone makes it. */
  welchDof?: number | null;
  coverageFactor: number;
  expanded: number;
  /** As shown. */
  unit: string;
}

/** Largest contribution first. */
export function budgetTable(facts: Facts, fact: Fact): BudgetTable | undefined {
  const u = uncertaintyOf(facts, fact);
  if (!u) return undefined;
  const lines = [...u.rows].sort((a, b) => b.contribution - a.contribution).map((r): BudgetLine => ({
    source: r.source, kind: r.kind, standard: six(r.standard), sensitivity: six(r.sensitivity), dof: degrees(r.dof), contribution: six(r.contribution),
  }));
  return { lines, standard: six(u.standard), dof: degrees(u.dof), ...(u.held && { welchDof: degrees(u.welch) }), coverageFactor: six(u.factor), expanded: six(u.half95), unit: differenceUnit(fact.unit).symbol };
}

const columns = ['source', 'type', 'standard', 'sensitivity', 'dof', 'contribution'] as const;

/** With two digits, as an uncertainty is known no better. */
export function printBudget(table: BudgetTable): string[] {
  const rows = [[...columns], ...table.lines.map((l) => [l.source, l.kind, figure(l.standard, 2), signed(l.sensitivity), shownDof(l.dof), figure(l.contribution, 2)])];
  const widths = columns.map((_, c) => Math.max(...rows.map((r) => r[c]!.length)));
  const printed = rows.map((r) => r.map((cell, c) => (c < 2 ? cell.padEnd(widths[c]!) : cell.padStart(widths[c]!))).join('  ').trimEnd());
  const unit = table.unit && ` ${table.unit}`;
  const held = table.welchDof === undefined ? '' : ` (as wide as the scatter alone makes it; ${shownDof(table.welchDof)} after Welch and Satterthwaite)`;
  return [...printed, `combined ${figure(table.standard, 2)}${unit} with ${shownDof(table.dof)} degrees of freedom${held}; times ${figure(table.coverageFactor)} is ${expandedShown(table)}`];
}

/** "± 0.96 K at 95 %". */
export function expandedShown({ expanded, unit }: BudgetTable): string {
  return `± ${figure(expanded, 2)}${unit && ` ${unit}`} at 95 %`;
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
  const { outcome, difference, half95, matters, small } = judged;
  const unit = difference.unit.symbol && ` ${difference.unit.symbol}`;
  if (half95 === undefined) return { outcome, interval: '', says: 'it rests on a single run or on a value of unknown uncertainty, so that nothing can be said' };
  const half = figure(half95, 2);
  const interval = `${showNumber(difference.value, half.split('.')[1]?.length ?? 0)} ± ${half}${unit} at 95 %`;
  const least = matters ? `${figure(matters.toNumber(), 2)}${unit}` : '';
  if (outcome === 'same') return { outcome, interval, says: `${interval}, all of it within the ${least} that matters` };
  if (outcome !== 'undecided') return { outcome, interval, says: `${interval}, which leaves out zero${small ? ` and is less than the ${least} that matters` : ''}` };
  const needed = runsNeeded(facts, fact);
  const open = `${interval}${least ? `, which is neither clear of zero nor all within the ${least} that matters` : ', which takes in zero'}`;
  return { outcome, interval, says: `${open}; ${tellRuns(needed?.runs)}`, ...(needed?.runs && needed.runs <= mostRunsTold && { runs: needed.runs }) };
}

/** "7 runs of each would probably tell". */
export function tellRuns(runs: number | undefined): string {
  if (runs === undefined) return 'no number of runs would tell, as the instrument is too coarse for it';
  return runs > mostRunsTold ? `it would take more than ${mostRunsTold} runs of each to tell` : `${runs} runs of each would probably tell`;
}

function six(x: number): number {
  return Number(x.toPrecision(6));
}

/** Beyond a million they make no difference. */
function degrees(dof: number): number | null {
  return dof < 1e6 ? six(dof) : null;
}

function shownDof(dof: number | null): string {
  return dof === null ? '∞' : figure(dof, 2).replace(/\.0+$/, '');
}

function signed(x: number): string {
  return x < 0 ? `−${figure(-x, 2)}` : figure(x, 2);
}
