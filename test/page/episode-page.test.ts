// The comparison page as a document: valid, complete, closed to the outside, and deaf to markup in names.
import { HtmlValidate } from 'html-validate';
import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { readingsCsv, renderIndex } from '../../pipeline/page/index.js';
import { factsOf } from '../facts/episode.js';
import { mapOf, measure, place } from '../narration/episodes.js';
import { emptyPage, factsWithAside, hostile, hostilePage, pageOf, quantity, svg, template } from './pages.js';

const validator = new HtmlValidate({
  extends: ['html-validate:recommended', 'html-validate:a11y', 'html-validate:document'],
  // Style and not standard: other tools print it otherwise, and inline styles of a drawn chart are its own.
  rules: { 'no-trailing-whitespace': 'off', 'long-title': 'off', 'no-inline-style': 'off', 'prefer-native-element': 'off', 'attr-quotes': 'off', 'doctype-style': 'off', 'void-style': 'off' },
});

const cards = [{ id: 'a b', title: hostile, date: '2026-03-14', summary: hostile, draft: true, readings: 1234, facts: 1, warnings: 2 }, { id: 'later', title: 'Later', date: '2026-05-09', draft: false, readings: 1, facts: 0, warnings: 0 }];
const pages: [string, () => string][] = [
  ['a full page', () => pageOf(factsWithAside())], ['a draft', () => pageOf(factsWithAside(), { draft: true })], ['hostile names', hostilePage], ['next to nothing', emptyPage],
  ['the index', () => renderIndex({ cards, draft: true, template })], ['an index of nothing', () => renderIndex({ cards: [], draft: false, template })],
];

describe.each(pages)('%s', (_name, make) => {
  const html = make();
  test('is valid HTML', () => {
    const report = validator.validateStringSync(html);
    expect(report.results.flatMap((r) => r.messages).map((m) => `${m.line}:${m.column} ${m.ruleId} ${m.message}`)).toEqual([]);
  });
  test('asks nothing of the network and runs nothing', () => {
    expect(html).toContain(`content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'"`);
    expect(html).not.toMatch(/<(?:img|iframe|object|embed|audio|video|source|base)\b/i);
    expect(html.match(/<script\b[^>]*>/g) ?? []).toEqual(html.includes('ld+json') ? ['<script type="application/ld+json">'] : []);
    expect(html.match(/<link\b[^>]*>/g)).toEqual(['<link rel="icon" href="data:,">']);
    expect(html.replace(/&quot;|"[^"]*schema\.org"/g, '').match(/(?:src|href)="(?:https?:)?\/\/[^"]*"/g)).toBeNull();
    expect(html).not.toMatch(/\son\w+="/);
  });
  test('has one h1, headings that skip no level, and a language', () => {
    const levels = [...html.matchAll(/<h([1-6])\b/g)].map((m) => Number(m[1]));
    expect(levels.filter((l) => l === 1)).toHaveLength(1);
    levels.forEach((l, i) => expect(l - (levels[i - 1] ?? 0)).toBeLessThanOrEqual(1));
    expect(html).toContain('<html lang="en">');
    for (const landmark of ['<header', '<main id="content"', '<a class="skip" href="#content"']) expect(html).toContain(landmark);
  });
  test('names every table, and every header cell its direction', () => {
    for (const table of html.match(/<table[\s\S]*?<\/table>/g) ?? []) {
      expect(table).toMatch(/<caption/);
      for (const th of table.match(/<th\b[^>]*>/g) ?? []) expect(th).toContain('scope="');
    }
    for (const id of [...html.matchAll(/(?:href="#|aria-labelledby=")([\w-]+)"/g)].map((m) => m[1]!)) expect(html, id).toContain(`id="${id}"`);
  });
  test('comes out the same twice', () => expect(make()).toBe(html));
});

describe('a full page', () => {
  const facts = factsWithAside();
  const html = pageOf(facts);
  const decoded = html.replaceAll('&#x3D;', '=').replaceAll('&#x27;', "'").replaceAll('&amp;', '&');
  const text = decoded.replace(/<style>[\s\S]*?<\/style>|<script[\s\S]*?<\/script>/g, '').replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ');

  test('shows disclosures before cautions before results', () => {
    const order = ['The box was lent by its maker.', 'Mains voltage can kill.', 'id="results-title"'].map((s) => html.indexOf(s));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(order[0]).toBeGreaterThan(0);
  });
  // Means by hand: (38+38+39)/3 = 38.3, (67+67+68)/3 = 67.3, rise 29; sample deviation of 38 38 39 is 0.577.
  test('gives means, deviations, rises and the second unit', () => {
    expect(text).toMatch(/Bench 38 ± 0\.6 101 °F/);
    expect(text).toMatch(/67 ± 0\.6 153 °F 29 52 °F/);
  });
  // 247.6 and 248.3 alone: the third was set aside.
  test('keeps what was set aside out of the mean and tells of it', () => {
    expect(text).toContain('248.0');
    expect(text).toMatch(/Board power, Bench, Stock, Scene, Load, run 3: 248\.1 W\. the window was open/);
    expect(text).toMatch(/248\.1 set aside/);
    expect(text).toContain('n = 2');
  });
  test.each([
    ['method', 'Three runs of the scene.'], ['instrument', 'wall meter Board power 0.1 W ±1 %'], ['version', 'driver 81.4'], ['room', 'Bench, Stock, Scene, Load 22.1 °C'],
    ['how it came and its price', 'Box lent not stated €119, seen on 2 March 2026'], ['limit', 'Stock Board power limit 250 W'], ['part', 'Case front panel closed lent'],
    ['curve', '40 °C 600 rpm'], ['accepted finding', 'The room differs by 0.8 K. ( room-differs ) Accepted because: the differences are larger'], ['open finding', 'note The runs differ by 0.4 %.'],
    ['formula', '67.3 − 38.3'], ['where its readings stand', 'episode.yaml:2'], ['alternative text', 'Two bars: 67 on the bench, 78 in the box.'], ['day', '14 March 2026'],
  ])('tells the %s', (_what, words) => expect(text.replace(/[\u2009\u202f\u00a0]/g, ' ')).toContain(words));

  test('an arrangement came from nowhere', () => expect(text).not.toMatch(/Bench not stated/));

  test('marks the better end where the runs do not overlap', () => {
    expect(html).toMatch(/<span class="tag">best<\/span> <span class="value">67<\/span>/);
    expect(html).not.toMatch(/<span class="tag">best<\/span> <span class="value">78<\/span>/);
    const near = pageOf(factsWithAside({ measures: mapOf({ ...measure('temperature', 'lower', { matters: quantity('15 K') }), name: 'Temperature' }) }));
    expect(near).not.toMatch(/<span class="tag">best<\/span> <span class="value">67<\/span>/);
  });

  test('holds every reading as CSV and JSON in links of its own', () => {
    const uri = (type: string) => Buffer.from(new RegExp(`href="data:${type};charset=utf-8;base64,([^"]+)"`).exec(decoded)![1]!, 'base64').toString('utf8');
    expect(uri('text/csv')).toBe(readingsCsv(facts));
    const rows = parse(uri('text/csv'), { columns: true, bom: false, record_delimiter: '\r\n' }) as Record<string, string>[];
    expect(rows).toHaveLength(31);
    expect(Object.keys(rows[0]!).slice(0, 9)).toEqual(['setup', 'setting', 'workload', 'measure', 'part', 'phase', 'run', 'value', 'unit']);
    expect(rows.find((r) => r.measure === 'power' && r.run === '3')).toMatchObject({ value: '248.1', unit: 'W', note: 'set aside: the window was open' });
    const json = JSON.parse(uri('application/json')) as Record<string, string>[];
    expect(json.map((r) => [r.setup, r.part, r.run, r.value])).toEqual(rows.map((r) => [r.setup, r.part, r.run, r.value]));
  });

  test('describes its data to those who look for data', () => {
    const data = JSON.parse(/<script type="application\/ld\+json">([^<]*)<\/script>/.exec(html)![1]!) as Record<string, unknown>;
    expect(data).toMatchObject({ '@type': 'Dataset', name: 'One board, two boxes', datePublished: '2026-03-14' });
  });

  test('shows the chart from panel edge to panel edge, text as text and as wide as it was drawn', () => {
    expect(html).toContain('viewBox="40 40 1840 1000"');
    expect(html).toMatch(/<text[^>]*textLength="\d+\.\d\d" lengthAdjust="spacingAndGlyphs">Core, idle &amp; load<\/text>/);
    expect(html).toContain('id="picture-1-1"');
  });

  test.each([
    ['a script', '<script>x</script>'], ['a handler', '<rect onclick="x"/>'], ['a foreign document', '<foreignObject/>'], ['an image from outside', '<image href="http://x/y.png"/>'], ['a style from outside', '<style>@import "x"</style>'],
  ])('a drawing with %s is linked and not shown', (_what, inside) => {
    const bad = pageOf(facts, { pictures: [{ name: 'c', kind: 'bars', title: 'C', alt: 'A chart.', facts: [], svg: svg.replace('</svg>', `${inside}</svg>`), files: ['pictures/c.svg'] }] });
    expect(bad).not.toContain(inside);
    expect(bad).toContain('<a href="pictures/c.svg" download>');
  });
});

describe('what is between the author and the program stays off the page', () => {
  const script = { ...place, file: 'data/example/script.md' };
  const texts = [{ role: 'script' as const, text: 'It ran at 61 degrees.', place: script }, { role: 'thumbnail' as const, text: '61!', place }];
  const html = pageOf(factsWithAside({ texts }), {
    findings: [
      { code: 'claim-untied', severity: 'warning', message: 'The 61 of the script is tied to nothing.', place: script },
      { code: 'claim-disagrees', severity: 'error', message: 'The thumbnail says 61.', place },
      { code: 'number-form', severity: 'note', message: 'A number begins a sentence.', place: script },
      { code: 'room-differs', severity: 'note', message: 'The room differs by 0.8 K.', place },
    ],
  });
  test.each(['tied to nothing', 'thumbnail says', 'begins a sentence', 'claim-', 'findings.json', 'narration.md'])('%s', (words) => expect(html).not.toContain(words));
  test('what was found in the readings is told', () => expect(html).toContain('The room differs by 0.8 K.'));
});

describe('decimals of deviations are alike in a column', () => {
  const cells = (readings: string): string[] => [...pageOf(factsOf(readings), { pictures: [], sentences: [] }).matchAll(/<span class="value">([^<]+)<\/span> <span class="soft">(± [^<]+)/g)].map((m) => `${m[1]} ${m[2]}`.replace(/[\u2009\u202f\u00a0]/g, ' '));
  // Sample deviations by hand: of 600.0 600.0 it is 0; of 1400.0 1405.0 it is 5/√2 = 3.54; of 14.1 14.2 0.0707; of 38 39 0.707.
  test.each([
    ['as many as the means', 'a/s/w/power/board/load: 600.0 600.0 W\nb/s/w/power/board/load: 1400.0 1405.0 W', ['600.0 ± 0.0', '1,402.5 ± 3.5']],
    ['one at least', 'a/s/w/temperature/core/load: 38 39 °C\nb/s/w/temperature/core/load: 40 40 °C', ['39 ± 0.7', '40 ± 0.0']],
    ['one more where a deviation would read as none', 'a/s/w/noise/card/load: 14.10 14.10 14.11 dB(A)\nb/s/w/noise/card/load: 20.00 20.20 20.30 dB(A)', ['14.10 ± 0.01', '20.17 ± 0.15']],
  ])('%s', (_what, readings, expected) => {
    expect(cells(readings)).toEqual(expected);
  });
});

test('a better end is said only where things did the same work', () => {
  const measures = mapOf(measure('power', 'lower'));
  const note = (readings: string): boolean => pageOf(factsOf(readings, { measures }), { pictures: [], sentences: [] }).includes('lower is better');
  expect(note('a/s/dig/power/board/load: 10 11 W\na/s/fill/power/board/load: 20 21 W')).toBe(false);
  expect(note('a/s/dig/power/board/load: 10 11 W\nb/s/dig/power/board/load: 20 21 W')).toBe(true);
});

test('a graphic says its title once, and its words begin as a sentence does', () => {
  const list = (alt: string, title = 'Tower vs loop'): string => /<ul class="plain pictures">\s*<li>([\s\S]*?) <span class="files">/.exec(pageOf(factsWithAside(), { pictures: [{ name: 'g', kind: 'chapter', title, alt, facts: [], svg, files: ['pictures/g-1920x1080.png'] }] }))![1]!;
  expect(list('Tower vs loop')).toBe('<strong>Tower vs loop</strong>');
  expect(list('Tower vs loop. which is quieter.')).toBe('<strong>Tower vs loop</strong> Which is quieter.');
  expect(list('Tower vs loops of all kinds')).toBe('<strong>Tower vs loop</strong> Tower vs loops of all kinds');
});

test('markup in names comes out as text everywhere', () => {
  const html = hostilePage();
  expect(html).not.toContain('<script>alert');
  expect(html).not.toContain('<img');
  expect(html).not.toContain('</title></style>');
  expect(html.match(/\{\{constructor\}\}/g)!.length).toBeGreaterThan(20);
  expect(html.replaceAll('&lt;script&gt;alert(1)&lt;/script&gt;', '')).not.toMatch(/<script(?! type="application\/ld\+json")/);
});

test('the index leads to each episode, newest first', () => {
  const html = renderIndex({ cards, draft: true, template });
  expect([...html.matchAll(/<h2><a href="([^"]+)"/g)].map((m) => m[1])).toEqual(['later/index.html', 'a%20b/index.html']);
  expect(html).toContain('1,234 readings, 1 fact, 2 open warnings');
});

describe('corrections', () => {
  const correction = (more: object) => ({ said: '25 K', saidPlace: place, fact: 'rise:bench/stock/scene/temperature/core/load~workload=,phase=idle', factPlace: place, where: '3:12', place, ...more });
  const pageWith = (...corrections: ReturnType<typeof correction>[]) => pageOf(factsWithAside({ corrections }));
  test('stand in a section of their own, before the results, with the figure that the readings give', () => {
    // 67.33 − 38.33 = 29.0, a rise: kelvins.
    const html = pageWith(correction({ date: '2026-03-20', reason: 'Read off the <wrong> line' }));
    expect(html.indexOf('id="corrections-title"')).toBeLessThan(html.indexOf('id="results-title"'));
    expect(html).toContain('<a href="#corrections">Corrections</a>');
    const item = /<section id="corrections"[\s\S]*?<\/section>/.exec(html)![0].replace(/<[^>]+>/g, '').replace(/[\s\u00a0\u202f]+/g, ' ');
    expect(item).toContain('At 3:12: we said 25 K. Core temperature, rise (Bench, Stock, Scene, Under load) is 29 K. Read off the &lt;wrong&gt; line. Corrected on 20 March 2026.'.replace('Under load', 'Load'));
    expect(validator.validateStringSync(html).results.flatMap((r) => r.messages)).toEqual([]);
  });
  test('one whose fact is not known is a finding, and no row; without any there is no section', () => {
    for (const html of [pageWith(correction({ fact: 'nothing' })), pageWith()]) expect(html).not.toContain('id="corrections"');
  });
});

test('a chart that can be read on a phone as it is need not be swiped, and a wider one says so', () => {
  const shown = (viewBox: string): string => /<figure id="picture-1">[\s\S]*?role="region"/.exec(pageOf(factsWithAside(), { pictures: [{ name: 'c', kind: 'bars', title: 'C', alt: 'A chart.', facts: [], svg: svg.replace(/viewBox="[^"]*"/, `viewBox="${viewBox}"`), files: ['pictures/c.svg'] }] }))![0];
  expect(shown('0 0 1280 1024')).toContain('class="scroll chart fits"');
  expect(shown('0 0 1280 1024')).not.toContain('Swipe');
  expect(shown('40 40 1840 1000')).toContain('Swipe sideways');
  expect(shown('40 40 1840 1000')).toContain('class="scroll chart"');
});
