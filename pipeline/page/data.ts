// Every reading, as a table to look at and as CSV and JSON to take away from the page itself.
import { type Facts, splitKey } from '../facts/index.js';

export interface ReadingRow {
  setup: string;
  setting: string;
  workload: string;
  measure: string;
  part: string;
  phase: string;
  run: string;
  value: string;
  unit: string;
  /** Why it was set aside; empty for a reading that counts. */
  aside: string;
}

export const readingsHeader = ['setup', 'setting', 'workload', 'measure', 'part', 'phase', 'run', 'value', 'unit'] as const;

/** In the order of the record, those set aside included. */
export function readingRows(facts: Facts): ReadingRow[] {
  return facts.keys().flatMap((key) => {
    const parts = splitKey(key);
    return parts ? facts.readings(key, { aside: true }).map((r) => ({
      ...parts, run: r.run, value: r.quantity.value.toFixed(r.quantity.decimals), unit: r.quantity.unit.id, aside: r.aside?.reason ?? '',
    })) : [];
  });
}

/**
 * RFC 4180 with the tidy header: CRLF, quotes only where needed. Readings set aside are left out, so that the table gives
 * the means of the page. A cell that a spreadsheet might take for a formula (it starts with = + - @ or a tab and is no
 * number) gets an apostrophe before it, as OWASP advises on CSV injection (from memory); ids of a record never start so.
 */
export function readingsCsv(facts: Facts): string {
  const counted = readingRows(facts).filter((r) => !r.aside);
  return [readingsHeader, ...counted.map((r) => readingsHeader.map((h) => r[h]))].map((cells) => `${cells.map(csvCell).join(',')}\r\n`).join('');
}

function csvCell(text: string): string {
  const number = /^[+-]?\d+(\.\d+)?$/.test(text);
  const safe = !number && /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replace(/"/g, '""')}"` : safe;
}

export function readingsJson(facts: Facts): string {
  return `${JSON.stringify(readingRows(facts), null, 1)}\n`;
}

/** A link that holds its file, so that a saved page still gives its data. */
export function dataUri(mediaType: string, text: string): string {
  return `data:${mediaType};charset=utf-8;base64,${Buffer.from(text, 'utf8').toString('base64')}`;
}
