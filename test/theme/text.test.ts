import { describe, expect, test } from 'vitest';
import { escapeXml, inkLeft, measure, misfit, missingGlyphs, outline, textBoxes, type TextStyle, unshown, wrap } from '../../pipeline/theme/index.js';
import { decodeXml } from '../../pipeline/theme/xml.js';

const style: TextStyle = { size: 100, weight: 600 };

describe('measure', () => {
  test('grows with the size and is nothing for nothing', () => {
    expect(measure('', style)).toBe(0);
    expect(measure('Quarrow 40', { ...style, size: 200 })).toBeCloseTo(2 * measure('Quarrow 40', style), 6);
  });

  test('tabular figures have one width, proportional ones have not', () => {
    const widths = [...'0123456789'].map((d) => measure(d, { ...style, tabular: true }));
    expect(new Set(widths).size).toBe(1);
    expect(measure('1', style)).toBeLessThan(measure('8', style));
  });

  test('pairs are kerned', () => {
    expect(measure('AV', style)).toBeLessThan(measure('A', style) + measure('V', style));
  });

  test('letter spacing counts once a glyph', () => {
    expect(measure('abc', style, 10)).toBeCloseTo(measure('abc', style) + 30, 6);
  });

  test('a one leaves more room at its left than an L-shaped letter', () => {
    expect(inkLeft('4', style)).toBeGreaterThan(0);
    expect(inkLeft('', style)).toBe(0);
  });
});

describe('characters', () => {
  test('everything that shown numbers are made of can be shown', () => {
    expect(missingGlyphs('−+±0123456789.,  %°µΩ²³₂×·→–—…′″≥≤≈Δ€£$/()')).toEqual([]);
  });

  test('what the typeface lacks is named with its code, controls without being printed', () => {
    expect(missingGlyphs('aあbあ')).toEqual(['あ']);
    expect(unshown('Pump あ')?.message).toContain('あ (U+3042)');
    expect(unshown('a\u202eb')?.message).toContain('(U+202E)');
    expect(unshown('a\u202eb')?.message).not.toContain('\u202e');
    expect(unshown('Larkfield 70 — 12 GB')).toBeUndefined();
  });
});

describe('wrap', () => {
  const small: TextStyle = { size: 50, weight: 600 };
  test.each<[string, number, number, string[] | undefined]>([
    ['Stock', 600, 2, ['Stock']],
    ['Power limit seventy-five percent', 600, 2, ['Power limit', 'seventy-five percent']],
    ['lower is better · mean of 3 runs · room 21.0 °C', 900, 2, ['lower is better', 'mean of 3 runs · room 21.0 °C']],
    ['Copse 24, front panel closed, two 140 mm fans · lent', 900, 2, ['Copse 24, front panel closed,', 'two 140\u00a0mm fans\u00a0·\u00a0lent']],
    ['one line is allowed and this is more', 500, 1, undefined],
    ['Supercalifragilisticexpialidocious', 300, 3, undefined],
  ])('%s in %d px on %d lines', (text, width, most, lines) => {
    const got = wrap(text, small, width, most);
    expect('lines' in got ? got.lines : undefined).toEqual(lines);
    if ('lines' in got) for (const l of got.lines) expect(measure(l, small)).toBeLessThanOrEqual(width + 0.5);
    else expect(got.misfit.code).toBe('label-too-long');
  });

  test('a number stays with its unit, and thin spaces never break', () => {
    for (let width = 200; width < 520; width += 10) {
      const got = wrap('heater of 250 W here 61 °C', small, width, 5);
      if ('lines' in got) for (const l of got.lines) expect(l).not.toMatch(/^(W|°C)|250$|61$/);
    }
  });

  test('lines come out even', () => {
    const got = wrap('The same graphics card on an open bench and in a closed case', small, 1400, 2);
    expect('lines' in got && got.lines.map((l) => measure(l, small)).sort((a, b) => b - a)[0]).toBeLessThan(900);
  });

  test('misfit says how much is needed and how much there is', () => {
    expect(misfit('Undervolt', style, 100)?.message).toMatch(/^"Undervolt" is \d+ px wide at size 100, and there is room for 100 px; shorten it$/);
    expect(misfit('Undervolt', style, 2000)).toBeUndefined();
  });
});

describe('escape', () => {
  test.each([['<script>&"\'', '&lt;script&gt;&amp;&quot;&#39;'], ['a\u0000\u0008b', 'ab'], ['\ud800x', 'x'], ['😀', '😀']])('%j', (raw, escaped) => {
    expect(escapeXml(raw)).toBe(escaped);
  });
  test('decoding undoes it, hexadecimal and decimal too', () => {
    expect(decodeXml(escapeXml('<a & "b" \'c\'>'))).toBe('<a & "b" \'c\'>');
    expect(decodeXml('&#x41;&#66;&amp;lt;')).toBe('AB&lt;');
  });
});

const wrapSvg = (inside: string): string => `<svg xmlns="http://www.w3.org/2000/svg" width="1920" height="1080" viewBox="0 0 1920 1080">${inside}</svg>`;
const text = (attributes: string, inside = 'Wexcomb'): string => wrapSvg(`<text font-size="100" font-weight="600" ${attributes}>${inside}</text>`);
const only = (svg: string) => textBoxes(svg)[0]!;

describe('outline', () => {
  test('no text is left, and the words are gone from the drawing', () => {
    const out = outline(text('x="10" y="200"'));
    expect(out).toMatch(/<path [^>]*d="M/);
    expect(out).not.toMatch(/<text|<tspan|Wexcomb/);
  });

  test('a capital is as tall as the face says', () => {
    const d = / d="([^"]+)"/.exec(outline(text('x="0" y="0"', 'H')))![1]!;
    expect(extent(d)).toMatchObject({ bottom: 0, top: 1490 });
  });

  test.each([['start', 0], ['middle', 0.5], ['end', 1]])('anchored at the %s', (anchor, share) => {
    const box = only(text(`x="800" y="300" text-anchor="${anchor}"`));
    const width = measure('Wexcomb', style);
    expect(box.left).toBeCloseTo(800 - Number(share) * width, 6);
    expect(box.right - box.left).toBeCloseTo(width, 6);
  });

  test('transforms of groups and of the text itself are followed', () => {
    const svg = wrapSvg('<g transform="translate(100,50)"><g transform="scale(2)"><text transform="translate(10 20) rotate(-90)" font-size="50" font-weight="600">Wexcomb</text></g></g>');
    const box = only(svg);
    expect(box.size).toBeCloseTo(100, 6);
    expect(box.bottom).toBeCloseTo(50 + 2 * 20, 6);
    expect(box.bottom - box.top).toBeCloseTo(measure('Wexcomb', style), 6);
    expect(box.left).toBeLessThan(100 + 2 * 10);
  });

  test('lines of tspans stand below each other, runs of tspans after each other', () => {
    const [a, b] = textBoxes(text('x="100" y="200"', '<tspan>one</tspan><tspan x="100" dy="110">two</tspan>'));
    expect(b!.left).toBe(a!.left);
    expect(b!.top - a!.top).toBeCloseTo(110, 6);
    const [c, d] = textBoxes(text('x="100" y="200"', 'one<tspan>two</tspan>'));
    expect(d!.left).toBeCloseTo(c!.right, 6);
  });

  test('styles come from groups and from style attributes', () => {
    expect(only(wrapSvg('<g font-size="64" style="font-weight: 700"><text x="0" y="99">x</text></g>')).size).toBe(64);
    expect(only(text('style="font-size: 48px"')).size).toBe(48);
  });

  test('tabular figures and letter spacing change the drawing', () => {
    const d = (a: string): string => / d="([^"]+)"/.exec(outline(text(a, '111')))![1]!;
    expect(d('font-feature-settings="tnum"')).not.toBe(d(''));
    expect(extent(d('letter-spacing="20"')).right).toBeGreaterThan(extent(d('')).right);
  });

  test('entities are drawn as the characters they stand for', () => {
    expect(outline(text('', '&lt;&amp;'))).toBe(outline(text('', '&#60;&#x26;')));
    expect(only(text('', 'R&amp;D')).text).toBe('R&D');
  });

  test.each([
    ['a baseline that is not the alphabetic one', text('dominant-baseline="middle"')],
    ['a transform that is not known', text('transform="skewX(20)"')],
    ['something else inside a text', text('', '<a>link</a>')],
  ])('%s is refused', (_what, svg) => {
    expect(() => outline(svg)).toThrow();
  });
});

/** Extent of a path of relative commands after absolute moves, control points included. */
function extent(d: string): { left: number; right: number; top: number; bottom: number } {
  let [x, y, sx, sy] = [0, 0, 0, 0];
  const xs: number[] = [];
  const ys: number[] = [];
  for (const [, letter, list] of d.matchAll(/([Mmlqcz])([^Mmlqcz]*)/g)) {
    const n = (list!.match(/-?\d+/g) ?? []).map(Number);
    if (letter === 'z') [x, y] = [sx, sy];
    for (let i = 0; i < n.length; i += 2) {
      const at = letter === 'M' ? [n[i]!, n[i + 1]!] : [x + n[i]!, y + n[i + 1]!];
      xs.push(at[0]!);
      ys.push(at[1]!);
      if (i + 2 >= n.length) [x, y] = at as [number, number];
    }
    if (letter === 'M' || letter === 'm') [sx, sy] = [x, y];
  }
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.max(...ys), bottom: Math.min(...ys) };
}
