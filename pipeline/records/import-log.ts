// A proposal for a sensor or frame log: its layout and the line under `logs`, to be put into a record.
import { clockSeconds, isoSeconds, NumberCells } from '../logs/index.js';
import { type HeadingGuess, readHeading, severalDevices } from './heading-words.js';
import { constantPhases } from './common-names.js';
import { isId } from './key.js';
import { quoted } from './new-record.js';
import { isNumber, type Sniffed } from './sniff-csv.js';

export interface ImportScope {
  setup?: string;
  setting?: string;
  workload?: string;
  run?: string;
}

interface Column {
  name: string;
  index: number;
  cells: string[];
  filled: string[];
  numeric: boolean;
}

const timeWords = /^(time|elapsed|timestamp|t|date|uhrzeit|zeit|seconds)(?![a-zäöü])|elapsed|timestamp/i;

/** YAML, with what could not be told marked by "# ?". Undefined for a table that is no log: too few rows, or no time in it. */
export function proposeLog(path: string, csv: Sniffed, encoding: string | undefined, scope: ImportScope, taken: ReadonlySet<string> = new Set()): string | undefined {
  const columns = csv.headings.map((name, index): Column => {
    const cells = csv.rows.map((r) => r[index]!);
    const filled = cells.filter((c) => c !== '');
    return { name, index, cells, filled, numeric: filled.length > 0 && filled.filter((c) => isNumber(c, csv.decimalComma)).length * 2 > filled.length };
  });
  if (csv.rows.length < 5) return undefined;
  const frames = columns.find((c) => c.numeric && /frame.?(time|ms|duration|us)|^ms$/i.test(c.name));
  const time = columns.find((c) => timeKind(c, csv) !== undefined);
  if (!time && !frames) return undefined;
  const name = layoutName(path, taken);
  const head = [
    ...(encoding ? [`encoding: ${encoding}`] : []),
    ...(csv.delimiter !== ',' ? [`delimiter: ${csv.delimiter === '\t' ? 'tab' : `"${csv.delimiter}"`}`] : []),
    ...(csv.decimalComma ? ['decimal: comma'] : []),
    ...(csv.skip ? [`skip: ${csv.skip}`] : []),
    ...(csv.header ? [] : ['header: false']),
  ];
  const body = frames && (!time || columns.length <= 2) ? framesOf(frames, csv) : sensorsOf(time!, columns, csv);
  return `# Proposed for ${path}: ${csv.headings.length} column${csv.headings.length === 1 ? '' : 's'}. Check every line; what could not be told is marked "?".
layouts:
  ${name}:
${[...head, ...body].map((l) => `    ${l}`).join('\n')}
logs:
${logLine(path, name, scope)}
`;
}

function framesOf(column: Column, csv: Sniffed): string[] {
  const microseconds = /us\b|_us$/i.test(column.name);
  const at = columnName(column, csv);
  return [`frames: {column: ${at}, unit: ${microseconds ? 'us' : 'ms'}, phase: load, average: frame_rate/average, low: {frame_rate/low: slowest 1 %}, skip: warm-up} # ? which low is meant: slowest 1 %, slowest 1 % of time, p99 frame time or p1 frame rate`];
}

function sensorsOf(time: Column, columns: Column[], csv: Sniffed): string[] {
  const kind = timeKind(time, csv)!;
  const out = [`time: {column: ${columnName(time, csv)}, unit: ${kind}}`];
  const phase = columns.find((c) => c !== time && !c.numeric && c.filled.length === csv.rows.length && distinct(c).length >= 2 && distinct(c).length <= 12 && distinct(c).length < csv.rows.length / 2 && distinct(c).some((v) => isId(v)));
  if (phase) {
    const values = distinct(phase);
    const pairs = values.map((v) => `${quoted(v, true)}: ${/idle|wait|leerlauf|ruhe/i.test(v) ? 'idle' : /cool|warm.?up|end|abk/i.test(v) ? 'skip' : /load|run|last|test/i.test(v) ? 'load' : isId(v) ? v : 'skip'}`);
    out.push(`phases: {column: ${columnName(phase, csv)}, map: {${pairs.join(', ')}}}`);
    out.push('# windows: {idle: last 30 s, load: last 60 s} # to average over a part of a phase only; "steady" has it found');
  } else {
    out.push('phase: load # ? or windows: {idle: 0:10 to 0:50, load: 2:00 to 5:00}, or phases: {by: power/board}');
  }
  const lines: string[] = [];
  const taken = new Set<string>();
  const several = severalDevices(csv.headings);
  for (const c of columns) {
    if (c === time || c === phase) continue;
    const at = columnName(c, csv);
    if (c.filled.length === 0) lines.push(`# ${at}: ? # empty throughout`);
    else if (!c.numeric) lines.push(`# ${at}: ? # holds text (${JSON.stringify(c.filled[0]!.slice(0, 30))})`);
    else lines.push(columnLine(at, readHeading(c.name, several), c, csv, taken));
  }
  const missing = [...new Set(columns.filter((c) => c.numeric).flatMap((c) => c.filled.filter((v) => !isNumber(v, csv.decimalComma))))].slice(0, 5);
  if (missing.length) out.push(`missing: [${missing.map((m) => JSON.stringify(m)).join(', ')}] # ? stand for "no value"`);
  return [...out, 'columns:', ...lines.map((l) => `  ${l}`), ...powerNotes([...taken])];
}

/** What a power and a clock could tell besides. */
function powerNotes(reads: readonly string[]): string[] {
  const of = (measure: string) => reads.find((r) => r === measure || new RegExp(`^${measure}/[^/]+$`).test(r));
  const put = (measure: string, path: string) => `${measure}${path.includes('/') ? path.slice(path.indexOf('/')) : ''}`;
  const [power, clock] = [of('power'), of('frequency')];
  if (!power) return [];
  const energy = `# energy: {${power}: ${put('energy', power)}} # integrates it over each phase`;
  return clock ? [energy, `# throttle: {clock: ${clock}, limits: [${power}], time: ${put('throttled_time', clock)}, share: ${put('throttled_share', clock)}} # how long it was held back`] : [energy];
}

function columnLine(at: string, guess: HeadingGuess, column: Column, csv: Sniffed, taken: Set<string>): string {
  const words = column.name.toLowerCase().split(/[^\p{L}]+/u);
  const constant = constantPhases.find((p) => words.includes(p));
  if (!guess.measure || !guess.unit) return `# ${at}: ${guess.measure ?? '?'}${guess.part ? `/${guess.part}` : ''} ${guess.unit?.symbol ?? '?'} # ? ${guess.measure ? 'its unit' : 'what it measures'}`;
  const cells = new NumberCells(csv.decimalComma);
  const values = column.filled.map((c) => cells.read(c)).filter((v) => !Number.isNaN(v));
  const steady = values.every((v) => v === values[0]);
  const part = guess.part.replace(new RegExp(`-?\\b(${constantPhases.join('|')})\\b`), '');
  const reads = `${guess.measure}/${constant && steady ? `${part}/${constant}` : guess.part}`.replace(/\/$/, '');
  const line = `${at}: ${guess.unit.symbol === '%' ? `"${reads} %"` : `${reads} ${guess.unit.symbol}`}`;
  if (taken.has(reads)) return `# ${line} # ? a second one of this name`;
  taken.add(reads);
  return line;
}

function timeKind(c: Column, csv: Sniffed): string | undefined {
  if (c.filled.length === 0 || c.filled.length < csv.rows.length * 0.9) return undefined;
  if (c.filled.every((v) => clockSeconds(v) !== undefined)) return 'clock';
  if (c.filled.every((v) => isoSeconds(v) !== undefined)) return 'iso';
  if (!timeWords.test(c.name) || !c.numeric) return undefined;
  return /ms\b|_ms|milli/i.test(c.name) ? 'ms' : /min/i.test(c.name) ? 'min' : 's';
}

function distinct(c: Column): string[] {
  return [...new Set(c.filled)];
}

function columnName(c: Column, csv: Sniffed): string {
  return csv.header ? quoted(c.name, true) : String(c.index + 1);
}

function layoutName(path: string, taken: ReadonlySet<string>): string {
  const file = path.slice(path.lastIndexOf('/') + 1).replace(/\.[^.]*$/, '').replace(/[^\p{L}\p{N}._-]+/gu, '-');
  const base = isId(file) ? file : 'log';
  let name = base;
  for (let n = 2; taken.has(name); n++) name = `${base}-${n}`;
  return name;
}

/** The path with {run} for its run, and that run: "logs/stock-run2.csv", "logs/stock-2.csv". */
export function runInName(path: string): { pattern: string; run: string } | undefined {
  const m = /^(.*run[-_ ]?)(\d+)(\D*)$/i.exec(path) ?? /^(.*[^/\d][-_ ])(\d{1,2})(\.[^./]*)$/.exec(path);
  return m ? { pattern: `${m[1]}{run}${m[3]}`, run: m[2]! } : undefined;
}

/** A line of `logs`; by its pattern where the name holds the run, unless `alone`. */
export function logLine(path: string, layout: string, scope: ImportScope, alone = false): string {
  const named = runInName(path);
  const files = named && scope.run === undefined && !alone ? named.pattern : path;
  const run = files === path ? scope.run ?? (alone ? named?.run : undefined) : undefined;
  const known = (['setup', 'setting', 'workload'] as const).filter((k) => scope[k]).map((k) => `${k}: ${scope[k]}`);
  const lacking = (['setup', 'setting', 'workload'] as const).filter((k) => !scope[k]);
  const one = [`files: ${JSON.stringify(files)}`, `layout: ${layout}`, ...(known.length ? [`for: {${known.join(', ')}}`] : []), ...(run ? [`run: ${JSON.stringify(run)}`] : [])];
  return `  - {${one.join(', ')}}${lacking.length ? ` # ? for: {${lacking.map((k) => `${k}: …`).join(', ')}}` : ''}`;
}
