// The smallest difference that matters: what the record says of a measure, else what the house takes for its kind of quantity.
import { convert, type Dimension, differenceUnit, Exact, type Quantity, readQuantity, unit } from '../quantities/index.js';
import { splitKey } from '../records/index.js';
import type { Fact } from './fact.js';
import type { Facts } from './facts.js';
import { meterLimit } from './meter-class.js';

const practice = 'common practice, no published source';

/** In the unit of the measure, or as a share of the value compared with. A record overrides any of them under `thresholds:`. */
export const matterRows = {
  'matters-temperature': { value: '1 K', says: 'the smallest difference of temperatures that matters, where the record does not say', source: 'common practice, no published source: mounts of one cooler differ by 1 to 3 K' },
  'matters-level': { value: '1 dB', says: 'the same for sound levels', source: 'common practice, no published source: about the least that is heard' },
  'matters-rate': { value: '1 %', says: 'the same for frame rates, data rates and scores', source: practice },
  'matters-clock': { value: '1 %', says: 'the same for clocks', source: practice },
  'matters-power': { value: '1 %', says: 'the same for power, current and energy', source: practice },
  'matters-time': { value: '1 %', says: 'the same for durations', source: practice },
  'matters-speed': { value: '2 %', says: 'the same for fan and pump speeds', source: practice },
  'matters-flow': { value: '2 %', says: 'the same for flow and pressure', source: practice },
  'matters-share': { value: '1 points', says: 'the same for shares in percent', source: practice },
} as const;

export type MatterName = keyof typeof matterRows;

const byDimension: Partial<Record<Dimension, MatterName>> = {
  temperature: 'matters-temperature', 'temperature-difference': 'matters-temperature', 'sound-level': 'matters-level',
  'frame-rate': 'matters-rate', 'data-rate': 'matters-rate', score: 'matters-rate', operations: 'matters-rate', throughput: 'matters-rate',
  frequency: 'matters-clock', power: 'matters-power', 'apparent-power': 'matters-power', current: 'matters-power', energy: 'matters-power', charge: 'matters-power',
  duration: 'matters-time', rotation: 'matters-speed', flow: 'matters-flow', 'air-flow': 'matters-flow', pressure: 'matters-flow', share: 'matters-share', points: 'matters-share',
};

/**
 * For a difference of `a` from `b`, in units of their differences; undefined where neither the record nor the house says.
 * A share is one of `b`, and means nothing where `b` is itself a difference. Of figures for each watt or euro what is shared out decides.
 * Of sound levels it is never less than the class of the meter leaves open.
 */
export function leastThatMatters(facts: Facts, a: Fact, b: Fact): Exact | undefined {
  const least = stated(facts, a, b);
  const meter = meterLimit(facts.about, a);
  return meter && (!least || meter.compare(least) > 0) ? meter : least;
}

/** What the record itself says of the measure. */
export function recordedMatters(facts: Facts, a: Fact, b: Fact): Exact | undefined {
  const own = facts.about.measures.get(splitKey(a.subject)?.measure ?? '')?.matters;
  return own && inUnits(own, a, b);
}

function stated(facts: Facts, a: Fact, b: Fact): Exact | undefined {
  const said = recordedMatters(facts, a, b);
  if (said) return said;
  const name = byDimension[(a.unit.parts?.[0] ?? a.unit).dimension];
  const read = name && readQuantity(facts.threshold(name) ?? matterRows[name].value, unit('1'));
  return read && 'quantity' in read ? inUnits(read.quantity, a, b) : undefined;
}

const differences: ReadonlySet<string> = new Set(['difference', 'rise', 'points', 'over_room', 'percent_change']);

function inUnits(q: Quantity, a: Fact, b: Fact): Exact | undefined {
  const between = differenceUnit(a.unit);
  const plain = between.id === 'points' && q.unit.id === '%' ? q.value : convert(q.value, differenceUnit(q.unit), between);
  if (plain) return plain;
  const base = q.unit.id === '%' && !differences.has(b.kind) && a.unit.dimension !== 'temperature' ? convert(b.value, b.unit, a.unit) : undefined;
  return base && base.abs().times(q.value).over(Exact.of(100));
}
