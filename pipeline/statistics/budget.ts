// Uncertainties of several sources put together (JCGM 100:2008, 5.1, 5.2 and G.4).
import { effectiveDof, tFactor } from './student.js';

/** One independent cause of doubt about a result. */
export interface Term {
  source: string;
  /** A: from the scatter of repeated readings; B: from anything else. */
  kind: 'A' | 'B';
  /** Standard uncertainty of the source itself, in its own unit. */
  standard: number;
  /** By how much the result moves for a step of one in the source, with its sign. */
  sensitivity: number;
  /** Degrees of freedom; Infinity where the standard uncertainty is taken as exactly known. */
  dof: number;
  /** Readings taken at the same moments: terms of one group are combined run by run, so that what they share cancels or adds. */
  group?: string;
  /** Each run's deviation from the mean of its source, in an order that the whole group has in common. */
  deviations?: readonly number[];
}

/** A term with what it contributes to the result. */
export interface BudgetRow extends Omit<Term, 'group' | 'deviations'> {
  contribution: number;
}

export interface Budget {
  rows: BudgetRow[];
  /** Combined standard uncertainty. */
  standard: number;
  /** Effective degrees of freedom (Welch–Satterthwaite). */
  dof: number;
}

/**
 * Terms are independent of each other, except that those of one group are taken run by run: the result is found from each
 * set of simultaneous readings, and the scatter of these results counts (JCGM 100, 5.2.3 and H.2, second approach). Scatter
 * of n such results has n−1 degrees of freedom.
 */
export function combine(terms: readonly Term[]): Budget {
  const groups = new Map<string, Term[]>();
  for (const [i, t] of terms.entries()) {
    const id = t.group ?? `${i}`;
    groups.set(id, [...(groups.get(id) ?? []), t]);
  }
  const rows = [...groups.values()].map(rowOf);
  const parts = rows.map((r) => ({ u2: r.contribution ** 2, dof: r.dof }));
  return { rows, standard: Math.sqrt(parts.reduce((sum, p) => sum + p.u2, 0)), dof: effectiveDof(parts) };
}

function rowOf(group: readonly Term[]): BudgetRow {
  const first = group[0]!;
  if (group.length === 1) {
    const { group: _g, deviations: _d, ...row } = first;
    return { ...row, contribution: Math.abs(first.sensitivity * first.standard) };
  }
  const n = first.deviations!.length;
  let squares = 0;
  for (let i = 0; i < n; i++) squares += group.reduce((sum, t) => sum + t.sensitivity * t.deviations![i]!, 0) ** 2;
  const found = Math.sqrt(squares / (n * (n - 1)));
  // What cancels wholly leaves the last bits of binary numbers.
  const standard = found < 1e-9 * Math.max(...group.map((t) => Math.abs(t.sensitivity * t.standard))) ? 0 : found;
  return { source: group.map((t) => t.source).join(' with '), kind: 'A', standard, sensitivity: 1, dof: n - 1, contribution: standard };
}

/** What the standard uncertainty is multiplied with to cover `level` of the cases: t for the effective degrees of freedom. */
export function coverageFactor({ dof }: Pick<Budget, 'dof'>, level = 0.95): number {
  return tFactor(level, dof);
}

/** Standard uncertainty of an error that lies anywhere within ±limit (JCGM 100, 4.3.7), or within it for `level` of the cases of a normal one (4.3.4). */
export function standardOfLimit(limit: number, level?: number): number {
  return level === undefined ? limit / Math.sqrt(3) : limit / tFactor(level, Infinity);
}

/** Standard uncertainty of a display that moves in steps: step/√12 (JCGM 100, F.2.2.1). */
export function standardOfStep(step: number): number {
  return step / Math.sqrt(12);
}
