// A log to its columns over time, in one reading however long it is; every fault in its place.
import { Buckets } from './buckets.js';
import type { Column } from './column.js';
import { cutTimes } from './cuts.js';
import { withEngine } from './engine-log.js';
import type { Faults } from './faults.js';
import { FrameStore } from './frame-store.js';
import { isLevel, type LogLayout } from './layout.js';
import { wantedColumns } from './log-columns.js';
import type { LogText } from './log-text.js';
import { type Read, readRows } from './read-rows.js';
import type { RowSink } from './row-reader.js';
import { readAgain } from './second-reading.js';
import { usualStep } from './usual-step.js';
import type { Finding } from '../places/index.js';

export interface ReadColumn {
  /** By bucket: the sample, or the mean of several; NaN where there is none. */
  values: Float64Array;
  /** Most decimals written in any of its cells. */
  decimals: number;
  empty: boolean;
  /** Cells that hold something else than a number. */
  bad: number;
  /** Exact figures of its buckets. */
  figures: Column;
}

/**
 * A log as buckets of samples that follow each other: one each as long as there are few (`Buckets`), and borders where a
 * phase changes and where a window of the layout begins or ends. What is said "by bucket" has an entry for each.
 */
export interface ReadLog {
  /** By bucket, seconds of its first and last sample; for clock and ISO times, and for elapsed times beyond a day, from the first line. */
  times: Float64Array;
  ends: Float64Array;
  /** By bucket, lines of its first and last sample in the file, from 1. */
  lines: Float64Array;
  lastLines: Float64Array;
  /** By bucket, how many samples it has. */
  rows: Float64Array;
  /** By bucket, the longest step to a sample from the one before it, in seconds. */
  steps: Float64Array;
  /** Seconds from one sample to the next, usually. */
  step: number;
  /** By bucket, what the phase column says; empty where there is none. */
  phases: string[];
  /** In the order of the layout's columns. */
  columns: ReadColumn[];
  faults: Faults;
  /** Times, lines and, by column, values of the samples of one bucket; NaN where there is none. */
  samplesOf(bucket: number): { times: readonly number[]; lines: readonly number[]; values: readonly (readonly number[])[] };
}

export interface ReadFrames {
  values: Float64Array;
  lines: Float64Array;
  decimals: number;
  /** Cells that hold something else than a number. */
  bad: number;
  /** Where its times leap, and their usual step in seconds. */
  jumps: FrameStore['jumps'];
  step: number;
  faults: Faults;
}

/** Undefined where no sample could be read at all. `most` is how many buckets there may be. */
export function readLog(text: LogText, layout: LogLayout, most?: number): { value: ReadLog | undefined; findings: Finding[] } {
  const { buckets, read } = withEngine(text, layout, most) ?? strictly(text, layout, most);
  if (!read.reader) return { value: undefined, findings: read.findings };
  const { reader, faults, columns } = read;
  text.anchor(buckets.lines, buckets.positions, buckets.count);
  if (!tellColumns(text, layout, buckets, faults)) return { value: undefined, findings: faults.list() };
  const again = (b: number) => readAgain(text, layout, columns, buckets, b, reader.first);
  if (!buckets.whole) for (const { bucket, at, samples } of cutTimes(layout, buckets, reader.runs, again)) buckets.split(bucket, at, samples);
  const n = buckets.count;
  text.anchor(buckets.lines, buckets.positions, n);
  const { trouble } = text;
  if (trouble) return { value: undefined, findings: [trouble] };
  return {
    value: {
      times: buckets.first.subarray(0, n), ends: buckets.last.subarray(0, n), lines: buckets.lines.subarray(0, n), lastLines: buckets.lastLines.subarray(0, n),
      rows: buckets.rows.subarray(0, n), steps: buckets.steps.subarray(0, n), step: usualStep(buckets.early), faults,
      phases: layout.phaseColumn ? Array.from({ length: n }, (_, b) => reader.runs[buckets.runs[b]! - 1]!) : [],
      columns: buckets.columns.map((c) => ({ values: Float64Array.from({ length: n }, (_, b) => c.mean(b)), decimals: c.decimals, empty: c.filled === 0, bad: c.bad, figures: c })),
      samplesOf: (b) => (buckets.rows[b] === 1 ? { times: [buckets.first[b]!], lines: [buckets.lines[b]!], values: buckets.columns.map((c) => [c.mean(b)]) } : again(b)),
    },
    findings: [],
  };
}

function strictly(text: LogText, layout: LogLayout, most?: number): { buckets: Buckets; read: Read } {
  const buckets = new Buckets(layout.columns.map(isLevel), text.likelyLines, most);
  const read = readRows(text, layout, buckets);
  buckets.settle();
  return { buckets, read };
}

/** The frame column of a log whole, as frames are few for their bytes: sixteen bytes a frame. Of times only leaps longer than `jump` seconds are kept. */
export function readFrames(text: LogText, layout: LogLayout, jump: number): { value: ReadFrames | undefined; findings: Finding[] } {
  const store = new FrameStore(layout.time && layout.time.kind !== 'steps' ? jump : Infinity);
  const read = readRows(text, { ...layout, columns: [] }, store);
  if (!read.reader) return { value: undefined, findings: read.findings };
  const { faults } = read;
  text.anchor(store.anchorLines, store.anchorPositions, store.anchorLines.length);
  if (!tellColumns(text, { ...layout, columns: [] }, store, faults)) return { value: undefined, findings: faults.list() };
  return { value: { values: store.values, lines: store.lines, decimals: store.decimals, bad: store.bad, jumps: store.jumps, step: usualStep(store.early), faults }, findings: [] };
}

/** False where there is no sample. */
function tellColumns(text: LogText, layout: LogLayout, sink: RowSink & { total: number; columns: readonly { filled: number; bad: number }[]; lines: Float64Array }, faults: Faults): boolean {
  const samples = sink.total;
  if (samples === 0) {
    if (faults.list().length === 0) faults.add('empty', 'log-empty', 'error', () => text.wholeLine(1), 'the log has headings and no samples');
    return false;
  }
  wantedColumns(layout).forEach(({ name }, i) => {
    const { filled, bad } = sink.columns[i]!;
    if (filled > 0 || bad === 0) return;
    faults.drop(`value ${i}`);
    faults.drop(`finite ${i}`);
    faults.add(`text ${i}`, 'log-text-column', 'error', () => text.wholeLine(sink.lines[0]!), `the column "${name}" holds no number in ${samples} line${samples === 1 ? '' : 's'}; name what stands for "no value" under missing, or leave the column out`, { said: name });
  });
  return true;
}
