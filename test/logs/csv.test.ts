// The CSV reader against RFC 4180 (cases with the rows that its text asks for), and against csv-parse on random tables.
import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cellPlace, type CsvFault, type CsvOptions, scanCsv } from '../../pipeline/logs/index.js';
import { Source } from '../../pipeline/places/index.js';

interface Case { name: string; text: string; rows: string[][] | null; note?: string }
const { cases } = JSON.parse(readFileSync(new URL('../oracles/csv_cases.json', import.meta.url), 'utf8')) as { cases: Case[] };

function scan(text: string, options: CsvOptions = {}): { rows: string[][]; lines: number[]; offsets: number[]; faults: CsvFault[] } {
  const rows: string[][] = [];
  const lines: number[] = [];
  const offsets: number[] = [];
  const faults: CsvFault[] = [];
  scanCsv(text, options, (cells, line, offset) => {
    rows.push(cells);
    lines.push(line);
    offsets.push(offset);
  }, (f) => faults.push(f));
  return { rows, lines, offsets, faults };
}

describe('RFC 4180 section 2', () => {
  test.each(cases.filter((c) => c.rows).map((c) => [c.name, c] as const))('%s', (_, c) => {
    expect(scan(c.text)).toMatchObject({ rows: c.rows!, faults: [] });
  });

  // Outside the grammar. What is refused is refused at its place; the rest is decided as the reader's header says.
  test.each<[string, string[][], [number, number][]]>([
    ['space before quote', [], [[3, 4]]],
    ['bare quote', [], [[3, 4]]],
    ['unclosed quote', [], [[2, 3]]],
    ['ragged', [['a', 'b', 'c'], ['1', '2']], []],
    ['blank line', [['a', 'b'], ['1', '2']], []],
  ])('%s', (name, rows, faults) => {
    const { text } = cases.find((c) => c.name === name)!;
    const found = scan(text);
    expect(found.rows).toEqual(rows);
    expect(found.faults.map((f) => [f.start, f.end])).toEqual(faults);
  });
});

test.each<[string, string, CsvOptions, string[][], number[]]>([
  ['LF', 'a,b\n1,2\n', {}, [['a', 'b'], ['1', '2']], [1, 2]],
  ['lone CR', 'a,b\r1,2\r', {}, [['a', 'b'], ['1', '2']], [1, 2]],
  ['mixed line ends', 'a\r\nb\nc\rd', {}, [['a'], ['b'], ['c'], ['d']], [1, 2, 3, 4]],
  ['a quoted line end counts', '"a\nb",1\nc,2\n', {}, [['a\nb', '1'], ['c', '2']], [1, 3]],
  ['semicolons', 'a;b\n1,5;2\n', { delimiter: ';' }, [['a', 'b'], ['1,5', '2']], [1, 2]],
  ['tabs', 'a\tb\n', { delimiter: '\t' }, [['a', 'b']], [1]],
  ['comments and a preamble', 'Logger 3\n\n# note\na,b\n# "more\n1,2\n', { comment: '#', skip: 1 }, [['a', 'b'], ['1', '2']], [4, 6]],
  ['empty cells', ',\n,,\n', {}, [['', ''], ['', '', '']], [1, 2]],
  ['nothing', '', {}, [], []],
])('%s', (_, text, options, rows, lines) => {
  expect(scan(text, options)).toMatchObject({ rows, lines, faults: [] });
});

test('goes on after a fault, and tells each', () => {
  const found = scan('a,b\n1,x"y\n2,3\n"q"z,4\n5,6\n');
  expect(found.rows).toEqual([['a', 'b'], ['2', '3'], ['5', '6']]);
  expect(found.faults.map((f) => f.start)).toEqual([7, 17]);
});

test('every cell is found again at its place', () => {
  const text = 'a,"b ""c""",\r\n"x\ny",,z';
  const source = new Source('t.csv', text);
  const { rows, offsets } = scan(text);
  const at = rows.map((r, i) => r.map((_, j) => cellPlace(source, offsets[i]!, j)));
  expect(at.map((row) => row.map((p) => `${p.line}:${p.column}-${p.endLine}:${p.endColumn}`))).toEqual([
    ['1:1-1:2', '1:3-1:12', '1:13-1:13'],
    ['2:1-3:3', '3:4-3:4', '3:5-3:6'],
  ]);
});

test('reads what csv-parse reads, for any table written by the rules', () => {
  const cell = fc.stringMatching(/^[a ",;\n\r\u00e9\u{1F321}]{0,5}$/u);
  const table = fc.integer({ min: 1, max: 4 }).chain((n) => fc.array(fc.array(cell, { minLength: n, maxLength: n }), { minLength: 1, maxLength: 6 }));
  fc.assert(fc.property(table, fc.constantFrom('\n', '\r\n'), (rows, end) => {
    const text = rows.map((r) => r.map((c) => `"${c.replaceAll('"', '""')}"`).join(',')).join(end);
    expect(scan(text).rows).toEqual(rows);
    expect(parse(text, { record_delimiter: [end], relax_column_count: true })).toEqual(rows);
  }), { seed: 4180 });
});

test('never throws and never loses a line silently, whatever the text', () => {
  fc.assert(fc.property(fc.string({ unit: fc.constantFrom('a', '"', ',', '\n', '\r', ';', '#'), maxLength: 40 }), (text) => {
    const { rows, faults } = scan(text);
    if (text.replace(/[\r\n]/g, '') !== '') expect(rows.length + faults.length).toBeGreaterThan(0);
    let strict: string[][] | undefined;
    try {
      strict = parse(text, { relax_column_count: true, skip_empty_lines: true, record_delimiter: ['\r\n', '\n', '\r'] });
    } catch {
      strict = undefined;
    }
    if (faults.length === 0 && strict) expect(rows).toEqual(strict);
    if (faults.length === 0) expect(strict, text).toBeDefined();
  }), { seed: 7, numRuns: 3000 });
});
