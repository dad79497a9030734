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
export function allowedSpread(readings: readonly Reading[], mean: Fact, context: Context): Allowed {
  const { episode, limits } = context;
  const unit = differenceUnit(mean.unit);
  const tell = (x: Exact): string => show(x, unit, x.round(mean.decimals).equals(x) ? mean.decimals : mean.decimals + 2);
  let allowed = house(mean, limits);
  const matters = episode.measures.get(mean.subject.split('/')[3]!)?.matters;
  const own = matters && convert(matters.value, matters.unit, unit);
  if (own && own.sign() > 0 && own.times(Exact.of(2)).compare(allowed.by) < 0) allowed = { by: own.times(Exact.of(2)), rule: `twice the ${tell(own)} that matters` };
  const step = stepOf(readings, context);
  const least = step.times(limits.exact('runs-disagree-steps'));
  return least.compare(allowed.by) > 0 ? { by: least, rule: `${limits.written('runs-disagree-steps')} steps of ${tell(step)}` } : allowed;
}

function house(mean: Fact, limits: Context['limits']): Allowed {
  if (mean.unit.dimension === 'temperature' || mean.unit.dimension === 'temperature-difference') {
    const kelvin = limits.exact('runs-disagree-temperature');
    const fahrenheit = mean.unit.id.endsWith('degF');
    return { by: fahrenheit ? kelvin.times(Exact.of(9, 5)) : kelvin, rule: limits.written('runs-disagree-temperature') };
  }
  if (mean.unit.dimension === 'sound-level') return { by: limits.exact('runs-disagree-level'), rule: limits.written('runs-disagree-level') };
  const name = /low|min|max|peak|ripple|worst|p9\d|p0?1\b|1pct/.test(mean.subject.split('/').slice(3, 5).join(' ')) ? 'runs-disagree-extreme' : 'runs-disagree';
  return { by: mean.value.abs().times(limits.share(name)), rule: `${limits.written(name)} of the mean` };
}

/** The step of the instrument where the record names one, else that of the values: 40, 42, 44 °C come in steps of 2. Averages from a log have none. */
export function stepOf(readings: readonly Reading[], { episode }: Context): Exact {
  if (readings.some((r) => r.log)) return Exact.zero;
  const instrument = instrumentFor(episode.instruments, readings[0]!);
  return (instrument && stepIn(instrument, readings[0]!)) ?? seenStep(readings, episode);
}

const steps = new WeakMap<Context['episode'], Map<string, Exact>>();

/** The largest step that all readings of this measure and part are multiples of. */
function seenStep(readings: readonly Reading[], episode: Context['episode']): Exact {
  const { key, quantity: { unit } } = readings[0]!;
  const known = steps.get(episode) ?? steps.set(episode, new Map()).get(episode)!;
  const name = (k: string): string => k.split('/').slice(3, 5).join('/');
  const id = `${name(key)} ${unit.id}`;
  const kept = known.get(id);
  if (kept) return kept;
  const alike = episode.readings.filter((r) => !r.constant && !r.log && r.quantity.unit.id === unit.id && name(r.key) === name(key));
  const values = (alike.length ? alike : readings).map((r) => r.quantity);
  const scale = 10n ** BigInt(Math.max(...values.map((q) => q.decimals)));
  const whole = values.map((q) => q.value.times(Exact.of(scale)).n);
  const least = values.length >= 6 && new Set(whole).size >= 4 ? whole.reduce((a, b) => divisor(a < 0n ? -a : a, b < 0n ? -b : b), 0n) : 1n;
  const step = Exact.of(whole.every((w) => w === whole[0]) ? 1n : least, scale);
  known.set(id, step);
  return step;
}

function divisor(a: bigint, b: bigint): bigint {
  while (b) [a, b] = [b, a % b];
  return a || 1n;
}

export function rangeOf(readings: readonly Reading[]): { low: Exact; high: Exact; width: Exact } {
  const sorted = readings.map((r) => r.quantity.value).sort((a, b) => a.compare(b));
  return { low: sorted[0]!, high: sorted.at(-1)!, width: sorted.at(-1)!.minus(sorted[0]!) };
}
