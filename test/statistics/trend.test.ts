import { describe, expect, test } from 'vitest';
import { fitLine } from '../../pipeline/statistics/index.js';

describe('a straight line', () => {
  test('through points that lie on one', () => {
    expect(fitLine([0, 1, 2, 3], [5, 7, 9, 11])).toEqual({ slope: 2, intercept: 5, slopeError: 0 });
    expect(fitLine([1, 1], [2, 3])).toBeUndefined();
    expect(fitLine([1], [2])).toBeUndefined();
    expect(fitLine([0, 2], [1, 5])).toMatchObject({ slope: 2, intercept: 1, slopeError: undefined });
  });
  // JCGM 100:2008, H.3: calibration of a thermometer, y₂ and its uncertainty, by least squares with t₀ = 20.
  test('the thermometer of the Guide', () => {
    const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511].map((x) => x - 20);
    const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
    const line = fitLine(t, b)!;
    expect(line.intercept).toBeCloseTo(-0.1712, 4);
    expect(line.slope).toBeCloseTo(0.00218, 5);
    expect(line.slopeError).toBeCloseTo(0.00067, 5);
  });
});
