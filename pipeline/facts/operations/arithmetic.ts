// Sums, quotients and comparisons of facts, each in one unit, and the figures as they stand in a formula.
import { convert, convertedDecimals, differenceUnit, type Exact, perUnit, show, showNumber, type Unit } from '../../quantities/index.js';
import type { Fact } from '../fact.js';
import type { Underivable } from '../facts.js';
import type { Result } from './operation.js';

export const arbitraryZero = (what: string): Underivable => ({ why: `a ${what} of temperatures in °C or °F means nothing: their zero is arbitrary` });

export function plain(a: Fact): Result {
  return { value: a.value, unit: a.unit, get formula() { return show(a.value, a.unit, a.decimals); } };
}

export function minus(a: Fact, b: Fact): Result | Underivable {
  const x = same(a, b);
  return 'why' in x ? x : { value: x.a.minus(x.b), unit: differenceUnit(a.unit), get formula() { return `${num(a)} − ${num(b, a)}`; } };
}

export function quotient(a: Fact, b: Fact, what: string, base: string, take: (a: Exact, b: Exact) => Exact, u: Unit, formula: () => string): Result | Underivable {
  if (a.unit.dimension === 'temperature') return arbitraryZero(what);
  const x = same(a, b);
  if ('why' in x) return x;
  return x.b.sign() === 0 ? { why: `the ${base} is zero` } : { value: take(x.a, x.b), unit: u, get formula() { return formula(); } };
}

export function per(a: Fact, b: Fact): Result | Underivable {
  if (a.unit.dimension === 'temperature') return { why: 'a temperature in °C or °F for each of something means nothing: take its rise over the room' };
  if (a.unit.parts) return { why: `${a.unit.id} cannot be divided once more` };
  if (b.value.sign() === 0) return { why: 'division by zero' };
  return { value: a.value.over(b.value), unit: perUnit(a.unit, b.unit), get formula() { return `${show(a.value, a.unit, closer(a))} ÷ ${show(b.value, b.unit, closer(b))}`; } };
}

/** Both values in a's unit. A temperature and a difference do not mix. */
export function same(a: Fact, b: Fact): { a: Exact; b: Exact } | Underivable {
  const other = convert(b.value, b.unit, a.unit);
  return other ? { a: a.value, b: other } : { why: `${a.unit.id} and ${b.unit.id} cannot be compared` };
}

export function inOneUnit(inputs: readonly Fact[]): { values: Exact[] } | Underivable {
  const values: Exact[] = [];
  for (const f of inputs) {
    const x = same(inputs[0]!, f);
    if ('why' in x) return x;
    values.push(x.b);
  }
  return { values };
}

export function runsInOneUnit(inputs: readonly Fact[]): { values: Exact[] } | Underivable {
  const values: Exact[] = [];
  for (const f of inputs) {
    const runs = runsOf(f, inputs[0]!.unit);
    if (!runs) return { why: `${inputs[0]!.unit.id} and ${f.unit.id} cannot be compared` };
    values.push(...runs);
  }
  return { values };
}

/** The values of all runs in one unit: a table may give some in V and some in mV. */
export function runsOf(f: Fact, u: Unit): Exact[] | undefined {
  const values: Exact[] = [];
  for (const { quantity } of f.readings) {
    const v = convert(quantity.value, quantity.unit, u);
    if (!v) return undefined;
    values.push(v);
  }
  return values;
}

export function ascending(values: readonly Exact[]): Exact[] {
  return [...values].sort((a, b) => a.compare(b));
}

/** A figure inside a formula: one more decimal than shown where it does not end there, so that the sum can be followed. */
export function num(f: Fact, like: Fact = f): string {
  const v = convert(f.value, f.unit, like.unit) ?? f.value;
  return showNumber(v, written(v, convertedDecimals(f.decimals, f.unit, like.unit.dimension === f.unit.dimension ? like.unit : f.unit)));
}

export function closer(f: Fact): number {
  return written(f.value, f.decimals);
}

export function written(value: Exact, decimals: number): number {
  return value.round(decimals).equals(value) ? decimals : decimals + 1;
}

export function widest(inputs: readonly Fact[]): number {
  const u = inputs[0]!.unit;
  return Math.max(...inputs.map((f) => (f.unit.dimension === u.dimension ? convertedDecimals(f.decimals, f.unit, u) : f.decimals)));
}
