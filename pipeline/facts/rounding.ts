// How many decimals a fact is shown and spoken with: one rule a kind. Common practice, no published source, but where named.
import { convertedDecimals, Exact, type Unit } from '../quantities/index.js';
import { splitKey } from '../records/index.js';
import { type Fact, type FactKind, wasRead } from './fact.js';

export interface RoundingRule {
  says: string;
  /** `value` and `unit` are the fact's own, `inputs` what it was derived from. */
  decimals(value: Exact, unit: Unit, inputs: readonly Fact[]): number;
}

const asWritten: RoundingRule = { says: 'as it was written', decimals: (_, u, inputs) => finest(u, inputs) };
const whole: RoundingRule = { says: 'a whole number', decimals: () => 0 };
/** Readings of another measure or part are another instrument's; a constant that was set is exact and never decides, one quoted from another episode was read there. */
const difference: RoundingRule = {
  says: 'as fine as the readings; of two instruments the coarser one decides',
  decimals: (_, u, inputs) => coarser(u, inputs),
};
const percent: RoundingRule = { says: 'whole percent; below one percent the first place that says something, up to two', decimals: (v) => percentDecimals(v) };
const threeDigits: RoundingRule = { says: 'three significant digits', decimals: (v) => significant(v, 3) };

export const roundingRules: Readonly<Record<FactKind, RoundingRule>> = {
  raw: asWritten,
  constant: asWritten,
  mean: { says: 'as fine as the readings averaged', decimals: (_, u, inputs) => finest(u, inputs) },
  rise: difference,
  over_room: difference,
  at_room: difference,
  difference,
  points: difference,
  percent_change: percent,
  percent_of: { says: `${percent.says}; a share that is not quite the whole never as 100`, decimals: shareDecimals },
  ratio: { says: 'two decimals, fewer where they end before; three significant digits from ten on', decimals: ratioDecimals },
  rank: whole,
  count: whole,
  median: { says: 'as fine as the values', decimals: (_, u, inputs) => finest(u, inputs) },
  range: { says: 'as fine as the values', decimals: (_, u, inputs) => finest(u, inputs) },
  per_watt: threeDigits,
  per_price: threeDigits,
  energy: threeDigits,
  per_energy: threeDigits,
  heat: threeDigits,
  level_sum: { says: 'as fine as the levels', decimals: (_, u, inputs) => finest(u, inputs) },
  without_background: { says: 'as fine as the levels', decimals: (_, u, inputs) => finest(u, inputs) },
  approach: { says: 'three significant digits for a time constant; a level as fine as the readings', decimals: (v, u, inputs) => (u.id === 's' ? significant(v, 3) : finest(u, inputs)) },
  at_distance: { says: 'as fine as the level', decimals: (_, u, inputs) => finest(u, inputs.slice(0, 1)) },
};

/** Decimals of one input in the fact's unit; a difference of temperatures has steps as fine as the temperatures. */
function decimalsIn(u: Unit, f: Fact): number {
  return f.unit.dimension === u.dimension ? convertedDecimals(f.decimals, f.unit, u) : f.decimals;
}

function finest(u: Unit, inputs: readonly Fact[]): number {
  return Math.max(0, ...inputs.map((f) => decimalsIn(u, f)));
}

function coarser(u: Unit, inputs: readonly Fact[]): number {
  const measured = inputs.filter(wasRead);
  if (measured.length === 0) return finest(u, inputs);
  const instruments = new Set(measured.map((f) => instrument(f)));
  const decimals = measured.map((f) => decimalsIn(u, f));
  const logged = measured.every((f) => f.readings.every((r) => r.log));
  return instruments.size === 1 && !logged ? Math.max(...decimals) : Math.min(...decimals);
}

/** Readings of one measure and part were made by one instrument: a spreadsheet that drops final zeros does not change that, while values averaged from logs have decimals by their size. */
function instrument(f: Fact): string {
  const at = splitKey(f.subject);
  return at ? `${at.measure}/${at.part}` : f.id;
}

function percentDecimals(value: Exact): number {
  if (value.sign() === 0 || value.abs().compare(Exact.of(1)) >= 0) return 0;
  return [1, 2].find((places) => value.abs().compare(Exact.of(1, 10 ** places)) >= 0) ?? 0;
}

/** 99.6 % of a limit is not its whole: one place more, or two, where that tells. */
function shareDecimals(value: Exact): number {
  const whole = Exact.of(100);
  const short = !value.equals(whole) && value.round(0).equals(whole);
  return (short ? [1, 2].find((places) => !value.round(places).equals(whole)) : undefined) ?? percentDecimals(value);
}

function ratioDecimals(value: Exact): number {
  const most = Math.min(2, significant(value, 3));
  return [0, 1].find((places) => places < most && value.round(places).equals(value)) ?? most;
}

function significant(value: Exact, digits: number): number {
  const size = Math.abs(value.toNumber());
  if (size === 0) return 0;
  const places = digits - 1 - Math.floor(Math.log10(size));
  const carried = Math.abs(value.round(places).toNumber()) >= 10 ** (digits - places);
  return Math.max(0, carried ? places - 1 : places);
}
