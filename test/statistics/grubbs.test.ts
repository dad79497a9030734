import { describe, expect, test } from 'vitest';
import { grubbs, grubbsLimit } from '../../pipeline/statistics/index.js';
import { oracle } from '../oracles/table.js';

describe('the test of Grubbs', () => {
  // NIST/SEMATECH e-Handbook 1.3.5.17, data of Tietjen and Moore.
  const mass = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];
  test('the e-Handbook example of Grubbs', () => {
    const { g, index } = grubbs(mass)!;
    expect(g).toBeCloseTo(2.4687646, 6);
    expect(index).toBe(7);
    expect(grubbsLimit(8)).toBeCloseTo(2.1266, 4);
    expect(grubbsLimit(8, 0.1)).toBeCloseTo(2.0317, 4); // the handbook's one-sided 5 %
  });
  test.each(oracle('grubbs_critical.csv'))('limits of Grubbs for n $n', (row) => {
    const n = Number(row['n']);
    for (const [column, alpha] of [['one_sided_0.05', 0.1], ['two_sided_0.05', 0.05], ['one_sided_0.01', 0.02], ['two_sided_0.01', 0.01]] as const) expect(grubbsLimit(n, alpha)).toBeCloseTo(Number(row[column]), 3.9);
  });
  test('three values cannot tell, and equal ones have none', () => {
    expect(grubbs([1, 1, 9])!.g).toBeLessThan(1.1548);
    expect(grubbs([1, 9])).toBeUndefined();
    expect(grubbs([4, 4, 4, 4])).toBeUndefined();
  });
});
