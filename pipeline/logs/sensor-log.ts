// A sensor log to per-run values and traces.
import type { Quantity } from '../quantities/index.js';
import { Exact } from '../quantities/index.js';
import { energyValues } from './energy.js';
import type { LogColumn, LogLayout } from './layout.js';
import { ownDecimals, takeOver } from './means.js';
import { type ReadLog, readLog } from './read-log.js';
import { type Scatter, scatterOf } from './scatter.js';
import type { Steady } from './steady-window.js';
import { type StatedFor, throttleValues } from './throttle.js';
import { usualStep, type Window, windowsOf } from './windows.js';
import type { Outcome, Place, Source } from '../places/index.js';

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
  windows: { phase: string; start: number; end: number; steady?: Steady }[];
}

export interface LogResult {
  values: LogValue[];
  traces: LogTrace[];
}

export function sensorLog(source: Source, layout: LogLayout, stated: StatedFor = () => undefined): Outcome<LogResult> {
  const { value: log, findings } = readLog(source, layout);
  if (!log) return { value: undefined, findings };
  const windows = windowsOf(log, layout, source, findings);
  const values: LogValue[] = [];
  const traces: LogTrace[] = [];
  const times = Array.from(log.times);
  layout.columns.forEach((column, i) => {
    const { values: samples, decimals, empty, bad } = log.columns[i]!;
    const { measure, part, unit } = column;
    if (column.phase !== undefined) {
      const constant = oneValue(samples, log.lines, decimals, column, source, log.faults);
      if (constant) values.push({ measure, part, phase: column.phase, ...constant });
      return;
    }
    if (!empty && column.take === 'mean' && grows(samples)) {
      log.faults.add(`counter ${i}`, 'log-counter', 'warning', () => source.wholeLine(log.lines[0]!), `the column "${column.at.name}" only ever grows, as a counter does; a mean of it says little (take: increase gives what was counted)`, { said: column.at.name });
    }
    const step = ownDecimals(samples, decimals);
    for (const w of windows) {
      if (!bad) tellHoles(samples, w, column, log, source);
      const taken = takeOver(samples, w.rows, decimals, unit, column.take, step);
      if (!taken) continue;
      const scatter = column.take === 'mean' ? scatterOf(samples, w.rows, unit) : undefined;
      const [firstLine, lastLine] = [log.lines[w.rows[0]![0]]!, log.lines[w.rows.at(-1)![1] - 1]!];
      values.push({ measure, part, phase: w.phase, ...taken, constant: false, firstLine, lastLine, lasted: { window: w.end - w.start, phase: w.reached }, place: source.wholeLine(firstLine), ...(scatter && { scatter }), ...(w.steady && { steady: w.steady }) });
    }
    traces.push({ measure, part, unit, times, values: Array.from(samples), windows: windows.map(({ phase, start, end, steady }) => ({ phase, start, end, ...(steady && { steady }) })) });
  });
  values.push(...energyValues(log, layout, windows, source), ...throttleValues(log, layout, windows, source, stated));
  tellGaps(log, windows, source);
  return { value: { values, traces }, findings: [...findings, ...log.faults.list()] };
}

/** A stretch without samples inside a window: the mean then leaves out what happened there. */
function tellGaps(log: ReadLog, windows: Window[], source: Source): void {
  const step = usualStep(log.times);
  for (const w of windows) {
    for (const [from, to] of w.rows) {
      for (let i = from + 1; i < to; i++) {
        const gap = log.times[i]! - log.times[i - 1]!;
        if (gap <= 10 * step || gap <= 1) continue;
        const line = log.lines[i]!;
        log.faults.add(`gap ${w.phase}`, 'log-gap', 'warning', () => source.wholeLine(line), `no sample for ${Math.round(gap * 10) / 10} s before this line, within ${w.phase}; the log usually has one every ${Math.round(step * 1000) / 1000} s`);
      }
    }
  }
}

/** A column that is empty on most lines of a window. */
function tellHoles(samples: Float64Array, w: Window, column: LogColumn, log: ReadLog, source: Source): void {
  let filled = 0;
  let all = 0;
  for (const [from, to] of w.rows) {
    for (let i = from; i < to; i++) {
      all++;
      if (!Number.isNaN(samples[i]!)) filled++;
    }
  }
  if (all < 10 || filled === 0 || filled * 2 > all) return;
  const line = log.lines[w.rows[0]![0]]!;
  log.faults.add(`holes ${column.at.name} ${w.phase}`, 'log-holes', 'warning', () => source.wholeLine(line), `the column "${column.at.name}" has a value on only ${filled} of the ${all} lines of ${w.phase}`, { said: column.at.name });
}

type Faults = ReadLog['faults'];

function oneValue(samples: Float64Array, lines: Float64Array, decimals: number, column: LogColumn, source: Source, faults: Faults): Omit<LogValue, 'measure' | 'part' | 'phase'> | undefined {
  const first = samples.findIndex((v) => !Number.isNaN(v));
  if (first < 0) return undefined;
  const odd = samples.findIndex((v) => !Number.isNaN(v) && v !== samples[first]);
  if (odd >= 0) {
    faults.add(`constant ${column.at.name}`, 'log-constant-changes', 'error', () => source.wholeLine(lines[odd]!), `"${column.at.name}" is read as a constant and changes here, from ${samples[first]} to ${samples[odd]}`, { said: column.at.name });
    return undefined;
  }
  const quantity: Quantity = { value: Exact.fromNumber(samples[first]!), unit: column.unit, decimals: wholeNumber(samples[first]!) ? 0 : decimals };
  return { quantity, constant: true, firstLine: lines[first]!, lastLine: lines[first]!, samples: 1, place: source.wholeLine(lines[first]!) };
}

function wholeNumber(x: number): boolean {
  return Number.isInteger(x);
}

/** Never falls, and grows on nearly every line: what counters do and no sensor of the trade. */
function grows(values: Float64Array): boolean {
  let grown = 0;
  let steps = 0;
  let before = NaN;
  for (const v of values) {
    if (Number.isNaN(v)) continue;
    if (v < before) return false;
    if (!Number.isNaN(before)) {
      steps++;
      if (v > before) grown++;
    }
    before = v;
  }
  return steps >= 20 && grown >= 0.95 * steps;
}
