// Which of a log's columns are wanted, and where they stand in its rows.
import { type Finding, nameInRecord, nearest } from '../places/index.js';
import type { ColumnName, LogLayout } from './layout.js';
import type { LogText } from './log-text.js';
import { number, unread, word } from './plain-row.js';

export interface LogColumns {
  width: number;
  headings: string[] | undefined;
  /** In the order of the layout's columns; the frame column last, where there is one. */
  at: number[];
  /** -1 where there is none. */
  timeAt: number;
  phaseAt: number;
  /** What `PlainRow` is to read of each; undefined where one is wanted both as a number and as a word. */
  kinds: Uint8Array | undefined;
}

export function wantedColumns(layout: LogLayout): ColumnName[] {
  return [...layout.columns.map((c) => c.at), ...(layout.frames ? [layout.frames.at] : [])];
}

/** A column that the log lacks is the record's error. */
export function findColumns(row: readonly string[], layout: LogLayout, text: LogText): { columns: LogColumns; lacking: Finding[] } {
  const width = row.length;
  const headings = layout.header ? row.map((h) => h.trim()) : undefined;
  const lacking: Finding[] = [];
  const find = (name: ColumnName): number => {
    const index = headings ? headings.indexOf(name.name) : -1;
    const found = index < 0 && /^\d+$/.test(name.name) ? Number(name.name) - 1 : index;
    if (found >= 0 && found < width) return found;
    const near = headings && nearest(name.name, headings);
    lacking.push({
      code: 'log-column', severity: 'error', place: name.place, said: name.name, subject: text.file,
      message: headings
        ? `${nameInRecord(text.file)} has no column "${name.name}"; ${near ? `did you mean "${near}"?` : `it has ${headings.map((h) => `"${h}"`).slice(0, 12).join(', ')}${headings.length > 12 ? ' …' : ''}`}`
        : `${nameInRecord(text.file)} has ${count(width, 'column')} and, by its layout, no headings; "${name.name}" is no number from 1 to ${width}`,
      ...(near && { suggest: near }),
      ...(headings && { related: [{ place: text.wholeLine(1 + layout.skip), label: 'its headings' }] }),
    });
    return -1;
  };
  const at = wantedColumns(layout).map(find);
  const timeAt = layout.time && layout.time.kind !== 'steps' ? find(layout.time.at) : -1;
  const phaseAt = layout.phaseColumn ? find(layout.phaseColumn.at) : -1;
  const numbers = [...at, ...(layout.time?.kind === 'elapsed' ? [timeAt] : [])];
  const words = [phaseAt, ...(layout.time?.kind === 'elapsed' ? [] : [timeAt])];
  return { columns: { width, headings, at, timeAt, phaseAt, kinds: kindsOf(width, numbers, words) }, lacking };
}

function kindsOf(width: number, numbers: readonly number[], words: readonly number[]): Uint8Array | undefined {
  const kinds = new Uint8Array(width).fill(unread);
  let slot = 0;
  for (const i of numbers) if (i >= 0 && kinds[i] === unread) kinds[i] = number + slot++;
  if (slot > 250) return undefined;
  for (const i of words) {
    if (i < 0) continue;
    if (kinds[i]! >= number) return undefined;
    kinds[i] = word;
  }
  return kinds;
}

export function count(n: number, noun: string): string {
  return `${n} ${noun}${n === 1 ? '' : 's'}`;
}
