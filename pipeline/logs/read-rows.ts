// From the top of a log to its last row: headings, the lines under them, the rows, and what the end turns out to be.
import type { CsvStream } from './csv-stream.js';
import { Faults } from './faults.js';
import type { LogLayout } from './layout.js';
import { findColumns, type LogColumns } from './log-columns.js';
import type { LogText } from './log-text.js';
import { RowReader, type RowSink } from './row-reader.js';
import type { Finding } from '../places/index.js';

export type Read = { reader: RowReader; faults: Faults; columns: LogColumns } | { reader: undefined; findings: Finding[] };

/** The whole log, or so many rows of it, into `sink`; no reader where nothing could be read. */
export function readRows(text: LogText, layout: LogLayout, sink: RowSink, until = Infinity): Read {
  const faults = new Faults(text.file);
  let stream = text.rows(layout);
  const columns = openRows(stream, layout, text, faults);
  const failed = (findings: Finding[]): Read => ({ reader: undefined, findings });
  if (columns && 'lacking' in columns) return failed(columns.lacking);
  if (!columns) {
    const trouble = text.troubleIn(stream);
    if (trouble) return failed([trouble]);
    faults.add('empty', 'log-empty', 'error', () => text.top(), 'the log is empty');
    return failed(faults.list());
  }
  // Without headings the row that told the width is a sample itself.
  if (!layout.header) stream = text.rows(layout);
  const reader = new RowReader(stream, layout, columns, sink, text.file, faults);
  reader.passOver(layout.under);
  reader.run(until);
  if (reader.rows >= until) return { reader, faults, columns };
  const trouble = text.troubleIn(stream);
  if (trouble) return failed([trouble]);
  reader.finish();
  return { reader, faults, columns };
}

/** Reads as far as the first row; undefined where there is none. */
function openRows(stream: CsvStream, layout: LogLayout, text: LogText, faults: Faults): LogColumns | { lacking: Finding[] } | undefined {
  for (;;) {
    const kind = stream.next();
    if (kind === 'end') return undefined;
    if (kind === 'fault') {
      if (layout.header) stream.tell(faults, text.file);
      continue;
    }
    const { columns, lacking } = findColumns(stream.cells, layout, text);
    return lacking.length ? { lacking } : columns;
  }
}
