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

/** In the order of the record, those set aside included. */
export function readingRows(facts: Facts): ReadingRow[] {
  return facts.keys().flatMap((key) => {
    const parts = splitKey(key);
    return parts ? facts.readings(key, { aside: true }).map((r) => ({
      ...parts, run: r.run, value: r.quantity.value.toFixed(r.quantity.decimals), unit: r.quantity.unit.id, aside: r.aside?.reason ?? '',
    })) : [];
  });
}

export function readingsJson(facts: Facts): string {
  return `${JSON.stringify(readingRows(facts), null, 1)}\n`;
}

/** A link that holds its file, so that a saved page still gives its data. */
export function dataUri(mediaType: string, text: string): string {
  return `data:${mediaType};charset=utf-8;base64,${Buffer.from(text, 'utf8').toString('base64')}`;
}
