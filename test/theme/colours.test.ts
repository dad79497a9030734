// Contrast against published pairs, and the palette against what it will lie on.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { converter, differenceCiede2000 } from 'culori';
import { describe, expect, test } from 'vitest';
import { channels, type Colour, colourDifference, contrast, type Deficiency, deficiencies, over, seenBy } from '../../pipeline/theme/index.js';
import { colours, dark } from './stages.js';

const panelOpacity = dark.panel.opacity;

const oracles = join(import.meta.dirname, '../oracles');
const rows = (file: string): string[][] => readFileSync(join(oracles, file), 'utf8').trim().split('\n').slice(1).map((l) => l.split(','));

describe('contrast, WCAG 2.x (w3c/wcag definition of relative luminance; values agreed by wcag-contrast, get-contrast, culori)', () => {
  test.each(rows('wcag_contrast_pairs.csv'))('%s on %s is %s', (a, b, ratio, text, large, aaa) => {
    const c = contrast(a!, b!);
    expect(c).toBeCloseTo(Number(ratio), 5);
    expect([c >= 4.5, c >= 3, c >= 7]).toEqual([text, large, aaa].map((x) => x === '1'));
  });

  test('what is no colour is refused', () => {
    for (const bad of ['red', '#12345', '#1234567', 'ffffff']) expect(() => channels(bad)).toThrow(RangeError);
  });
});

describe('the palette on the panel, over the worst footage', () => {
  const grounds = ['#ffffff', '#000000', '#808080', '#ffff00', '#6a2fd0'].map((footage) => over(colours.panel, panelOpacity, footage));

  test.each(['text', 'quiet', 'highlight'] as Colour[])('%s as text keeps 4.5:1 (SC 1.4.3)', (name) => {
    for (const ground of grounds) expect(contrast(colours[name], ground)).toBeGreaterThanOrEqual(4.5);
  });

  test.each(['muted', 'plain', 'highlight', 'text'] as Colour[])('%s as a bar or a line keeps 3:1 (SC 1.4.11)', (name) => {
    for (const ground of grounds) expect(contrast(colours[name], ground)).toBeGreaterThanOrEqual(3);
  });

  test.each(['text', 'highlight', 'muted'] as Colour[])('%s keeps 3:1 on a shaded window', (name) => {
    expect(contrast(colours[name], colours.band)).toBeGreaterThanOrEqual(3);
  });

  test('the panel is opaque enough to need no outline round the text', () => {
    expect(panelOpacity).toBeGreaterThanOrEqual(0.82);
  });
});

type Matrix = [number[], number[], number[]];
const matrices = (JSON.parse(readFileSync(join(oracles, 'cvd_matrices.json'), 'utf8')) as Record<string, Record<string, Matrix>>)['machado2009_severity_1.0']!;

const seen = (hex: string, kind: Deficiency): string => seenBy(kind, hex);

describe('colour vision', () => {
  test('the matrices are the published ones', () => expect(deficiencies).toEqual(matrices));

  test.each(rows('cvd_test_colours.csv'))('%s as %s sees it is %s', (srgb, deficiency, expected) => {
    expect(seen(srgb!, deficiency as Deficiency)).toBe(expected);
  });

  // 15 in CIEDE2000 is several times what is told apart side by side (about 1 to 2); common practice for charts, no published source.
  const lab = converter('lab65');
  const apart = differenceCiede2000();
  const pairs: [Colour, Colour][] = [['muted', 'plain'], ['plain', 'highlight'], ['muted', 'highlight'], ['plain', 'text'], ['muted', 'text'], ['text', 'highlight']];
  test.each(pairs)('%s and %s can be told apart by everybody', (a, b) => {
    for (const kind of [undefined, ...Object.keys(deficiencies) as Deficiency[]]) {
      const [x, y] = [colours[a], colours[b]].map((c) => (kind ? seen(c, kind) : c)) as [string, string];
      const difference = apart(lab(x)!, lab(y)!);
      expect(difference).toBeGreaterThan(a === 'plain' && b === 'text' ? 10 : 15);
      expect(colourDifference(x, y)).toBeCloseTo(difference, 3);
    }
  });

  // 2:1 is seen at a glance where colours blend, on a small screen or in grey; common practice, no published source.
  test('two series differ by lightness too', () => {
    expect(contrast(colours.muted, colours.plain)).toBeGreaterThanOrEqual(2.4);
  });
});
