// What DuckDB is asked: every option said, nothing guessed, and no path or cell that could be taken for something else.
import { describe, expect, test } from 'vitest';
import { ask } from '../../pipeline/engine/index.js';
import { queryOf } from '../../pipeline/engine/query.js';
import { scratch } from '../files/scratch.js';
import { duckdb } from '../logs/duckdb.js';

const question = { path: '/tmp/a.csv', delimiter: ';', skip: 2, width: 3, columns: [{ at: 2, decimals: 3 }], missing: ["n'a"], block: 64 };

test('columns are decimals of as many digits as 64 bits hold, what is not wanted is text', () => {
  const query = queryOf(question)!;
  expect(query).toContain("columns = {'c0': 'VARCHAR', 'c1': 'VARCHAR', 'c2': 'DECIMAL(18,3)'}");
  expect(query).toContain("nullstr = ['', 'n''a']");
  for (const said of ['auto_detect = false', 'header = false', 'skip = 2', "delim = ';'", "quote = ''", 'null_padding = false', 'ignore_errors = false', 'strict_mode = true']) expect(query).toContain(said);
});

test.each(['a*.csv', 'a?.csv', 'a[1].csv', '{a,b}.csv'])('the path %s, a pattern to DuckDB, is not asked for', (path) => {
  expect(queryOf({ ...question, path })).toBeUndefined();
  expect(typeof ask('/nowhere/package.json', { ...question, path }).answer()).toBe('string');
});

test('an engine that is not there says so', () => expect(ask(`${scratch()}/package.json`, question).answer()).toMatch(/Cannot find module/));

describe.runIf(duckdb)('figures of blocks', () => {
  const asked = (text: string, more = {}) => ask(duckdb!, { ...question, path: `${scratch({ "it's.csv": text })}/it's.csv`, columns: [{ at: 2, decimals: 1 }], block: 2, ...more });
  test('counted by hand', () => {
    const answer = asked("units\nt;x;a\n0;é;1.5\n1;;-2.5\n2;y;n'a\n3;y;4\n4;y;\n").answer();
    if (typeof answer === 'string') throw new Error(answer);
    const { counts, sums, least, most, squares } = answer.columns[0]!;
    expect([...answer.rows]).toEqual([2, 2, 1]);
    expect([...counts]).toEqual([2, 1, 0]);
    expect([...sums].slice(0, 2)).toEqual([-10, 40]);
    expect([least[0], most[0], least[1]]).toEqual([-25, 15, 40]);
    expect([...squares].slice(0, 2)).toEqual([850n, 1600n]);
  });
  test.each(['a row too short', 'a row too long', 'a text'])('%s is refused', (what) => {
    const bad = { 'a row too short': '1;2', 'a row too long': '1;2;3;4', 'a text': '1;2;off' }[what]!;
    expect(asked(`u\nt;x;a\n0;1;2\n${bad}\n2;1;2\n`).answer()).toMatch(/Error/);
  });
  test('it can be stopped', () => expect(asked(`u\nt;x;a\n${'0;1;2\n'.repeat(200_000)}`).stop()).toBeUndefined());
});
