// The whole of each phase, where a window is only the stretch that is averaged: what adds up, adds up over all of it.
import type { LogLayout } from './layout.js';
import type { ReadLog } from './read-log.js';
import type { Window } from './windows.js';

export interface WholePhase {
  phase: string;
  /** Rows [from, to), in order. */
  rows: [from: number, to: number][];
}

/** By the phase column; or all of a log that is one phase; or else each window is its phase. */
export function wholePhases(log: ReadLog, layout: LogLayout, windows: readonly Window[]): WholePhase[] {
  if (!layout.phaseColumn && layout.phase !== undefined) return [{ phase: layout.phase, rows: [[0, log.times.length]] }];
  if (!layout.phaseColumn) return windows.map(({ phase, rows }) => ({ phase, rows }));
  const { map } = layout.phaseColumn;
  const phases = new Map<string, WholePhase['rows']>();
  for (let i = 0; i < log.phases.length;) {
    const said = log.phases[i]!;
    let j = i + 1;
    while (j < log.phases.length && log.phases[j] === said) j++;
    const phase = map ? map.get(said) : said;
    if (phase !== undefined && phase !== 'skip' && phase !== '') phases.set(phase, [...(phases.get(phase) ?? []), [i, j]]);
    i = j;
  }
  return [...phases].map(([phase, rows]) => ({ phase, rows }));
}

/** What was done for the sake of the test: idle is what it is compared with, unless the log has nothing else. */
export function busyPhases(phases: readonly WholePhase[]): WholePhase[] {
  const busy = phases.filter((p) => p.phase !== 'idle');
  return busy.length ? busy : [...phases];
}

/** A step between two samples longer than this is a gap, in seconds: ten times the usual step, and a second at least. */
export function gapOf({ step }: ReadLog): number {
  return Math.max(1, 10 * step);
}
