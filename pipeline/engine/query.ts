// The question as DuckDB's SQL. Every option that it would guess is said, and no cell that it would repair passes.
import type { Question } from './question.js';

/** Whole numbers of up to 18 digits fit into 64 bits. */
const digits = 18;

/** By row: block, rows, then of each column count, sum, least, most and sum of squares. Undefined for a path that DuckDB would take for a pattern. */
export function queryOf(q: Question): string | undefined {
  if (/[*?[\]{}]/.test(q.path)) return undefined;
  return `SELECT n // ${q.block} AS block, count(*)::DOUBLE, ${q.columns.map(({ at }) => figuresOf(`c${at}`)).join(', ')}
FROM (SELECT row_number() OVER () - 1 AS n, * FROM ${fileOf(q)}) GROUP BY block`;
}

function figuresOf(c: string): string {
  return `count(${c})::DOUBLE, sum(${c})::DOUBLE, min(${c})::DOUBLE, max(${c})::DOUBLE, sum(${c} * ${c})`;
}

function fileOf(q: Question): string {
  const wanted = new Map(q.columns.map((c) => [c.at, c.decimals]));
  const types = Array.from({ length: q.width }, (_, i) => `'c${i}': '${wanted.has(i) ? `DECIMAL(${digits},${wanted.get(i)})` : 'VARCHAR'}'`);
  return `read_csv(${quoted(q.path)}, auto_detect = false, header = false, skip = ${q.skip}, delim = ${quoted(q.delimiter)}, quote = '', escape = '', comment = '', nullstr = [${['', ...q.missing].map(quoted).join(', ')}], null_padding = false, ignore_errors = false, strict_mode = true, compression = 'none', buffer_size = 8388608, hive_partitioning = false, columns = {${types.join(', ')}})`;
}

function quoted(text: string): string {
  return `'${text.replaceAll("'", "''")}'`;
}
