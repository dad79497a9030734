// Contrast in light and in dark: WCAG 2.x SC 1.4.3 (4.5:1 for text) and 1.4.11 (3:1 for the rest).
import { describe, expect, test } from 'vitest';
import { colourRules, palette } from '../../pipeline/page/palette.js';
import { contrast } from '../../pipeline/theme/index.js';

const texts = [['ink', 'ground'], ['ink', 'raised'], ['ink', 'mark-ground'], ['soft', 'ground'], ['soft', 'raised'], ['soft', 'mark-ground'], ['link', 'ground'], ['link', 'raised'], ['mark', 'ground'], ['mark', 'mark-ground'], ['mark', 'raised'], ['alarm', 'alarm-ground']] as const;
const marks = [['link', 'ground'], ['edge', 'ground'], ['mark', 'mark-ground'], ['alarm', 'ground']] as const;

for (const scheme of ['light', 'dark'] as const) {
  describe(scheme, () => {
    test.each(texts)('%s on %s', (ink, ground) => expect(contrast(palette[scheme][ink], palette[scheme][ground])).toBeGreaterThanOrEqual(4.5));
    test.each(marks)('%s beside %s', (mark, ground) => expect(contrast(palette[scheme][mark], palette[scheme][ground])).toBeGreaterThanOrEqual(3));
  });
}

test('every colour is a colour, and both schemes name the same ones', () => {
  expect(Object.keys(palette.dark)).toEqual(Object.keys(palette.light));
  for (const hex of [...Object.values(palette.light), ...Object.values(palette.dark)]) expect(hex).toMatch(/^#[0-9a-f]{6}$/);
});

test('dark colours are for screens, never for paper', () => {
  expect(colourRules()).toContain('@media screen and (prefers-color-scheme:dark)');
});
