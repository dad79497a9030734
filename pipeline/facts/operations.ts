// How each kind of fact is computed: one small rule a kind. Differences are taken before rounding.
import { convert, convertedDecimals, differenceUnit, Exact, mean, perUnit, show, showNumber, type Unit, unit } from '../quantities/index.js';
import { splitKey } from '../records/index.js';
import type { Fact, FactKind } from './fact.js';
import type { About, Underivable } from './facts.js';
import { energyMean } from '../statistics/index.js';
import { spreadOf } from './spread.js';

export interface Result {
  value: Exact;
  unit: Unit;
  /** Written when it is asked for: most facts are only compared. */
  readonly formula: string;
  spread?: Fact['spread'];
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
  /** Subtracting, or dividing, the rounded figures may give another number than the rounded result: then the fact says so. */
  onTheSofa?: boolean;
  run(inputs: Fact[], variant: string, about: About): Result | Underivable;
}

const hundred = Exact.of(100);
const two = { least: 2, most: 2 } as const;
const arbitraryZero = (what: string): Underivable => ({ why: `a ${what} of temperatures in °C or °F means nothing: their zero is arbitrary` });

export const operations: Record<FactKind, Operation> = {
  raw: { takes: 'one run of one reading', least: 1, most: 1, leaf: true, run: ([a]) => plain(a!) },
  constant: { takes: 'one constant', least: 1, most: 1, leaf: true, run: ([a]) => plain(a!) },
  mean: { takes: 'one reading, or several to average', least: 1, leaf: true, variants: ['', 'arithmetic', 'energy'], run: average },
  rise: { takes: 'the value under load and the value at idle', ...two, onTheSofa: true, run: ([a, b]) => minus(a!, b!) },
  over_room: { takes: 'a temperature and the room temperature', ...two, onTheSofa: true, run: ([a, b]) => minus(a!, b!) },
  difference: { takes: 'a subject and a base', ...two, onTheSofa: true, run: ([a, b]) => minus(a!, b!) },
  points: {
    takes: 'two shares in percent', ...two, onTheSofa: true,
    run: ([a, b]) => (a!.unit.id === '%' && b!.unit.id === '%' ? minus(a!, b!) : { why: 'percentage points lie between two percentages' }),
  },
  percent_change: {
    takes: 'the new value and the base', ...two, onTheSofa: true,
    run: ([a, b]) => quotient(a!, b!, 'percent', 'base', (x, y) => x.minus(y).over(y.abs()).times(hundred), unit('%'), () => `(${num(a!)} − ${num(b!, a!)}) ÷ ${num(b!, a!)}`),
  },
  percent_of: {
    takes: 'a part and its whole', ...two, onTheSofa: true,
    run: ([a, b]) => quotient(a!, b!, 'percent', 'whole', (x, y) => x.over(y).times(hundred), unit('%'), () => `${num(a!)} ÷ ${num(b!, a!)}`),
  },
  ratio: {
    takes: 'a subject and a base', ...two,
    run: ([a, b]) => quotient(a!, b!, 'ratio', 'base', (x, y) => x.over(y), unit('x'), () => `${num(a!)} ÷ ${num(b!, a!)}`),
  },
  rank: { takes: 'a subject and the others it is ranked with', least: 2, variants: ['better', 'highest', 'lowest'], run: rank },
  median: {
    takes: 'the values to take the median of', least: 1,
    run(inputs) {
      const all = inOneUnit(inputs);
      if ('why' in all) return all;
      const sorted = ascending(all.values);
      const half = sorted.length >> 1;
      const value = sorted.length % 2 ? sorted[half]! : mean([sorted[half - 1]!, sorted[half]!]);
      return { value, unit: inputs[0]!.unit, get formula() { return `median of ${sorted.map((v) => showNumber(v, widest(inputs))).join(', ')}`; } };
    },
  },
  range: {
    takes: 'the values whose range it is', least: 1, variants: ['width', 'low', 'high', 'low-run', 'high-run'],
    run(inputs, variant) {
      const u = inputs[0]!.unit;
      const all = variant.endsWith('-run') ? runsInOneUnit(inputs) : inOneUnit(inputs);
      if ('why' in all) return all;
      const sorted = ascending(all.values);
      const low = sorted[0]!;
      const high = sorted.at(-1)!;
      const width = variant === 'width';
      return {
        value: width ? high.minus(low) : variant.startsWith('low') ? low : high, unit: width ? differenceUnit(u) : u,
        get formula() { return `from ${showNumber(low, widest(inputs))} to ${showNumber(high, widest(inputs))}`; },
      };
    },
  },
  count: { takes: 'the things counted', least: 1, variants: ['keys', 'setups', 'settings', 'workloads', 'runs', 'at-most', 'at-least', 'below', 'above'], run: count },
  per_watt: { takes: 'a value and a power', ...two, run: ([a, b]) => (b!.unit.dimension === 'power' ? per(a!, b!) : { why: 'the second must be a power' }) },
  per_price: { takes: 'a value and a price', ...two, run: ([a, b]) => (b!.unit.dimension === 'money' ? per(a!, b!) : { why: 'the second must be a price' }) },
};

function plain(a: Fact): Result {
  return { value: a.value, unit: a.unit, get formula() { return show(a.value, a.unit, a.decimals); } };
}

/**
 * Runs of one reading are averaged arithmetically, decibels too: repetitions of one level lie so close that the energy
 * mean (ISO 3744) differs by a few hundredths. Several readings in decibels are different levels: they are averaged as
 * energy, 10·lg of the mean of 10^(L/10), to six decimals. The variants `arithmetic` and `energy` ask for one or the other.
 */
function average(inputs: Fact[], variant: string): Result | Underivable {
  const first = inputs[0]!;
  const one = inputs.length === 1;
  const energy = variant === 'energy' || (variant === '' && !one && first.unit.dimension === 'sound-level');
  if (energy && first.unit.dimension !== 'sound-level') return { why: 'only sound levels are averaged as energy' };
  const groups: Exact[][] = [];
  for (const f of inputs) {
    const values = runsOf(f, first.unit);
    if (!values) return { why: `${first.unit.id} and ${f.unit.id} cannot be averaged` };
    groups.push(values);
  }
  const averaged = one ? groups[0]! : groups.map((g) => (variant === 'energy' ? meanLevel(g) : mean(g)));
  return {
    value: energy ? meanLevel(averaged) : mean(averaged), unit: first.unit,
    get formula() {
      const decimals = widest(inputs);
      const places = Math.max(...averaged.map((x) => written(x, decimals)));
      return averaged.length === 1 ? show(averaged[0]!, first.unit, decimals) : `${energy ? 'energy mean' : 'mean'} of ${averaged.map((v) => showNumber(v, places)).join(', ')}`;
    },
    spread: one ? spreadOf(averaged) : undefined,
  };
}

function meanLevel(levels: readonly Exact[]): Exact {
  return Exact.fromNumber(energyMean(levels.map((l) => l.toNumber()))).round(6);
}

function rank(inputs: Fact[], variant: string, about: About): Result | Underivable {
  const better = about.measures.get(splitKey(inputs[0]!.subject)?.measure ?? '')?.better ?? 'neither';
  if (variant === 'better' && better === 'neither') return { why: 'the record does not say which end of this measure is better' };
  const high = variant === 'highest' || (variant === 'better' && better === 'higher');
  const all = inOneUnit(inputs);
  if ('why' in all) return all;
  const own = all.values[0]!;
  const place = 1 + all.values.slice(1).filter((v) => (high ? v.compare(own) > 0 : v.compare(own) < 0)).length;
  return {
    value: Exact.of(place), unit: unit('1'),
    get formula() {
      const finest = widest(inputs);
      const decimals = Math.max(...all.values.map((v) => written(v, finest)));
      const sorted = ascending(all.values).map((v) => showNumber(v, decimals));
      return `place ${place} from the ${high ? 'highest' : 'lowest'} of ${inputs.length}: ${(high ? sorted.reverse() : sorted).join(', ')}`;
    },
  };
}

function count(inputs: Fact[], variant: string): Result | Underivable {
  const tell = (n: number, formula: () => string): Result => ({ value: Exact.of(n), unit: unit('1'), get formula() { return formula(); } });
  const test = { 'at-most': (c: number) => c <= 0, 'at-least': (c: number) => c >= 0, below: (c: number) => c < 0, above: (c: number) => c > 0 }[variant];
  if (test) {
    const limit = inputs.at(-1)!;
    const all = inOneUnit([limit, ...inputs.slice(0, -1)]);
    if ('why' in all) return all;
    const met = all.values.slice(1).filter((v) => test(v.compare(limit.value))).length;
    return tell(met, () => `${met} of ${inputs.length - 1} are ${variant.replace('-', ' ')} ${limit.shown}`);
  }
  if (variant === 'runs') {
    const runs = Math.max(...inputs.map((f) => f.readings.length));
    return tell(runs, () => runs === 1 ? '1 run' : `${runs} runs`);
  }
  const field = { setups: 'setup', settings: 'setting', workloads: 'workload' }[variant] as 'setup' | undefined;
  const names = new Set(inputs.map((f) => (field ? splitKey(f.subject)?.[field] : f.subject)));
  const noun = variant === 'keys' ? 'values' : variant;
  return tell(names.size, () => `${names.size} ${names.size === 1 ? noun.slice(0, -1) : noun}`);
}

function minus(a: Fact, b: Fact): Result | Underivable {
  const x = same(a, b);
  return 'why' in x ? x : { value: x.a.minus(x.b), unit: differenceUnit(a.unit), get formula() { return `${num(a)} − ${num(b, a)}`; } };
}

function quotient(a: Fact, b: Fact, what: string, base: string, take: (a: Exact, b: Exact) => Exact, u: Unit, formula: () => string): Result | Underivable {
  if (a.unit.dimension === 'temperature') return arbitraryZero(what);
  const x = same(a, b);
  if ('why' in x) return x;
  return x.b.sign() === 0 ? { why: `the ${base} is zero` } : { value: take(x.a, x.b), unit: u, get formula() { return formula(); } };
}

function per(a: Fact, b: Fact): Result | Underivable {
  if (a.unit.dimension === 'temperature') return { why: 'a temperature in °C or °F for each of something means nothing: take its rise over the room' };
  if (a.unit.parts) return { why: `${a.unit.id} cannot be divided once more` };
  if (b.value.sign() === 0) return { why: 'division by zero' };
  return { value: a.value.over(b.value), unit: perUnit(a.unit, b.unit), get formula() { return `${show(a.value, a.unit, closer(a))} ÷ ${show(b.value, b.unit, closer(b))}`; } };
}

/** Both values in a's unit. A temperature and a difference do not mix. */
function same(a: Fact, b: Fact): { a: Exact; b: Exact } | Underivable {
  const other = convert(b.value, b.unit, a.unit);
  return other ? { a: a.value, b: other } : { why: `${a.unit.id} and ${b.unit.id} cannot be compared` };
}

function inOneUnit(inputs: readonly Fact[]): { values: Exact[] } | Underivable {
  const values: Exact[] = [];
  for (const f of inputs) {
    const x = same(inputs[0]!, f);
    if ('why' in x) return x;
    values.push(x.b);
  }
  return { values };
}

function runsInOneUnit(inputs: readonly Fact[]): { values: Exact[] } | Underivable {
  const values: Exact[] = [];
  for (const f of inputs) {
    const runs = runsOf(f, inputs[0]!.unit);
    if (!runs) return { why: `${inputs[0]!.unit.id} and ${f.unit.id} cannot be compared` };
    values.push(...runs);
  }
  return { values };
}

/** The values of all runs in one unit: a table may give some in V and some in mV. */
function runsOf(f: Fact, u: Unit): Exact[] | undefined {
  const values: Exact[] = [];
  for (const { quantity } of f.readings) {
    const v = convert(quantity.value, quantity.unit, u);
    if (!v) return undefined;
    values.push(v);
  }
  return values;
}

function ascending(values: readonly Exact[]): Exact[] {
  return [...values].sort((a, b) => a.compare(b));
}

/** A figure inside a formula: one more decimal than shown where it does not end there, so that the sum can be followed. */
function num(f: Fact, like: Fact = f): string {
  const v = convert(f.value, f.unit, like.unit) ?? f.value;
  return showNumber(v, written(v, convertedDecimals(f.decimals, f.unit, like.unit.dimension === f.unit.dimension ? like.unit : f.unit)));
}

function closer(f: Fact): number {
  return written(f.value, f.decimals);
}

function written(value: Exact, decimals: number): number {
  return value.round(decimals).equals(value) ? decimals : decimals + 1;
}

function widest(inputs: readonly Fact[]): number {
  const u = inputs[0]!.unit;
  return Math.max(...inputs.map((f) => (f.unit.dimension === u.dimension ? convertedDecimals(f.decimals, f.unit, u) : f.decimals)));
}
