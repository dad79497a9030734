// Labels in a column keep their order and their distance, and stand as near to their own heights as that allows.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { spreadLabels } from '../../pipeline/charts/spread-labels.js';

test.each<[number[], number[] | undefined]>([
  [[100], [100]],
  [[100, 300], [100, 300]],
  [[100, 110], [80, 130]],
  [[110, 100], [130, 80]],
  [[0, 0, 0], [25, 75, 125]],
  [[10, 390], [25, 375]],
  [[0, 10, 20, 30, 40, 50, 60, 70, 80], undefined],
])('%j', (wanted, expected) => {
  expect(spreadLabels(wanted, 50, 25, 375)).toEqual(expected);
});

test('whatever is wanted', () => {
  fc.assert(fc.property(fc.array(fc.integer({ min: -100, max: 900 }), { minLength: 1, maxLength: 8 }), (wanted) => {
    const placed = spreadLabels(wanted, 60, 0, 800)!;
    const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]! || a - b).map((i) => placed[i]!);
    for (const [i, y] of order.entries()) {
      expect(y).toBeGreaterThanOrEqual(-1e-9);
      expect(y).toBeLessThanOrEqual(800 + 1e-9);
      if (i) expect(y - order[i - 1]!).toBeGreaterThanOrEqual(60 - 1e-6);
    }
  }));
});
