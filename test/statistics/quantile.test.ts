import fc from 'fast-check';
import { expect, test } from 'vitest';
import { quantileSorted, type QuantileType } from '../../pipeline/statistics/index.js';
import { oracle, oracleJson } from '../oracles/table.js';

const quantile = (values: readonly number[], p: number, type?: QuantileType): number => quantileSorted(Float64Array.from(values).sort(), p, type);
const data = oracleJson<Record<string, number[]>>('quantile_datasets.json');
const rows = oracle('quantiles_hyndman_fan.csv');

// Hyndman & Fan 1996, nine types; quartiles of the primes by types 1 and 2 from R-help, p 0.9 of the resistivities by type 6
// from the NIST/SEMATECH e-Handbook (95.1981), the others computed from the definitions.
test(`all ${rows.length} rows of the table of quantiles`, () => {
  for (const { dataset, type, p, quantile: expected } of rows) {
    expect(quantile(data[dataset!]!, Number(p), Number(type) as QuantileType), `${dataset} type ${type} at ${p}`).toBeCloseTo(Number(expected), 5.9);
  }
  expect(rows.length).toBeGreaterThan(200);
});

test('the e-Handbook example', () => {
  expect(quantile(data['handbook_resistivity12']!, 0.9, 6)).toBeCloseTo(95.1981, 4);
  expect(quantile(data['handbook_resistivity12']!, 0.9, 7)).toBeCloseTo(95.19568, 5);
});

test('every type stays inside the data, and grows with p', () => {
  const values = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 1, maxLength: 40 });
  const p = fc.integer({ min: 0, max: 100 }).map((n) => n / 100);
  fc.assert(fc.property(values, p, p, fc.integer({ min: 1, max: 9 }), (v, a, b, type) => {
    const [low, high] = [Math.min(a, b), Math.max(a, b)].map((x) => quantile(v, x, type as QuantileType));
    expect(low!).toBeGreaterThanOrEqual(Math.min(...v));
    expect(high!).toBeLessThanOrEqual(Math.max(...v));
    expect(low!).toBeLessThanOrEqual(high! + 1e-9);
  }));
});

test('of no values there is none', () => {
  expect(quantile([], 0.5)).toBeNaN();
  expect(quantile([4], 0.5)).toBe(4);
  expect(quantile([4, 1, 3, 2], 0.5)).toBe(2.5);
});
