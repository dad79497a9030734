// The two tables that can stand alone: readings.csv (tidy readings) and names.csv (how things are spoken).
import { parse } from 'csv-parse/sync';
import { type Finding, type Outcome, type Place, Source } from '../places/index.js';
import { findUnit, readNumber } from '../quantities/index.js';
import type { Named, Reading } from './episode.js';
import { type Key, makeKey } from './key.js';

export const readingsHeader = ['setup', 'setting', 'workload', 'measure', 'part', 'phase', 'run', 'value', 'unit'] as const;

/** One row a reading; an empty run is a constant. Every bad row is a finding; the others are still read. */
export function readReadings(source: Source): Outcome<Reading[]> {
  const rows = records(source);
  if (!rows.value) return { value: undefined, findings: rows.findings };
  const findings = rows.findings;
  const readings: Reading[] = [];
  for (const { cells, place } of rows.value.slice(1)) {
    const [setup, setting, workload, measure, part, phase, run, value, unitName] = cells as [string, string, string, string, string, string, string, string, string];
    const number = readNumber(value);
    const unit = findUnit(unitName);
    if (!number) findings.push({ code: 'table-value', severity: 'error', place, message: `"${value}" is not a number` });
    if (!unit) findings.push({ code: 'table-unit', severity: 'error', place, message: `unknown unit "${unitName}"` });
    if (number && unit) readings.push({ key: makeKey({ setup, setting, workload, measure, part, phase }), run, quantity: { ...number, unit }, constant: run === '', place });
  }
  return { value: readings, findings };
}

export type NameKind = 'setup' | 'setting' | 'workload' | 'measure' | 'part' | 'phase';

export function readNames(source: Source): Outcome<(Named & { kind: NameKind })[]> {
  const rows = records(source);
  if (!rows.value) return { value: undefined, findings: rows.findings };
  const names = rows.value.slice(1).map(({ cells: [kind, id, spoken], place }) => {
    const forms = (spoken ?? '').split(';').map((s) => s.trim()).filter(Boolean);
    return { kind: kind as NameKind, id: id!, name: forms[0] ?? id!, spoken: forms, place };
  });
  return { value: names, findings: rows.findings };
}

function records(source: Source): Outcome<{ cells: string[]; place: Place }[]> {
  try {
    const parsed = parse(source.text, { bom: true, info: true, skip_empty_lines: true, record_delimiter: ['\r\n', '\n', '\r'] }) as unknown as { record: string[]; info: { lines: number } }[];
    return { value: parsed.map(({ record, info }) => ({ cells: record, place: source.wholeLine(info.lines) })), findings: [] };
  } catch (error) {
    const e = error as Error & { lines?: number };
    const finding: Finding = { code: 'table-form', severity: 'error', place: source.wholeLine(e.lines ?? 1), message: e.message };
    return { value: undefined, findings: [finding] };
  }
}

/** Groups keys for callers that look readings up by address. */
export function keysOf(readings: Reading[]): Key[] {
  return [...new Set(readings.map((r) => r.key))];
}
