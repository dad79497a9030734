// A log to its columns over time: one pass, every fault in its place.
import { cellPlace, scanCsv } from './csv.js';
import { clockSeconds, isoSeconds, NumberCells } from './cells.js';
import { Faults } from './faults.js';
import type { ColumnName, LogLayout } from './layout.js';
import { type Finding, nearest, type Place, type Source } from '../places/index.js';

/** Growing numbers without boxing. */
class Numbers {
  #data = new Float64Array(1024);
  length = 0;
  push(x: number): void {
    if (this.length === this.#data.length) {
      const wider = new Float64Array(this.length * 2);
      wider.set(this.#data);
      this.#data = wider;
    }
    this.#data[this.length++] = x;
  }
  done(): Float64Array {
    return this.#data.subarray(0, this.length);
  }
}

export interface ReadColumn {
  values: Float64Array;
  /** Most decimals written in any of its cells. */
  decimals: number;
  empty: boolean;
  /** Cells that hold something else than a number. */
  bad: number;
}

export interface ReadLog {
  /** Seconds; for clock and ISO times, and for elapsed times beyond a day, from the first line. */
  times: Float64Array;
  /** Line of each sample in the file, from 1. */
  lines: Float64Array;
  /** What the phase column says of each sample; empty where there is none. */
  phases: string[];
  /** In the order of the layout's columns; the frame column last, where there is one. */
  columns: ReadColumn[];
  faults: Faults;
}

const day = 86400;

/** Undefined where no sample could be read at all. `layoutPlaces` point into the record: a column that the log lacks is the record's error. */
export function readLog(source: Source, layout: LogLayout): { value: ReadLog | undefined; findings: Finding[] } {
  const faults = new Faults(source.file);
  const missingColumns: Finding[] = [];
  const wanted: ColumnName[] = [...layout.columns.map((c) => c.at), ...(layout.frames ? [layout.frames.at] : [])];
  const stores = wanted.map(() => ({ numbers: new Numbers(), decimals: 0, filled: 0, bad: 0 }));
  const times = new Numbers();
  const lines = new Numbers();
  const phases: string[] = [];
  const cells = new NumberCells(layout.decimalComma);
  const { delimiter, time } = layout;

  let width = -1;
  let at: number[] = [];
  let timeAt = -1;
  let phaseAt = -1;
  let headings: string[] | undefined;
  let ragged: { line: number; cells: number; offset: number } | undefined;
  let previous = NaN;
  let shift = 0;
  let first = NaN;
  let samples = 0;
  let under = 0;

  const find = (name: ColumnName): number => {
    const index = headings ? headings.indexOf(name.name) : /^\d+$/.test(name.name) ? Number(name.name) - 1 : -1;
    const byNumber = index < 0 && headings && /^\d+$/.test(name.name) ? Number(name.name) - 1 : index;
    if (byNumber >= 0 && byNumber < width) return byNumber;
    const near = headings && nearest(name.name, headings);
    missingColumns.push({
      code: 'log-column', severity: 'error', place: name.place, said: name.name, subject: source.file,
      message: headings
        ? `${source.file} has no column "${name.name}"; ${near ? `did you mean "${near}"?` : `it has ${headings.map((h) => `"${h}"`).slice(0, 12).join(', ')}${headings.length > 12 ? ' …' : ''}`}`
        : `${source.file} has ${count(width, 'column')} and, by its layout, no headings; "${name.name}" is no number from 1 to ${width}`,
      ...(near && { suggest: near }),
      ...(headings && { related: [{ place: source.wholeLine(source.place(0).line + layout.skip), label: 'its headings' }] }),
    });
    return -1;
  };
  const columnsFound = (): boolean => {
    at = wanted.map(find);
    if (time && time.kind !== 'steps') timeAt = find(time.at);
    if (layout.phaseColumn) phaseAt = find(layout.phaseColumn.at);
    return missingColumns.length === 0;
  };

  scanCsv(source.text, { delimiter, comment: layout.comment, skip: layout.skip }, (row, line, offset) => {
    const cell = (i: number): (() => Place) => () => cellPlace(source, offset, i, delimiter);
    if (width < 0) {
      width = row.length;
      if (layout.header) headings = row.map((h) => h.trim());
      if (!columnsFound()) return false;
      if (layout.header) return undefined;
    }
    if (ragged) {
      const r = ragged;
      faults.add('ragged', 'log-ragged', 'error', () => source.wholeLine(r.line), `this line has ${count(r.cells, 'cell')}, the log has ${count(width, 'column')}`);
      ragged = undefined;
    }
    if (under < layout.under) {
      under++;
      return undefined;
    }
    // Loggers end each line, or only the headings, with a delimiter; the cell behind it is no cell.
    const spare = row.length === width + 1 && row[width] === '' ? 1 : row.length === width - 1 && headings?.[width - 1] === '' ? -1 : 0;
    if (row.length - spare !== width) {
      ragged = { line, cells: row.length, offset };
      return undefined;
    }
    let t = samples;
    if (time?.kind === 'steps') t = samples * time.seconds;
    else if (time && timeAt >= 0) {
      const text = row[timeAt]!;
      const read = time.kind === 'elapsed' ? cells.read(text) * time.unit.factor.toNumber() : (time.kind === 'clock' ? clockSeconds(text) : isoSeconds(text)) ?? NaN;
      if (Number.isNaN(read)) {
        faults.add('time', 'log-time', 'error', cell(timeAt), `"${text}" is not a time (${time.kind === 'elapsed' ? `a number of ${time.unit.many}` : time.kind === 'clock' ? 'h:m:s' : '2026-03-14T10:00:00'})`, { said: text });
        return undefined;
      }
      if (Number.isNaN(first)) first = time.kind === 'elapsed' && read < day ? 0 : read;
      t = read - first + shift;
      if (time.kind === 'clock' && t < previous - day / 2) {
        shift += day;
        t += day;
      }
      if (t < previous) faults.add('order', 'log-time-order', 'error', cell(timeAt), `the time goes back here, from ${previous - 0} s to ${t} s`, { said: text });
      else if (t === previous) faults.add('twice', 'log-time-twice', 'warning', cell(timeAt), `the time ${text} stands on the line before too`, { said: text });
      previous = t;
    }
    samples++;
    times.push(t);
    lines.push(line);
    if (phaseAt >= 0) phases.push(row[phaseAt]!.trim());
    for (let i = 0; i < at.length; i++) {
      const text = row[at[i]!]!;
      const store = stores[i]!;
      let value = cells.read(text);
      if (Number.isNaN(value)) {
        const trimmed = text.trim();
        if (trimmed !== '' && !layout.missing.has(trimmed)) {
          store.bad++;
          badCell(faults, i, trimmed, wanted[i]!, cell(at[i]!), layout.decimalComma);
        }
        value = NaN;
      } else {
        store.filled++;
        if (cells.decimals > store.decimals) store.decimals = cells.decimals;
      }
      store.numbers.push(value);
    }
    return undefined;
  }, (f) => {
    faults.add(f.open ? 'cut' : 'form', f.open ? 'log-cut-off' : 'log-form', 'error', () => source.place(f.start, f.end), f.message);
  });

  if (ragged) {
    const r = ragged;
    faults.add('cut', 'log-cut-off', 'error', () => source.wholeLine(r.line), `the log breaks off here: the last line has ${count(r.cells, 'cell')} of ${width}`);
  }
  if (missingColumns.length) return { value: undefined, findings: missingColumns };
  if (width < 0) faults.add('empty', 'log-empty', 'error', () => source.place(0), 'the log is empty');
  else if (samples === 0 && faults.list().length === 0) faults.add('empty', 'log-empty', 'error', () => source.wholeLine(1), 'the log has headings and no samples');
  stores.forEach((store, i) => {
    const heading = wanted[i]!.name;
    if (samples === 0) return;
    if (store.filled === 0 && store.bad > 0) {
      faults.drop(`value ${i}`);
      faults.drop(`finite ${i}`);
      faults.add(`text ${i}`, 'log-text-column', 'error', () => source.wholeLine(lines.done()[0]!), `the column "${heading}" holds no number in ${samples} line${samples === 1 ? '' : 's'}; name what stands for "no value" under missing, or leave the column out`, { said: heading });
    }
  });
  const value = samples === 0 ? undefined : {
    times: times.done(), lines: lines.done(), phases, faults,
    columns: stores.map((s) => ({ values: s.numbers.done(), decimals: s.decimals, empty: s.filled === 0, bad: s.bad })),
  };
  return { value, findings: samples === 0 ? faults.list() : [] };
}

function count(n: number, noun: string): string {
  return `${n} ${noun}${n === 1 ? '' : 's'}`;
}

function badCell(faults: Faults, i: number, text: string, at: ColumnName, place: () => Place, decimalComma: boolean): void {
  if (/^[+-]?(nan|inf(inity)?|1\.#\w+)$/i.test(text)) {
    faults.add(`finite ${i}`, 'log-not-finite', 'error', place, `"${text}" in column "${at.name}" is not a finite number; say missing: [${text}] if it stands for "no value"`, { said: text });
    return;
  }
  const comma = !decimalComma && /^[+-]?\d+,\d+$/.test(text);
  const point = decimalComma && /^[+-]?\d+\.\d+$/.test(text);
  faults.add(`value ${i}`, 'log-value', 'error', place, `"${text}" in column "${at.name}" is not a number${comma ? '; it has a decimal comma: say decimal: comma' : point ? '; it has a decimal point: say decimal: point' : ''}`, { said: text });
}
