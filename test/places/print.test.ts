import { stripVTControlCharacters } from 'node:util';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { excerpt, type Finding, harmless, inOrder, type Place, type PrintOptions, printFinding, Source, width, wrap } from '../../pipeline/places/index.js';

function options(text: string, columns = 80): PrintOptions {
  const source = new Source('data/a/episode.yaml', text);
  return { columns, ink: (_ink, t) => t, line: (file, line) => (file === source.file ? source.line(line) : undefined), path: (file) => file };
}

const at = (line: number, column: number, endColumn: number, endLine = line): Place => ({ file: 'data/a/episode.yaml', line, column, endLine, endColumn });

test('a whole finding', () => {
  const finding: Finding = {
    code: 'stated-value', severity: 'error', place: at(2, 5, 9), message: 'says 29 K, the record gives 28.7 K (67.3 − 38.3)', slip: 'a digit was swapped', suggest: '28.7 K',
    related: [14, 15, 16].map((line, i) => ({ label: `run ${i + 1}`, place: { ...at(line, 1, 5), file: 'data/a/readings.csv' } })),
  };
  expect(printFinding(finding, options('a: 1\nis: 29 K\n'))).toEqual([
    'error stated-value data/a/episode.yaml:2:5',
    '  says 29 K, the record gives 28.7 K (67.3 − 38.3)',
    '  2 | is: 29 K',
    '    |     ^^^^',
    '  likely: a digit was swapped',
    '  write instead: 28.7 K',
    '  see: data/a/readings.csv:14 (run 1), :15 (run 2), :16 (run 3)',
  ]);
});

test('an accepted finding says so and why', () => {
  const finding: Finding = { code: 'room-differs', severity: 'warning', place: at(1, 1, 2), message: 'm', accepted: { reason: 'known', place: at(7, 1, 2) } };
  const lines = printFinding(finding, options('a'));
  expect(lines[0]).toBe('accepted warning room-differs data/a/episode.yaml:1:1');
  expect(lines.at(-1)).toBe('  accepted because: known (data/a/episode.yaml:7:1)');
});

test.each<[string, string, number, number, string, string]>([
  ['plain', 'abc def', 5, 8, 'abc def', '    ^^^'],
  ['an empty span is one mark', 'abc', 2, 2, 'abc', ' ^'],
  ['past the end of the line', 'abc', 4, 5, 'abc', '   ^'],
  ['a tab opens to the next stop', '\tab\tcd', 5, 7, '    ab  cd', '        ^^'],
  ['wide characters take two columns', '温度: 12', 5, 7, '温度: 12', '      ^^'],
  ['a wide span', 'a: 温度', 4, 6, 'a: 温度', '   ^^^^'],
  ['combining marks take none', 'a\u0308b cd', 5, 7, 'a\u0308b cd', '   ^^'],
  ['an emoji of several code points', '👩‍🔧 x', 7, 8, '👩‍🔧 x', '   ^'],
  ['control characters cannot repaint the terminal', '\x1b[31mred x', 10, 11, '␛[31mred x', '         ^'],
])('%s', (_name, text, from, to, line, mark) => {
  expect(excerpt(at(1, from, to), options(text))).toEqual([`  1 | ${line}`, `    | ${mark}`]);
});

test('a span over several lines says where it ends', () => {
  expect(excerpt(at(1, 3, 2, 4), options('a: {\nb\nc\n}'))).toEqual(['  1 | a: {', '    |   ^^ (to line 4)']);
});

test.each([1, 40, 200, 380])('a long line is cut around a span at column %d, and the mark stays under it', (column) => {
  const text = `${'x'.repeat(column - 1)}SPAN${'y'.repeat(400 - column)}`;
  for (const columns of [40, 60, 80, 120]) {
    const [line, mark] = excerpt(at(1, column, column + 4), options(text, columns)) as [string, string];
    expect(width(line)).toBeLessThanOrEqual(columns);
    expect(line.slice(mark.indexOf('^'), mark.lastIndexOf('^') + 1)).toBe('SPAN');
  }
});

test('a span longer than the terminal is cut as well', () => {
  const lines = excerpt(at(1, 11, 311), options(`key: value${'z'.repeat(300)} end`, 60));
  for (const l of lines) expect(width(l)).toBeLessThanOrEqual(60);
});

test('a file that is not at hand has no excerpt', () => {
  expect(excerpt({ ...at(1, 1, 2), file: 'other' }, options('a'))).toEqual([]);
});

test('messages are wrapped, and no name in them can reach the terminal raw', () => {
  const lines = printFinding({ code: 'c', severity: 'note', place: at(1, 1, 2), message: `${'word '.repeat(40)}\x1b]0;title\x07 \u202etxet` }, options('a', 50));
  for (const l of lines) {
    expect(width(l)).toBeLessThanOrEqual(50);
    expect(l).toBe(stripVTControlCharacters(l));
    expect(l).not.toMatch(/[\x00-\x1f\u202e]/);
  }
});

test('worst first, then by place; accepted last', () => {
  const f = (code: string, severity: Finding['severity'], line: number, accepted = false): Finding => ({ code, severity, place: at(line, 1, 1), message: '', ...(accepted && { accepted: { reason: 'r', place: at(1, 1, 1) } }) });
  const sorted = inOrder([f('a', 'note', 1), f('b', 'error', 9, true), f('c', 'warning', 3), f('d', 'error', 8), f('e', 'error', 2)]);
  expect(sorted.map((x) => x.code)).toEqual(['e', 'd', 'c', 'a', 'b']);
});

// Widths after Unicode Standard Annex 11 (East Asian Width W and F take two columns); samples chosen from its character classes.
test.each([['abc', 3], ['温', 2], ['ｱ', 1], ['Ａ', 2], ['한', 2], ['é', 1], ['e\u0301', 1], ['\u200b', 0], ['🔥', 2], ['−', 1], ['°C', 2], ['', 0]])('width of %j', (text, columns) => {
  expect(width(text)).toBe(columns);
});

test('wrapping keeps words whole', () => {
  expect(wrap('one two three', 7)).toEqual(['one two', 'three']);
  expect(wrap('extraordinarily long', 5)).toEqual(['extraordinarily', 'long']);
  expect(harmless('tab\tstays')).toBe('tab\tstays');
});

test('a warning is followed by what the record says to accept it, ready to be copied, where a record does', () => {
  const warning = (subject: string | undefined, severity: Finding['severity'] = 'warning', code = 'runs-disagree'): Finding => ({ code, severity, place: at(1, 1, 2), message: 'm', ...(subject && { subject }) });
  const accepting = (f: Finding, columns: number): string[] => printFinding(f, { ...options('a', columns), acceptable: true }).slice(4);
  for (const subject of ['room', 'bench/stock/loop/temperature/core/load', '///fan_duty/fan/', 'mean:bench/stock/loop/temperature/core/load', 'rise:a/b/c/d/e/f~phase=idle, x', 'says "two"', 'true', '12', 'no']) {
    for (const columns of [40, 80, 160]) {
      const lines = accepting(warning(subject), columns);
      // As a person copies it: from the brace on, below `accept:`.
      const copied = `accept:\n  - ${lines.join('\n').replace(/^ *accept: /, '')}`;
      expect(parse(copied), copied).toEqual({ accept: [{ finding: 'runs-disagree', subject, reason: '…' }] });
    }
  }
  for (const f of [warning(undefined), warning('a', 'note'), warning('a', 'error'), warning('a', 'warning', 'accept-unused'), { ...warning('a'), accepted: { reason: 'r', place: at(1, 1, 2) } }]) expect(accepting(f, 80).join()).not.toContain('accept:');
  expect(printFinding(warning('a'), options('a')).join()).not.toContain('accept:');
});

test('what was shown just above is not shown again', () => {
  const finding: Finding = { code: 'a', severity: 'warning', place: at(1, 1, 2), message: 'one', slip: 'cooling down' };
  const look = options('abc');
  expect(printFinding({ ...finding, message: 'two' }, look, finding)).toEqual(['warning a data/a/episode.yaml:1:1', '  two']);
  expect(printFinding({ ...finding, code: 'b', message: 'two' }, look, finding)).toContain('  likely: cooling down');
  expect(printFinding({ ...finding, place: at(1, 2, 3), message: 'two' }, look, finding)).toContain('  1 | abc');
});
