// Which samples of a log are which phase.
import type { LogLayout, LogWindow, SteadyRule } from './layout.js';
import { boundsOf } from './cuts.js';
import type { ReadLog } from './read-log.js';
import { type Finding, type Lines, nameInRecord, nearest } from '../places/index.js';
import { type Steady, steadyRows } from './steady-window.js';

export interface Window {
  phase: string;
  /** Seconds of its first and last sample. */
  start: number;
  end: number;
  /** Rows [from, to), in order. */
  rows: [from: number, to: number][];
  /** How many seconds the phase (or the log) had lasted when the window ended: "last 60 s" of a run cut short is another minute. */
  reached: number;
  /** What a rule of steadiness finds in the phase. */
  steady?: Steady;
}

/** The windows to average over, in the order of the layout. */
export function windowsOf(log: ReadLog, layout: LogLayout, source: Lines, findings: Finding[]): Window[] {
  const segments = phaseSegments(log, layout, source, findings);
  if (layout.windows.length === 0) return [...segments].map(([phase, rows]) => ({ ...window(log, phase, rows), ...beside(log, layout, longestOf(log, rows), layout.steady) }));
  const windows = [...segments].filter(([phase]) => !layout.windows.some((w) => w.phase === phase || w.of === phase)).map(([phase, rows]) => window(log, phase, rows));
  for (const wanted of layout.windows) {
    const cut = cutOut(log, layout, wanted, segments, source, findings);
    if (cut) windows.push(cut);
  }
  return windows;
}

/** Rows of each phase by the phase column, or the whole log where the layout gives it one phase. */
function phaseSegments(log: ReadLog, layout: LogLayout, source: Lines, findings: Finding[]): Map<string, [number, number][]> {
  const segments = new Map<string, [number, number][]>();
  const n = log.times.length;
  if (!layout.phaseColumn) {
    if (layout.phase !== undefined) segments.set(layout.phase, [[0, n]]);
    return segments;
  }
  const { map, place } = layout.phaseColumn;
  const seen = new Set<string>();
  const told = new Set<string>();
  for (let i = 0; i < n;) {
    const said = log.phases[i]!;
    let j = i + 1;
    while (j < n && log.phases[j] === said) j++;
    seen.add(said);
    const phase = map ? map.get(said) : said;
    if (!map && said !== '' && !/^[\p{L}\p{N}][\p{L}\p{N}._-]*$/u.test(said)) {
      const line = log.lines[i]!;
      const column = Math.max(0, source.line(line).indexOf(said));
      if (![...seen].some((s) => told.has(s))) findings.push({ code: 'log-phase', severity: 'error', place: { file: source.file, line, column: column + 1, endLine: line, endColumn: column + 1 + said.length }, said, subject: source.file, message: `"${said}" cannot be the name of a phase; give it one under phases: map` });
      told.add(said);
    } else if (phase !== undefined && phase !== 'skip' && phase !== '') {
      const list = segments.get(phase);
      if (list) list.push([i, j]);
      else segments.set(phase, [[i, j]]);
    }
    i = j;
  }
  for (const [said, phase] of map ?? []) {
    if (seen.has(said) || phase === 'skip') continue;
    const near = nearest(said, seen);
    findings.push({
      code: 'log-phase-missing', severity: 'error', place, said, subject: source.file,
      message: `${nameInRecord(source.file)} has no line with the phase "${said}"; its column says ${[...seen].slice(0, 8).map((s) => `"${s}"`).join(', ')}${near ? `; did you mean "${near}"?` : ''}`,
    });
  }
  return segments;
}

function cutOut(log: ReadLog, layout: LogLayout, wanted: LogWindow, segments: Map<string, [number, number][]>, source: Lines, findings: Finding[]): Window | undefined {
  const base = wanted.of ?? (layout.phaseColumn || segments.has(wanted.phase) ? wanted.phase : undefined);
  const known = base === undefined ? [[0, log.times.length] as [number, number]] : segments.get(base);
  if (!known) {
    const near = nearest(base!, segments.keys());
    if (!findings.some((f) => f.code === 'log-phase-missing')) {
      findings.push({
        code: 'log-phase-missing', severity: 'error', place: wanted.place, said: base!, subject: source.file,
        message: `${nameInRecord(source.file)} has no phase "${base!}" to cut this window from; ${near ? `did you mean ${near}?` : `it has ${[...segments.keys()].join(', ') || 'none'}${wanted.of ? '' : ' (say "of" and the phase)'}`}`,
      });
    }
    return undefined;
  }
  const [from, to] = longestOf(log, known);
  if (wanted.steady?.finds) {
    const { rule } = wanted.steady;
    const { rows, steady } = steadyRows(log.times, log.columns[rule.column]!.values, [from, to], rule, layout.columns[rule.column]!, true);
    return { ...window(log, wanted.phase, [rows], log.times[from]!), steady };
  }
  const { step } = log;
  const origin = base === undefined && layout.time?.kind === 'elapsed' ? 0 : log.times[from]!;
  const finish = log.ends[to - 1]!;
  const { low, after, high } = boundsOf(wanted, origin, finish);
  let a = from;
  while (a < to && (after ? log.times[a]! <= low : log.times[a]! < low)) a++;
  let b = a;
  while (b < to && log.times[b]! < high) b++;
  const lacking = wanted.last !== undefined ? wanted.last - (finish - log.times[from]! + step) : wanted.to !== undefined ? origin + wanted.to - (finish + step) : 0;
  const label = base === undefined ? 'the log' : base;
  if (a >= b || lacking > Math.max(step, 0.02 * (wanted.last ?? wanted.to ?? 0))) {
    const line = log.lastLines[to - 1]!;
    findings.push({
      code: 'log-short', severity: 'error', place: source.wholeLine(line), subject: source.file,
      message: `${label === 'the log' ? 'The log' : `The phase ${label}`} ends here after ${seconds(finish - log.times[from]! + step)}, before its window "${wanted.phase}" is over`,
      related: [{ place: wanted.place, label: 'the window' }],
    });
    if (a >= b) return undefined;
  }
  return { ...window(log, wanted.phase, [[a, b]], log.times[from]!), ...beside(log, layout, base === undefined ? [a, b] : [from, to], wanted.steady?.rule) };
}

/** What the rule finds, beside a window that a person gave. */
function beside(log: ReadLog, layout: LogLayout, rows: [number, number], rule: SteadyRule | undefined): { steady?: Steady } {
  return rule ? { steady: steadyRows(log.times, log.columns[rule.column]!.values, rows, rule, layout.columns[rule.column]!, false).steady } : {};
}

function longestOf(log: ReadLog, rows: readonly [number, number][]): [number, number] {
  const samples = ([from, to]: [number, number]): number => log.rows.subarray(from, to).reduce((a, b) => a + b, 0);
  return rows.reduce((a, b) => (samples(b) > samples(a) ? b : a));
}

function window(log: ReadLog, phase: string, rows: [number, number][], since = log.times[rows[0]![0]]!): Window {
  const end = log.ends[rows.at(-1)![1] - 1]!;
  return { phase, rows, start: log.times[rows[0]![0]]!, end, reached: end - since };
}

function seconds(s: number): string {
  return `${s >= 100 ? Math.round(s) : Math.round(s * 10) / 10} s`;
}
