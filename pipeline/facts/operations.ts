// How each kind of fact is computed: one small rule a kind. Differences are taken before rounding.
import { convert, differenceUnit, Exact, mean, perUnit, show, showNumber, type Unit, unit } from '../quantities/index.js';
import { type Reading, splitKey } from '../records/index.js';
import type { Fact, FactKind } from './fact.js';
import type { About, Underivable } from './facts.js';
import { spreadOf } from './spread.js';

export interface Result {
  value: Exact;
  unit: Unit;
  decimals: number;
  formula: string;
  spread?: Fact['spread'];
  sofa?: string;
}

export interface Operation {
  /** What it takes, in words for an error: "a subject and a base". */
  takes: string;
  least: number;
  most?: number;
  /** First one is the default. */
  variants?: readonly string[];
  /** Is handed the runs of its operands themselves. */
  leaf?: boolean;
  run(inputs: Fact[], variant: string, about: About): Result | Underivable;
}

const hundred = Exact.of(100);

export const operations: Record<FactKind, Operation> = {
  raw: { takes: 'one run of one reading', least: 1, most: 1, leaf: true, run: ([a]) => plain(a!, a!.readings[0]!) },
  constant: { takes: 'one constant', least: 1, most: 1, leaf: true, run: ([a]) => plain(a!, a!.readings[0]!) },
  mean: {
    takes: 'one reading, or several to average', least: 1, leaf: true,
    run(inputs) {
      const means = inputs.map((f) => mean(f.readings.map((r) => r.quantity.value)));
      const first = inputs[0]!;
      const values = first.readings.map((r) => r.quantity.value);
      const one = inputs.length === 1;
      const decimals = Math.max(...inputs.map((f) => f.decimals));
      return {
        value: mean(means), unit: first.unit, decimals,
        formula: one
          ? values.length === 1 ? show(values[0]!, first.unit, decimals) : `mean of ${first.readings.map((r) => showNumber(r.quantity.value, r.quantity.decimals)).join(', ')}`
          : `mean of ${means.map((m) => showNumber(m, decimals)).join(', ')}`,
        spread: one ? spreadOf(values) : undefined,
      };
    },
  },
  rise: { takes: 'the value under load and the value at idle', least: 2, most: 2, run: ([a, b]) => minus(a!, b!) },
  over_room: { takes: 'a temperature and the room temperature', least: 2, most: 2, run: ([a, b]) => minus(a!, b!) },
  difference: { takes: 'a subject and a base', least: 2, most: 2, run: ([a, b]) => minus(a!, b!) },
  points: {
    takes: 'two shares in percent', least: 2, most: 2,
    run([a, b]) {
      if (a!.unit.id !== '%' || b!.unit.id !== '%') return { why: 'percentage points lie between two percentages' };
      return minus(a!, b!);
    },
  },
  percent_change: {
    takes: 'the new value and the base', least: 2, most: 2,
    run([a, b]) {
      if (a!.unit.dimension === 'temperature') return { why: 'a percent of a temperature in °C or °F means nothing: its zero is arbitrary' };
      const x = same(a!, b!);
      if ('why' in x) return x;
      if (x.b.sign() === 0) return { why: 'the base is zero' };
      const value = x.a.minus(x.b).over(x.b.abs()).times(hundred);
      return { value, unit: unit('%'), decimals: percentDecimals(value), formula: `(${num(a!)} − ${num(b!, a!)}) ÷ ${num(b!, a!)}` };
    },
  },
  percent_of: {
    takes: 'a part and its whole', least: 2, most: 2,
    run([a, b]) {
      if (a!.unit.dimension === 'temperature') return { why: 'a percent of a temperature in °C or °F means nothing: its zero is arbitrary' };
      const x = same(a!, b!);
      if ('why' in x) return x;
      if (x.b.sign() === 0) return { why: 'the whole is zero' };
      const value = x.a.over(x.b).times(hundred);
      return { value, unit: unit('%'), decimals: percentDecimals(value), formula: `${num(a!)} ÷ ${num(b!, a!)}` };
    },
  },
  ratio: {
    takes: 'a subject and a base', least: 2, most: 2,
    run([a, b]) {
      if (a!.unit.dimension === 'temperature') return { why: 'a ratio of temperatures in °C or °F means nothing: their zero is arbitrary' };
      const x = same(a!, b!);
      if ('why' in x) return x;
      if (x.b.sign() === 0) return { why: 'the base is zero' };
      return { value: x.a.over(x.b), unit: unit('x'), decimals: 2, formula: `${num(a!)} ÷ ${num(b!, a!)}` };
    },
  },
  rank: {
    takes: 'a subject and the others it is ranked with', least: 2, variants: ['better', 'highest', 'lowest'],
    run(inputs, variant, about) {
      const better = about.measures.get(splitKey(inputs[0]!.subject)?.measure ?? '')?.better ?? 'neither';
      const high = variant === 'highest' || (variant === 'better' && better === 'higher');
      if (variant === 'better' && better === 'neither') return { why: 'the record does not say which end of this measure is better' };
      const all = inOneUnit(inputs);
      if ('why' in all) return all;
      const own = all.values[0]!;
      const place = 1 + all.values.slice(1).filter((v) => (high ? v.compare(own) > 0 : v.compare(own) < 0)).length;
      return {
        value: Exact.of(place), unit: unit('1'), decimals: 0,
        formula: `place ${place} from the ${high ? 'highest' : 'lowest'} of ${inputs.length}: ${[...inputs].sort((p, q) => (high ? -1 : 1) * p.value.compare(q.value)).map(num0).join(', ')}`,
      };
    },
  },
  median: {
    takes: 'the values to take the median of', least: 1,
    run(inputs) {
      const all = inOneUnit(inputs);
      if ('why' in all) return all;
      const sorted = [...all.values].sort((a, b) => a.compare(b));
      const half = sorted.length >> 1;
      const value = sorted.length % 2 ? sorted[half]! : mean([sorted[half - 1]!, sorted[half]!]);
      return { value, unit: inputs[0]!.unit, decimals: widest(inputs), formula: `median of ${sorted.map((v) => showNumber(v, widest(inputs))).join(', ')}` };
    },
  },
  range: {
    takes: 'the values whose range it is', least: 1, variants: ['width', 'low', 'high', 'low-run', 'high-run'],
    run(inputs, variant) {
      const first = inputs[0]!;
      const values = variant.endsWith('-run') ? inputs.flatMap((f) => f.readings.map((r) => r.quantity.value)) : inputs.map((f) => f.value);
      const sorted = [...values].sort((a, b) => a.compare(b));
      const low = sorted[0]!;
      const high = sorted.at(-1)!;
      const formula = `from ${showNumber(low, widest(inputs))} to ${showNumber(high, widest(inputs))}`;
      if (variant === 'width') return { value: high.minus(low), unit: differenceUnit(first.unit), decimals: widest(inputs), formula };
      return { value: variant.startsWith('low') ? low : high, unit: first.unit, decimals: widest(inputs), formula };
    },
  },
  count: {
    takes: 'the things counted', least: 1, variants: ['keys', 'setups', 'settings', 'workloads', 'runs', 'at-most', 'at-least', 'below', 'above'],
    run(inputs, variant) {
      const tell = (n: number, formula: string): Result => ({ value: Exact.of(n), unit: unit('1'), decimals: 0, formula });
      const test = { 'at-most': (c: number) => c <= 0, 'at-least': (c: number) => c >= 0, below: (c: number) => c < 0, above: (c: number) => c > 0 }[variant];
      if (test) {
        const limit = inputs.at(-1)!;
        const met = inputs.slice(0, -1).filter((f) => test((convert(f.value, f.unit, limit.unit) ?? f.value).compare(limit.value)));
        return tell(met.length, `${met.length} of ${inputs.length - 1} are ${variant.replace('-', ' ')} ${limit.shown}`);
      }
      if (variant === 'runs') {
        const runs = Math.max(...inputs.map((f) => f.readings.length));
        return tell(runs, `${runs} runs`);
      }
      const field = { setups: 'setup', settings: 'setting', workloads: 'workload' }[variant] as 'setup' | undefined;
      const names = new Set(inputs.map((f) => (field ? splitKey(f.subject)?.[field] : f.subject)));
      return tell(names.size, `${names.size} ${variant === 'keys' ? 'values' : variant}`);
    },
  },
  per_watt: { takes: 'a value and a power', least: 2, most: 2, run: ([a, b]) => (b!.unit.dimension === 'power' ? per(a!, b!) : { why: 'the second must be a power' }) },
  per_price: { takes: 'a value and a price', least: 2, most: 2, run: ([a, b]) => (b!.unit.dimension === 'money' ? per(a!, b!) : { why: 'the second must be a price' }) },
};

function plain(a: Fact, reading: Reading): Result {
  const { value, unit: u, decimals } = reading.quantity;
  return { value, unit: u, decimals, formula: show(value, a.unit, decimals) };
}

function minus(a: Fact, b: Fact): Result | Underivable {
  const x = same(a, b);
  if ('why' in x) return x;
  const value = x.a.minus(x.b);
  const decimals = Math.max(a.decimals, b.unit.id === a.unit.id ? b.decimals : 0);
  const sofa = x.a.round(decimals).minus(x.b.round(decimals));
  const result: Result = { value, unit: differenceUnit(a.unit), decimals, formula: `${num(a)} − ${num(b, a)}` };
  if (!sofa.equals(value.round(decimals))) {
    result.sofa = `${showNumber(x.a, decimals)} − ${showNumber(x.b, decimals)} would give ${showNumber(sofa, decimals)}; taken before rounding it is ${showNumber(value, decimals)}`;
  }
  return result;
}

function per(a: Fact, b: Fact): Result | Underivable {
  if (b.value.sign() === 0) return { why: 'division by zero' };
  const value = a.value.over(b.value);
  return { value, unit: perUnit(a.unit, b.unit), decimals: threeDigits(value), formula: `${a.shown} ÷ ${b.shown}` };
}

/** Both values in a's unit. A temperature and a difference do not mix. */
function same(a: Fact, b: Fact): { a: Exact; b: Exact } | Underivable {
  const other = convert(b.value, b.unit, a.unit);
  return other ? { a: a.value, b: other } : { why: `${a.unit.id} and ${b.unit.id} cannot be compared` };
}

function inOneUnit(inputs: Fact[]): { values: Exact[] } | Underivable {
  const values: Exact[] = [];
  for (const f of inputs) {
    const x = same(inputs[0]!, f);
    if ('why' in x) return x;
    values.push(x.b);
  }
  return { values };
}

/** A figure inside a formula: one more decimal than shown where it does not end there, so that the sum can be followed. */
function num(f: Fact, like: Fact = f): string {
  const v = convert(f.value, f.unit, like.unit) ?? f.value;
  const decimals = Math.max(f.decimals, 0);
  return showNumber(v, v.round(decimals).equals(v) ? decimals : decimals + 1);
}

function num0(f: Fact): string {
  return num(f);
}

function widest(inputs: Fact[]): number {
  return Math.max(...inputs.map((f) => f.decimals));
}

/** Whole percents, one decimal below ten where the first would say nothing (0.4 %). */
function percentDecimals(value: Exact): number {
  return Math.abs(value.toNumber()) < 1 && value.sign() !== 0 ? 1 : 0;
}

function threeDigits(value: Exact): number {
  const size = Math.abs(value.toNumber());
  return size === 0 ? 0 : Math.max(0, 2 - Math.floor(Math.log10(size)));
}
