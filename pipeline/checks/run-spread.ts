// How far runs may lie apart before they disagree, in the unit of their differences.
import type { Fact } from '../facts/index.js';
import { convert, differenceUnit, Exact, show } from '../quantities/index.js';
import type { Reading } from '../records/index.js';
import type { Context } from './check.js';
import { instrumentFor, stepIn } from './finer-than-instrument.js';

export interface Allowed {
  by: Exact;
  /** "3 % of the mean", "twice the 1 K that matters". */
  rule: string;
}

/** The smaller of the house's rule and twice what matters, but never less than two steps of the instrument. */
export function allowedSpread(readings: readonly Reading[], mean: Fact, { episode, limits }: Context): Allowed {
  const unit = differenceUnit(mean.unit);
  const tell = (x: Exact): string => show(x, unit, x.round(mean.decimals).equals(x) ? mean.decimals : mean.decimals + 2);
  let allowed = house(mean, limits);
  const matters = episode.measures.get(mean.subject.split('/')[3]!)?.matters;
  const own = matters && convert(matters.value, matters.unit, unit);
  if (own && own.sign() > 0 && own.times(Exact.of(2)).compare(allowed.by) < 0) allowed = { by: own.times(Exact.of(2)), rule: `twice the ${tell(own)} that matters` };
  const instrument = instrumentFor(episode.instruments, readings[0]!);
  const step = (instrument && stepIn(instrument, readings[0]!)) ?? writtenStep(readings);
  const steps = step.times(limits.exact('runs-disagree-steps'));
  return steps.compare(allowed.by) > 0 ? { by: steps, rule: `${limits.written('runs-disagree-steps')} steps of ${tell(step)}` } : allowed;
}

function house(mean: Fact, limits: Context['limits']): Allowed {
  if (mean.unit.dimension === 'temperature' || mean.unit.dimension === 'temperature-difference') {
    const kelvin = limits.exact('runs-disagree-temperature');
    const fahrenheit = mean.unit.id.endsWith('degF');
    return { by: fahrenheit ? kelvin.times(Exact.of(9, 5)) : kelvin, rule: limits.written('runs-disagree-temperature') };
  }
  if (mean.unit.dimension === 'sound-level') return { by: limits.exact('runs-disagree-level'), rule: limits.written('runs-disagree-level') };
  return { by: mean.value.abs().times(limits.share('runs-disagree')), rule: `${limits.written('runs-disagree')} of the mean` };
}

/** The last decimal written; averages from a log have no step of their own. */
function writtenStep(readings: readonly Reading[]): Exact {
  if (readings.some((r) => r.log)) return Exact.zero;
  return Exact.of(1).over(Exact.of(10n ** BigInt(Math.max(...readings.map((r) => r.quantity.decimals)))));
}

export function rangeOf(readings: readonly Reading[]): { low: Exact; high: Exact; width: Exact } {
  const sorted = readings.map((r) => r.quantity.value).sort((a, b) => a.compare(b));
  return { low: sorted[0]!, high: sorted.at(-1)!, width: sorted.at(-1)!.minus(sorted[0]!) };
}
