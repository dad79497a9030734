// A long log has means of short stretches in its trace; the picture shows what lay between their lowest and highest values.
import { expect, test } from 'vitest';
import { drawnOf, reduce } from '../../pipeline/charts/reduce.js';

test('the lowest and the highest of each stretch are drawn, at its time', () => {
  expect(drawnOf({ times: [1, 2], values: [5, 6], lows: [4, 3], highs: [7, 9] })).toEqual({ times: [1, 1, 2, 2], values: [4, 7, 3, 9] });
});

test('a single spike of a long log is in the picture', () => {
  const n = 16_000;
  const times = Array.from({ length: n }, (_, i) => i);
  const flat = times.map(() => 50);
  const drawn = drawnOf({ times, values: flat, lows: flat, highs: flat.map((v, i) => (i === 7777 ? 90 : v)) });
  const points = reduce(drawn.times, drawn.values, 1000);
  expect(points.length).toBeLessThan(6000);
  expect(points.filter((p) => p.v === 90)).toEqual([{ t: 7777, v: 90 }]);
});

test('a short log is drawn as it is', () => expect(drawnOf({ times: [1, 2], values: [5, NaN] })).toEqual({ times: [1, 2], values: [5, NaN] }));
