// What is put into a record leaves every letter of it where it was.
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { addToRecord } from '../../pipeline/records/index.js';

const proposal = `# Proposed
layouts:
  b:
    time: {column: t}
logs:
  - {files: b.csv, layout: b}
parts:
  fan: {name: Fan}
`;
const added = (record: string, more = proposal): string => {
  const result = addToRecord(record, more);
  if ('clash' in result) throw new Error(`clash in ${result.clash.join()}`);
  return result.text;
};

describe('a section that is there', () => {
  test.each<[string, string, string]>([
    ['in blocks', 'parts:\n  core: {name: Core}\n\n# Later\nscript: s.md\n', 'parts:\n  core: {name: Core}\n  fan: {name: Fan}\n\n# Later\nscript: s.md\n'],
    ['indented by four', 'parts:\n    core: {name: Core}\n', 'parts:\n    core: {name: Core}\n    fan: {name: Fan}\n'],
    ['with a comment behind its name', 'parts: # all of them\n  core: {}\n', 'parts: # all of them\n  core: {}\n  fan: {name: Fan}\n'],
    ['with nothing but comments in it', 'parts:\n  # core: {}\nscript: s.md\n', 'parts:\n  # core: {}\n  fan: {name: Fan}\nscript: s.md\n'],
    ['with that name', 'parts:\n  fan: {name: Two fans}\n', 'parts:\n  fan: {name: Two fans}\n'],
    ['as a list of names', 'parts: [core, board]\n', 'parts: [core, board, fan]\n'],
    ['as a map in braces', 'parts: {core: {name: Core}}\n', 'parts: {core: {name: Core}, fan: {name: Fan}}\n'],
    ['empty', 'parts: []\ntitle: T\n', 'parts:\n  fan: {name: Fan}\ntitle: T\n'],
    ['in lines that end as on other systems', 'parts:\r\n  core: {}\r\nscript: s.md\r\n', 'parts:\r\n  core: {}\r\n  fan: {name: Fan}\r\nscript: s.md\r\n'],
  ])('%s', (_, record, expected) => expect(added(record, 'parts:\n  fan: {name: Fan}\n')).toBe(expected));

  test('tables are listed on', () => {
    expect(added('tables: [a.csv]\n', 'tables: [b.csv]\n')).toBe('tables: [a.csv, b.csv]\n');
    expect(added('tables:\n  - a.csv\n', 'tables: [b.csv]\n')).toBe('tables:\n  - a.csv\n  - b.csv\n');
  });

  test('in a form that takes nothing is named, and nothing is changed', () => {
    expect(addToRecord('title: T\nparts:\n  - core\n  - board\n', proposal)).toEqual({ clash: ['parts'] });
    expect(addToRecord('logs: {a: [\n  1]}\n', proposal)).toEqual({ clash: ['logs'] });
  });
});

test('sections that are not there go to the end; all of it is read', () => {
  const text = added('title: T\nlogs:\n  - {files: a.csv, layout: a}\nlayouts:\n  a:\n    time: {column: t}\n\n# the end\n');
  expect(parse(text)).toEqual({
    title: 'T', logs: [{ files: 'a.csv', layout: 'a' }, { files: 'b.csv', layout: 'b' }],
    layouts: { a: { time: { column: 't' } }, b: { time: { column: 't' } } }, parts: { fan: { name: 'Fan' } },
  });
  expect(text).toContain('\n# the end\n');
});
