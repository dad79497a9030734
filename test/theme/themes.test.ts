// Theme files: the shipped ones, and what is said of one that is unfit.
import { describe, expect, test } from 'vitest';
import { Source } from '../../pipeline/places/index.js';
import { readTheme, shippedTheme, shippedThemes } from '../../pipeline/records/index.js';
import { contrast, over, themeFaults, worstFootage } from '../../pipeline/theme/index.js';
import { template } from './stages.js';

const read = (text: string) => readTheme(new Source('theme.yaml', text), template);
const said = (text: string): [string, number, number, string][] => read(text).findings.map((f) => [f.code, f.place.line, f.place.column, f.message]);

describe.each(shippedThemes)('%s', (name) => {
  const theme = shippedTheme(name, template);

  test('is fit, and complete without another', () => {
    expect(themeFaults(theme)).toEqual([]);
    expect(theme.name).toBe(name);
    expect(template(`themes/${name}.yaml`)).not.toMatch(/^from:/m);
  });

  test('text and marks keep their contrast over the worst footage (WCAG 2.x, 1.4.3 and 1.4.11)', () => {
    for (const footage of [...Object.values(worstFootage), '#ffff00', '#6a2fd0']) {
      const ground = over(theme.colours.panel, theme.panel.opacity, footage);
      for (const c of ['text', 'quiet', 'highlight'] as const) expect(contrast(theme.colours[c], ground), `${c} over ${footage}`).toBeGreaterThanOrEqual(4.5);
      for (const c of ['muted', 'plain'] as const) expect(contrast(theme.colours[c], ground), `${c} over ${footage}`).toBeGreaterThanOrEqual(3);
    }
  });
});

describe('a theme of one\'s own', () => {
  test('changes what it names and takes the rest', () => {
    const { value, findings } = read('name: mine\nfrom: light\npanel: {opacity: 0.96}\ncolours:\n  highlight: "#A43C00"\n');
    expect(findings).toEqual([]);
    const light = shippedTheme('light', template);
    expect(value).toEqual({ ...light, name: 'mine', panel: { ...light.panel, opacity: 0.96 }, colours: { ...light.colours, highlight: '#a43c00' } });
  });

  test.each([
    ['from: drak\n', [['theme-form', 1, 7, '"drak" is none of dark, light; did you mean dark?']]],
    ['from: dark\ncolors: {}\n', [['theme-field', 2, 1, 'Unknown field "colors"; did you mean colours?']]],
    ['from: dark\ncolours:\n  higlight: "#ffb53d"\n', [['theme-field', 3, 3, 'Unknown field "higlight"; did you mean highlight?']]],
    ['from: dark\ncolours:\n  text: white\n', [['theme-form', 3, 9, '"white" is not a colour; write six hexadecimal digits in quotes: "#1b2a3c"']]],
    ['from: dark\npanel:\n  opacity: 90\n', [['theme-form', 3, 12, 'Expected a number from 0.5 to 1, found "90"']]],
    ['from: dark\ntype:\n  small: {size: 20, weight: 500}\n', [['theme-form', 3, 17, 'Expected a number from 44 to 400, found "20"']]],
    ['from: dark\ntype:\n  small: {size: 44, weight: 400}\n', [['theme-form', 3, 29, '"400" is none of 500, 600, 700; did you mean 500?']]],
    ['from: dark\nmotion:\n  easing: [0.2, 1, 1.3, 1]\n', [['theme-form', 3, 12, 'An easing is four numbers x1, y1, x2, y2, and both x lie between 0 and 1']]],
    ['', [['theme-empty', 1, 1, 'The theme is empty; expected at least the colours']]],
  ])('%j', (text, findings) => expect(said(text)).toEqual(findings));

  test('everything that it lacks is named at once', () => {
    const found = said('name: mine\ncolours: {text: "#ffffff"}\n');
    expect(found.map(([code, line]) => [code, line])).toEqual([['theme-missing', 2], ...['panel', 'type', 'space', 'stroke', 'motion'].map(() => ['theme-missing', 1])]);
    expect(found[0]![3]).toContain('lacks panel, quiet, muted');
    expect(found[1]![3]).toContain('"from: dark"');
  });

  test('a colour that some footage swallows is named with its line and what it stands against', () => {
    const { value, findings: [first, ...more] } = read('from: dark\ncolours:\n  quiet: "#5a6675"\n');
    expect(value).toBeUndefined();
    expect(more).toEqual([]);
    expect(first).toMatchObject({ code: 'theme-contrast', severity: 'error', place: { line: 3, column: 10 }, subject: 'quiet/panel' });
    expect(first!.message).toMatch(/^"quiet" \(#5a6675\) has a contrast of 2\.\d+:1 to the panel \(#0f151d at 0\.9\) over white footage, and text need 4\.5:1$/);
  });

  test('series that somebody cannot tell apart are named as a pair, each with its line', () => {
    const { findings } = read('from: dark\ncolours:\n  muted: "#c08a1e"\n  highlight: "#8fae2b"\n');
    const pair = findings.find((f) => f.code === 'theme-alike' && f.subject === 'muted/highlight')!;
    expect(pair.message).toMatch(/look too alike to (protan|deutan|tritan) eyes/);
    expect(pair.place.line).toBe(3);
    expect(pair.related).toMatchObject([{ place: { line: 4 } }]);
  });

  test('the first two series differ by lightness too', () => {
    expect(said('from: dark\ncolours:\n  plain: "#6fb8a0"\n').map(([code]) => code)).toContain('theme-alike');
  });
});
