// How well the runs fix a fact.
import { convert, differenceUnit, Exact } from '../quantities/index.js';
import { effectiveDof, tFactor } from '../statistics/index.js';
import type { Fact } from './fact.js';
import type { Facts } from './facts.js';

export interface Uncertainty {
  /** Standard uncertainty in the fact's unit. */
  standard: number;
  /** Effective degrees of freedom (Welch–Satterthwaite); Infinity where nothing scatters. */
  dof: number;
  /** Half-width of the 95 % interval: t · standard. */
  half95: number;
}

interface Share {
  u2: number;
  dof: number;
}

/**
 * From the scatter of the runs (s/√n, JCGM 100:2008, 4.2.3) and the resolution (0.29 of the last place shown, F.2.2.1),
 * with JCGM 100 5.1 for what is derived; readings are taken as independent. It knows nothing of the instrument's
 * accuracy. Undefined for ranks, counts, medians and ranges, and where anything was run just once or is quoted.
 */
export function uncertaintyOf(facts: Facts, fact: Fact): Uncertainty | undefined {
  const share = shareOf(facts, fact);
  if (!share || share.u2 === 0) return undefined;
  const standard = Math.sqrt(share.u2);
  return { standard, dof: share.dof, half95: tFactor(0.95, share.dof) * standard };
}

function shareOf(facts: Facts, fact: Fact): Share | undefined {
  if (fact.kind === 'constant') return fact.keys.some((k) => facts.isQuoted(k)) ? undefined : { u2: 0, dof: Infinity };
  const parts = facts.operands(fact);
  if (fact.kind === 'mean' && parts.length === 0) return ofRuns(fact);
  const shares = parts.map((p) => shareOf(facts, p));
  if (shares.some((s) => s === undefined)) return undefined;
  const weights = weightsOf(fact, parts);
  if (!weights) return undefined;
  const weighted = (shares as Share[]).map((s, i) => ({ u2: s.u2 * weights[i]! ** 2, dof: s.dof }));
  return { u2: weighted.reduce((sum, s) => sum + s.u2, 0), dof: effectiveDof(weighted) };
}

function ofRuns(fact: Fact): Share | undefined {
  const { spread } = fact;
  if (spread?.sd === undefined) return undefined;
  const scatter = { u2: spread.sd ** 2 / spread.runs, dof: spread.runs - 1 };
  const resolution = { u2: 10 ** (-2 * fact.decimals) / 12, dof: Infinity };
  return { u2: scatter.u2 + resolution.u2, dof: effectiveDof([scatter, resolution]) };
}

/** By how much the fact moves for a step of one in each of its operands, each in its own unit; undefined where that is not told. */
function weightsOf(fact: Fact, parts: readonly Fact[]): number[] | undefined {
  const [a, b] = parts;
  switch (fact.kind) {
    case 'mean': return parts.map((p) => (convert(Exact.of(1), differenceUnit(p.unit), differenceUnit(fact.unit))?.toNumber() ?? 0) / parts.length);
    case 'rise': case 'difference': case 'over_room': case 'points': {
      const scale = b && convert(Exact.of(1), differenceUnit(b.unit), fact.unit)?.toNumber();
      return scale === undefined ? undefined : [1, -scale];
    }
    case 'percent_change': case 'percent_of': case 'ratio': case 'per_watt': case 'per_price': {
      const [x, y] = [a!.value.toNumber(), b!.value.toNumber()];
      const quotient = fact.kind === 'percent_change' ? fact.value.toNumber() + 100 * Math.sign(y) : fact.value.toNumber();
      return x === 0 || y === 0 ? undefined : [quotient / x, -quotient / y];
    }
    default: return undefined;
  }
}
