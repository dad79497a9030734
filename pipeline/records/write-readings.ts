// Readings back to a table that the record reader takes: every value as it was written, one row a run.
import type { Reading } from './episode.js';
import { type Key, keyFields, splitKey } from './key.js';
import { readingsHeader } from './tables.js';

export interface ReadingSource {
  keys(): Key[];
  readings(key: Key, options?: { aside?: boolean }): Reading[];
}

/** RFC 4180, with CRLF. Runs set aside are there, with their reason in a column `note` that the others leave empty. */
export function writeReadings(of: ReadingSource): string {
  const all = of.keys().flatMap((key) => of.readings(key, { aside: true }));
  const notes = all.some((r) => r.aside);
  const rows = all.map((r) => {
    const parts = splitKey(r.key)!;
    const { value, unit, decimals } = r.quantity;
    const text = value.round(decimals).equals(value) ? value.toFixed(decimals) : value.toString();
    return [...keyFields.map((f) => parts[f]), r.run, text, unit.id, ...(notes ? [r.aside ? `set aside: ${r.aside.reason}` : ''] : [])];
  });
  return [[...readingsHeader, ...(notes ? ['note'] : [])], ...rows].map((cells) => `${cells.map(quoted).join(',')}\r\n`).join('');
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
