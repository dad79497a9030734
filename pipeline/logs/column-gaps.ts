// A column that is empty for a while, on lines that are there: its mean leaves out what happened meanwhile.
import type { Lines } from '../places/index.js';
import type { LogColumn } from './layout.js';
import type { ReadLog } from './read-log.js';
import type { Window } from './windows.js';

/** As of lines that are missing: ten times the usual step, and a second at least. */
const many = 10;
const leastSeconds = 1;
/** Buckets of a long log that are read again to find how its gaps begin and end. */
const mostLookedAt = 256;

/** Told at the next line that has a value, or at the last one where none has. Columns that are empty on most lines are told as such. */
export function tellColumnGaps(log: ReadLog, columns: readonly LogColumn[], windows: readonly Window[], source: Lines): void {
  columns.forEach((column, i) => {
    const { empty, bad } = log.columns[i]!;
    if (column.phase !== undefined || empty || bad > 0) return;
    for (const w of windows) {
      const usual = usualStep(log, i, w);
      if (usual === undefined) continue;
      for (const rows of w.rows) {
        for (const { line, seconds } of gapsIn(log, i, rows, Math.max(leastSeconds, many * usual))) {
          log.faults.add(`gap ${i} ${w.phase}`, 'log-gap', 'warning', () => source.wholeLine(line), `the column "${column.at.name}" has no value for ${Math.round(seconds * 10) / 10} s before this line, within ${w.phase}; usually it has one every ${Math.round(usual * 1000) / 1000} s`, { said: column.at.name });
        }
      }
    }
  });
}

/** Seconds from one value of the column to the next; undefined where it has none at all, or on few lines, or on every line. */
function usualStep(log: ReadLog, column: number, w: Window): number | undefined {
  const { figures } = log.columns[column]!;
  let [all, filled] = [0, 0];
  for (const [from, to] of w.rows) {
    for (let b = from; b < to; b++) {
      all += log.rows[b]!;
      filled += figures.filledIn(b);
    }
  }
  return filled === 0 || filled === all || filled * 2 <= all ? undefined : log.step;
}

/** Stretches without a value, in which there are lines; those without lines are told of the log. */
function gapsIn(log: ReadLog, column: number, [from, to]: readonly [number, number], least: number): { line: number; seconds: number }[] {
  const { figures } = log.columns[column]!;
  const gaps: { line: number; seconds: number }[] = [];
  let [last, blank, jumped] = [log.times[from]!, false, 0];
  const next = (t: number, line: number): void => {
    if (blank && t - last - jumped > least) gaps.push({ line, seconds: t - last - jumped });
    [last, blank, jumped] = [t, false, 0];
  };
  let [before, looked] = [0, 0];
  for (let b = from; b < to; b++) {
    const filled = figures.filledIn(b);
    const missing = log.rows[b]! - filled;
    // What is missing of the lines themselves.
    if (b > from && log.steps[b]! > least) jumped += log.steps[b]!;
    if (filled === 0) {
      blank = true;
      continue;
    }
    // As many as lack here and at the end of the one before would have to follow each other.
    const perhaps = blank || (before + missing) * log.step > least || (b + 1 < to && figures.filledIn(b + 1) === 0);
    before = missing;
    if (missing === 0 || !perhaps || looked++ >= mostLookedAt) {
      next(log.times[b]!, log.lines[b]!);
      last = log.ends[b]!;
      continue;
    }
    const { times, lines, values } = log.samplesOf(b);
    times.forEach((t, i) => {
      if (Number.isNaN(values[column]![i]!)) blank = true;
      else next(t, lines[i]!);
    });
  }
  if (blank) next(log.ends[to - 1]!, log.lastLines[to - 1]!);
  return gaps;
}
