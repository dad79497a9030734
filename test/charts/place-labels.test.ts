// Names beside points: each its own where there is room, one for both where two of one name stand together and there is not.
import { expect, test } from 'vitest';
import { placeLabels } from '../../pipeline/charts/place-labels.js';

const style = { size: 48, weight: 600 } as const;
const pair = [{ x: 300, y: 150, text: 'Undervolt' }, { x: 304, y: 190, text: 'Undervolt' }];
const texts = (area: { width: number; height: number }, points = pair): (string | undefined)[] => placeLabels(points, style, 19, area).map((l) => l?.lines.map((line) => line.text).join(' '));

test('with room, each has its own', () => expect(texts({ width: 1000, height: 400 })).toEqual(['Undervolt', 'Undervolt']));

// Two dots 40 px above each other at the left of 110 px: names of 48 px beside them would overlap, and nothing fits above or below.
test('without, the name stands once, in the middle beside the two', () => {
  const low = { width: 400, height: 110 };
  const two = [{ x: 30, y: 40, text: 'Undervolt' }, { x: 30, y: 80, text: 'Undervolt' }];
  expect(texts(low, two)).toEqual(['Undervolt', '']);
  expect(placeLabels(two, style, 19, low)[0]!.lines[0]!.y).toBe(60);
});

test('of two that stand far apart neither goes without', () => expect(texts({ width: 330, height: 60 }, [{ x: 30, y: 30, text: 'Undervolt' }, { x: 300, y: 30, text: 'Undervolt' }])).not.toContain(''));
