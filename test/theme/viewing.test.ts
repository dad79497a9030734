// The smallest text is large enough for a phone in the hand: capitals of 16 minutes of arc at least (ISO 9241-303, from memory)
// at 35 cm, on a screen 68 mm across and 121 mm of a 16:9 picture along (common practice, no published source).
import { expect, test } from 'vitest';
import { shippedTheme } from '../../pipeline/records/index.js';
import { capHeight, stageOf, typeNames } from '../../pipeline/theme/index.js';
import { template } from './stages.js';

const distance = 350;
const least = 16;

test.each([
  ['dark', 'wide', 121], ['dark', 'tall', 68], ['dark', 'square', 68], ['light', 'wide', 121], ['light', 'tall', 68], ['light', 'square', 68],
] as const)('%s, %s', (name, id, across) => {
  const stage = stageOf(shippedTheme(name, template), id);
  const smallest = Math.min(...typeNames.map((t) => stage.type[t].size));
  const capital = (capHeight * smallest * across) / stage.width;
  expect((Math.atan(capital / distance) * 180 * 60) / Math.PI).toBeGreaterThanOrEqual(least);
});
