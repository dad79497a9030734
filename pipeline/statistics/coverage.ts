// How far an interval has to reach to hold the truth as often as it says (JCGM 100:2008, G.4 and G.6).
import { type Budget, type BudgetRow, coverageFactor } from './budget.js';
import { dofOfFactor, effectiveDof } from './student.js';

export interface Coverage {
  /** What the combined standard uncertainty is multiplied with: t of `dof`. */
  factor: number;
  /** Degrees of freedom it is taken for: those of Welch and Satterthwaite, unless held. */
  dof: number;
  /** Degrees of freedom by the formula of Welch and Satterthwaite, not made whole (G.4.1 leaves that open). */
  welch: number;
  /** Whether `dof` is less than `welch`, because the sources that scatter leave as much open by themselves. */
  held: boolean;
}

/**
 * t of the effective degrees of freedom, but never less than leaves the interval as wide as the sources of few degrees of
 * freedom make it alone: to doubt something further cannot make a result surer. Welch and Satterthwaite put the scatter
 * found in place of the true one; where few runs happen to lie close, another source seems to outweigh them, and their own t
 * is lost. Of 95 % that leaves 92 for three runs and 87 for two, where an instrument adds a third of the scatter
 * (test/statistics/coverage.test.ts has the grid: held, they are 94 or more).
 */
export function covering(budget: Budget, level = 0.95): Coverage {
  const welch = budget.dof;
  const factor = coverageFactor(budget, level);
  const least = fromFew(budget.rows, level) / budget.standard;
  if (!(least > factor * (1 + 1e-9))) return { factor, dof: welch, welch, held: false };
  return { factor: least, dof: dofOfFactor(least, level, welch), welch, held: true };
}

/** Expanded uncertainty of what is estimated from a number of values alone; nothing where that is all there is, or none. */
function fromFew(rows: readonly BudgetRow[], level: number): number {
  const parts = rows.filter((r) => r.dof !== Infinity && r.contribution > 0).map((r) => ({ u2: r.contribution ** 2, dof: r.dof }));
  if (parts.length === 0) return 0;
  return coverageFactor({ dof: effectiveDof(parts) }, level) * Math.sqrt(parts.reduce((sum, p) => sum + p.u2, 0));
}
