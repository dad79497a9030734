// A sensor log to per-run values and traces.
import type { Quantity } from '../quantities/index.js';
import { Exact } from '../quantities/index.js';
import { tellColumnGaps } from './column-gaps.js';
import { energyValues } from './energy.js';
import { withPhases } from './found-phases.js';
import type { LogColumn, LogLayout } from './layout.js';
import type { LogText } from './log-text.js';
import { takeOver } from './means.js';
import { type ReadColumn, type ReadLog, readLog } from './read-log.js';
import { type Scatter, scatterOf } from './scatter.js';
import { tellCutNumber } from './cut-number.js';
import { tellSensorFaults } from './sensor-faults.js';
import type { Steady } from './steady-window.js';
import { type StatedFor, throttleValues } from './throttle.js';
import { type Window, windowsOf } from './windows.js';
import type { Lines, Outcome, Place } from '../places/index.js';

export interface LogValue {
  measure: string;
  part: string;
  phase: string;
  quantity: Quantity;
  /** A constant that the log repeats on every line. */
  constant: boolean;
  firstLine: number;
  lastLine: number;
  samples: number;
  /** Seconds that the window lasts, and that its phase had lasted at the window's end; undefined for a constant. */
  lasted?: { window: number; phase: number };
  place: Place;
  /** Of a mean: what is known of it from this window alone. */
  scatter?: Scatter;
  steady?: Steady;
  /** How it came of the samples, where it is no mean of them. */
  how?: string;
}

export interface LogTrace {
  measure: string;
  part: string;
  unit: LogColumn['unit'];
  times: readonly number[];
  values: readonly number[];
  /** Of a long log, whose values are means over short stretches: the lowest and the highest in each. */
  lows?: readonly number[];
  highs?: readonly number[];
  windows: { phase: string; start: number; end: number; steady?: Steady }[];
}

export interface LogResult {
  values: LogValue[];
  traces: LogTrace[];
}

/** `most` is how many buckets a long log is held in. */
export function sensorLog(source: LogText, written: LogLayout, stated: StatedFor = () => undefined, most?: number): Outcome<LogResult> {
  const { value: read, findings } = readLog(source, written, most);
  if (!read) return { value: undefined, findings };
  const { log, layout } = withPhases(read, written, source);
  const windows = windowsOf(log, layout, source, findings);
  const values: LogValue[] = [];
  const traces: LogTrace[] = [];
  const times = Array.from(log.times, (t, b) => (t + log.ends[b]!) / 2);
  layout.columns.forEach((column, i) => {
    const { values: samples, decimals, empty, bad, figures } = log.columns[i]!;
    const { measure, part, unit } = column;
    if (column.phase !== undefined) {
      const constant = oneValue(log.columns[i]!, column, source, log.faults);
      if (constant) values.push({ measure, part, phase: column.phase, ...constant });
      return;
    }
    if (!empty && column.take === 'mean' && unit.dimension !== 'temperature' && grows(log.columns[i]!)) {
      log.faults.add(`counter ${i}`, 'log-counter', 'warning', () => source.wholeLine(log.lines[0]!), `the column "${column.at.name}" only ever grows, as a counter does; a mean of it says little (take: increase gives what was counted)`, { said: column.at.name });
    }
    for (const w of windows) {
      const span = figures.span(w.rows);
      if (!bad) tellHoles(span.count, w, column, log, source);
      const taken = takeOver(span, decimals, unit, column.take, figures.own);
      if (!taken) {
        if (span.count > 0) log.faults.add(`level ${i}`, 'log-value', 'error', () => source.wholeLine(log.lines[w.rows[0]![0]]!), `the column "${column.at.name}" has levels of up to ${span.max} ${unit.symbol} in ${w.phase}; nothing sounds so`, { said: String(span.max) });
        continue;
      }
      const scatter = column.take === 'mean' ? scatterOf(samples, w.rows, unit) : undefined;
      const [firstLine, lastLine] = [log.lines[w.rows[0]![0]]!, log.lastLines[w.rows.at(-1)![1] - 1]!];
      values.push({ measure, part, phase: w.phase, ...taken, constant: false, firstLine, lastLine, lasted: { window: w.end - w.start, phase: w.reached }, place: source.wholeLine(firstLine), ...(scatter && { scatter }), ...(w.steady && { steady: w.steady }) });
    }
    const many = log.rows.some((n) => n > 1) && { lows: Array.from(samples, (_, b) => figures.low(b)), highs: Array.from(samples, (_, b) => figures.high(b)) };
    traces.push({ measure, part, unit, times, values: Array.from(samples), ...many, windows: windows.map(({ phase, start, end, steady }) => ({ phase, start, end, ...(steady && { steady }) })) });
  });
  values.push(...energyValues(log, layout, windows, source), ...throttleValues(log, layout, windows, source, stated));
  tellGaps(log, windows, source);
  tellColumnGaps(log, layout.columns, windows, source);
  tellSensorFaults(log, layout, windows, source);
  tellCutNumber(log.lastLines.at(-1) ?? 0, layout.delimiter, source, log.faults);
  return { value: { values, traces }, findings: [...findings, ...log.faults.list()] };
}

/** A stretch without samples inside a window: the mean then leaves out what happened there. */
function tellGaps(log: ReadLog, windows: Window[], source: Lines): void {
  const least = Math.max(10 * log.step, 1);
  for (const w of windows) {
    for (const [from, to] of w.rows) {
      for (let b = from; b < to; b++) {
        if (log.steps[b]! <= least) continue;
        const { times, lines } = log.samplesOf(b);
        times.forEach((t, i) => {
          const gap = i > 0 ? t - times[i - 1]! : b > from ? t - log.ends[b - 1]! : 0;
          if (gap <= least) return;
          log.faults.add(`gap ${w.phase}`, 'log-gap', 'warning', () => source.wholeLine(lines[i]!), `no sample for ${Math.round(gap * 10) / 10} s before this line, within ${w.phase}; the log usually has one every ${Math.round(log.step * 1000) / 1000} s`);
        });
      }
    }
  }
}

/** A column that is empty on most lines of a window. */
function tellHoles(filled: number, w: Window, column: LogColumn, log: ReadLog, source: Lines): void {
  let all = 0;
  for (const [from, to] of w.rows) for (let b = from; b < to; b++) all += log.rows[b]!;
  if (all < 10 || filled === 0 || filled * 2 > all) return;
  const line = log.lines[w.rows[0]![0]]!;
  log.faults.add(`holes ${column.at.name} ${w.phase}`, 'log-holes', 'warning', () => source.wholeLine(line), `the column "${column.at.name}" has a value on only ${filled} of the ${all} lines of ${w.phase}`, { said: column.at.name });
}

type Faults = ReadLog['faults'];

function oneValue({ figures: { filled, changed, firstValue, firstLine }, decimals }: ReadColumn, column: LogColumn, source: Lines, faults: Faults): Omit<LogValue, 'measure' | 'part' | 'phase'> | undefined {
  if (filled === 0) return undefined;
  if (changed) {
    faults.add(`constant ${column.at.name}`, 'log-constant-changes', 'error', () => source.wholeLine(changed.line), `"${column.at.name}" is read as a constant and changes here, from ${firstValue} to ${changed.value}`, { said: column.at.name });
    return undefined;
  }
  const quantity: Quantity = { value: Exact.fromNumber(firstValue), unit: column.unit, decimals: Number.isInteger(firstValue) ? 0 : decimals };
  return { quantity, constant: true, firstLine, lastLine: firstLine, samples: 1, place: source.wholeLine(firstLine) };
}

/** Never falls, and grows on nearly every line: what counters do and no sensor of the trade. */
function grows({ figures: { steps: { all, grown, fell } } }: ReadColumn): boolean {
  return !fell && all >= 20 && grown >= 0.95 * all;
}
