// Reads the tables of outside check values that stand in this folder.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';

export function oracle(file: string): Record<string, string>[] {
  return parse(readFileSync(join(import.meta.dirname, file), 'utf8'), { columns: true, relax_column_count: true }) as Record<string, string>[];
}

export function oracleJson<T>(file: string): T {
  return JSON.parse(readFileSync(join(import.meta.dirname, file), 'utf8')) as T;
}
