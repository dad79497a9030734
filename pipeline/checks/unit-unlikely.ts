// A reading whose unit cannot be the one written.
import { Exact, show, showNumber, type Unit, units } from '../quantities/index.js';
import { type Reading, splitKey } from '../records/index.js';
import { type Check, type Context, type Report, yaml } from './check.js';
import type { Limits } from './limits.js';
import { grouped, quantityOf } from './measured.js';
import { type ThresholdName, thresholds } from './thresholds.js';
import { readingPlaces, tell } from './words.js';

export const unitUnlikely: Check = {
  name: 'unit-unlikely',
  says: 'A reading is outside what its kind of quantity can be, or many times off its like, and right in another unit.',
  why: 'Volts written as millivolts, GHz as MHz and L/h as L/min are a thousandfold or sixtyfold wrong. The range and the other readings of that measure tell which unit was meant.',
  severity: 'error',
  thresholds: ['unit-factor', 'plausible-voltage', 'plausible-frequency', 'plausible-power', 'plausible-current', 'plausible-temperature', 'plausible-rotation', 'plausible-flow', 'plausible-sound-level', 'plausible-frame-rate'],
  right: { record: yaml(`
    title: Right
    setups: {loop: {name: Loop}}
    settings: {slow: {name: Slow}, middle: {name: Middle}, fast: {name: Fast}}
    workloads: {heater: {name: Heater}}
    readings:
      - {for: {setup: loop, setting: slow, workload: heater}, flow/loop: {load: 1.1 1.1 1.1 L/min}, voltage/ripple: {load: 12 13 12 mV}}
      - {for: {setup: loop, setting: middle, workload: heater}, flow/loop: {load: 2.2 2.2 2.2 L/min}}
      - {for: {setup: loop, setting: fast, workload: heater}, flow/loop: {load: 3.4 3.4 3.4 L/min}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {loop: {name: Loop}}
    settings: {slow: {name: Slow}, middle: {name: Middle}, fast: {name: Fast, target: {voltage/core: 950 V}}} # expect
    workloads: {heater: {name: Heater}}
    readings:
      - {for: {setup: loop, setting: slow, workload: heater}, power/pump: {load: 5 5 5 W}, frequency/core: {load: 2.4 2.4 2.4 MHz}} # expect
      - {for: {setup: loop, setting: middle, workload: heater}, power/pump: {load: 9 9 9 W}}
      - {for: {setup: loop, setting: fast, workload: heater}, power/pump: {load: 12 12 12 mW}} # expect
  `) },
  run(context) {
    const byKey = grouped(context.episode.readings.filter((r) => !r.aside), (r) => r.key);
    const firsts = [...byKey.values()].map(([r]) => ({ reading: r!, base: base(r!.quantity.value, r!.quantity.unit) }));
    const alike = grouped(firsts, ({ reading }) => quantityOf(splitKey(reading.key)!));
    return [...byKey.values()].flatMap((readings) => judge(readings, alike.get(quantityOf(splitKey(readings[0]!.key)!))!.filter(({ reading }) => reading !== readings[0]), context));
  },
};

interface Like {
  reading: Reading;
  base: Exact;
}

/** Small voltages that are no supply voltage. */
const small = /ripple|noise|drop|droop|sag|deviation|regulation|offset|sensor/;

function judge(readings: Reading[], others: Like[], { facts, limits }: Context): Report[] {
  const first = readings[0]!;
  const { unit: u } = first.quantity;
  if (u.dimension === 'voltage' && small.test(first.key)) return [];
  if (first.key.endsWith('/offset')) return [];
  const range = plausible(u, limits);
  const outside = range && readings.find((r) => !inside(base(r.quantity.value, u), range));
  const middle = u.dimension === 'temperature' ? undefined : medianOf(others.filter(({ reading }) => reading.quantity.unit.dimension === u.dimension).map((o) => o.base));
  const odd: Reading | undefined = outside ?? (middle && far(base(first.quantity.value, u), middle, limits.exact('unit-factor')) ? first : undefined);
  if (!odd) return [];
  const oneRun = outside && readings.some((r) => inside(base(r.quantity.value, u), range!));
  const meant = oneRun ? undefined : likelyUnit(odd, middle, range);
  if (!outside && !meant) return [];
  const { value, decimals } = odd.quantity;
  const said = show(value, u, decimals);
  const against = outside ? `${thresholds[range!.name].says} lies within ${range!.written.replace('-', '−')}` : `its like read about ${show(fromBase(middle!, u), u, decimals)}`;
  return [{
    place: odd.place, subject: odd.key, said,
    message: `${tell(facts.about, odd.key)} says ${said}; ${against}${meant ? `. Likely ${showNumber(value, decimals)} ${meant.symbol}` : ''}`,
    ...(meant && { suggest: `${value.toFixed(decimals)} ${meant.symbol}`, slip: `${u.symbol} written for ${meant.symbol}` }),
    ...(others.length > 0 && { related: readingPlaces(others.slice(0, 3).map((o) => o.reading), (r) => tell(facts.about, r.key)) }),
  }];
}

interface Range {
  low: Exact;
  high: Exact;
  written: string;
  name: ThresholdName;
}

function plausible(u: Unit, limits: Limits): Range | undefined {
  const name = `plausible-${u.dimension}` as ThresholdName;
  return name in thresholds ? { ...limits.range(name), name } : undefined;
}

function inside(x: Exact, range: Range): boolean {
  return x.sign() === 0 || (x.compare(range.low) >= 0 && x.compare(range.high) <= 0);
}

/** The unit of the same kind in which the number would stand among its like, or at least within the range. */
function likelyUnit(odd: Reading, middle: Exact | undefined, range: Range | undefined): Unit | undefined {
  const { value, unit: u } = odd.quantity;
  const fits = [...units.values()].filter((other) => {
    if (other.dimension !== u.dimension || other.id === u.id || other.id === 'MT/s') return false;
    const x = base(value, other);
    return middle ? !far(x, middle, Exact.of(3)) : range !== undefined && x.sign() !== 0 && inside(x, range);
  });
  return fits.find((other) => other.id === 'V' || other.id === 'MHz' || other.id === 'GHz' || other.id === 'W') ?? fits[0];
}

function far(x: Exact, middle: Exact, factor: Exact): boolean {
  if (x.sign() <= 0 || middle.sign() <= 0) return false;
  return x.compare(middle.times(factor)) > 0 || x.times(factor).compare(middle) < 0;
}

function base(x: Exact, u: Unit): Exact {
  return x.times(u.factor).plus(u.offset);
}

function fromBase(x: Exact, u: Unit): Exact {
  return x.minus(u.offset).over(u.factor);
}

/** Undefined for fewer than two: one other reading cannot say which of the two is wrong. */
function medianOf(values: Exact[]): Exact | undefined {
  return values.length < 2 ? undefined : [...values].sort((a, b) => a.toNumber() - b.toNumber())[values.length >> 1];
}

