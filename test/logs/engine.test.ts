// A second opinion on the figures of a long log, from a database engine. It is no dependency: `.ci/run` installs it, and
// elsewhere `npm install --no-save @duckdb/node-api` does, or DUCKDB names a folder where it is installed.
import { createRequire } from 'node:module';
import { closeSync, openSync, writeSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { disk, LargeFile } from '../../pipeline/files/index.js';
import { LogText } from '../../pipeline/logs/log-text.js';
import { readLog } from '../../pipeline/logs/read-log.js';
import { Exact } from '../../pipeline/quantities/index.js';
import { scratch } from '../files/scratch.js';
import { steady } from './random-logs.js';

type Row = Record<string, string | number>;
interface Engine {
  DuckDBInstance: { create(path: string): Promise<{ connect(): Promise<{ runAndReadAll(sql: string): Promise<{ getRowObjectsJson(): Row[] }> }> }> };
}

const engine = ((): Engine | undefined => {
  try {
    return createRequire(join(process.env.DUCKDB ?? resolve(import.meta.dirname, '../..'), 'package.json'))('@duckdb/node-api') as Engine;
  } catch {
    return undefined;
  }
})();
if (!engine) console.warn('DuckDB is not installed: figures of long logs are not compared with it.');

const rows = 300_000;
const [a, b, c] = [(i: number) => 4000 + ((i * 7919) % 3001), (i: number) => ((i * 104_729) % 90_001) - 20_000, (i: number) => (i % 11 ? 200_000 + ((i * 31) % 977) : undefined)];
const written = (n: number, decimals: number): string => (n / 10 ** decimals).toFixed(decimals);

test.runIf(process.env.CI)('the engine is there where it should be', () => expect(engine).toBeDefined());

describe.runIf(engine)('sums, extremes, counts and scatter of 300,000 samples', () => {
  test('are those of DuckDB: exactly, and the standard deviation to 1e-12', async () => {
    const path = join(scratch(), 'long.csv');
    const fd = openSync(path, 'w');
    writeSync(fd, 't,phase,a,b,c\n');
    for (let from = 0; from < rows; from += 10_000) {
      writeSync(fd, Array.from({ length: 10_000 }, (_, k) => {
        const i = from + k;
        const third = c(i);
        return `${i},load,${written(a(i), 2)},${written(b(i), 3)},${third === undefined ? '' : written(third, 1)}\n`;
      }).join(''));
    }
    closeSync(fd);
    const text = LogText.open('long.csv', new LargeFile(path, disk, 0));
    if (!(text instanceof LogText)) throw new Error(text.message);
    const { value, findings } = readLog(text, steady);
    expect(findings).toEqual([]);
    const connection = await (await engine!.DuckDBInstance.create(':memory:')).connect();
    const types = `{'t': 'BIGINT', 'phase': 'VARCHAR', 'a': 'DECIMAL(18,2)', 'b': 'DECIMAL(18,3)', 'c': 'DECIMAL(18,1)'}`;
    const query = ['a', 'b', 'c'].map((n) => `SELECT sum(${n})::VARCHAR AS total, min(${n})::VARCHAR AS least, max(${n})::VARCHAR AS most, count(${n}) AS filled, stddev_samp(${n}::DOUBLE) AS sd FROM log`).join(' UNION ALL ');
    const theirs = (await connection.runAndReadAll(`WITH log AS (SELECT * FROM read_csv('${path}', auto_detect = false, header = true, columns = ${types})) ${query}`)).getRowObjectsJson();
    theirs.forEach((row, i) => {
      const { figures } = value!.columns[i]!;
      const span = figures.span([[0, value!.times.length]]);
      expect(span.sum.equals(Exact.parse(String(row.total))!), `${span.sum.toString()} and ${row.total}`).toBe(true);
      expect([span.min, span.max, span.count]).toEqual([Number(row.least), Number(row.most), Number(row.filled)]);
      const sd = Math.sqrt(span.squares / (span.count - 1));
      expect(Math.abs(sd / Number(row.sd) - 1)).toBeLessThan(1e-12);
    });
    expect(theirs.length).toBe(3);
  });
});
