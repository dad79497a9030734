// The two tables that can stand alone: readings.csv (tidy readings) and names.csv (how things are spoken).
import { type CsvOptions, cellPlace, scanCsv } from '../logs/index.js';
import { comparePlaces, type Finding, nearest, type Outcome, type Place, type Source } from '../places/index.js';
import { Exact, findUnit, isAmbiguous, ownUnit, readNumber, units } from '../quantities/index.js';
import type { Named, Reading } from './episode.js';
import { isId, idRule, keyFields, makeKey } from './key.js';

export const readingsHeader = [...keyFields, 'run', 'value', 'unit'] as const;
const nameKinds = keyFields;
export type NameKind = (typeof nameKinds)[number];

export interface TableOptions extends CsvOptions {
  /** Undefined where nobody has said which sign it is: a point, then, and "1,234" is ambiguous. */
  decimalComma?: boolean;
  /** Where a table stands alone, nothing can be declared elsewhere: ids and units that nobody knows are taken at their word. */
  alone?: boolean;
}

/** An id of a table that stands alone: anything but what keys and fact ids give a meaning to. */
function isOwnId(text: string): boolean {
  return /^[^/~()#=,]+$/.test(text);
}

/** A cell of a table with its place, found only when asked for. */
export interface TableRow {
  cell(name: string): string;
  place(name: string): Place;
  whole: Place;
}

/** One row a reading; an empty run is a constant. Every bad cell is a finding; the other rows are still read. */
export function readReadings(source: Source, options: TableOptions = {}): Outcome<Reading[]> {
  const table = readTable(source, readingsHeader, options);
  const { findings } = table;
  const readings: Reading[] = [];
  const known = options.alone ? isOwnId : isId;
  for (const row of table.value ?? []) {
    const before = findings.length;
    const ids = keyFields.map((f) => row.cell(f));
    ids.forEach((id, i) => {
      if (id && !known(id)) findings.push(bad('table-id', row.place(keyFields[i]!), `"${id}" cannot be a ${keyFields[i]}'s id: ${idRule}`, id));
    });
    const run = row.cell('run');
    if (run && !known(run)) findings.push(bad('table-id', row.place('run'), `"${run}" cannot be a run's name: ${idRule}`, run));
    if (!row.cell('measure')) findings.push(bad('table-value', row.place('measure'), 'a reading needs its measure (temperature, power …)', ''));
    const written = row.cell('value');
    const number = readNumber(written, { decimalComma: options.decimalComma });
    if (!number) findings.push(bad('table-value', row.place('value'), whyNoNumber(written, options.decimalComma), written));
    if (number && options.decimalComma === undefined && isAmbiguous(written)) findings.push(ambiguousComma(written, row.place('value')));
    if (number && beyondMeasure(number.value)) findings.push(bad('table-value', row.place('value'), `"${written}" is too large or too small for anything measured`, written));
    const unitName = row.cell('unit');
    const unit = findUnit(unitName) ?? (options.alone && unitName ? ownUnit(unitName) : undefined);
    if (!unit) findings.push(unknownUnit('table-unit', row.place('unit'), unitName));
    if (findings.slice(before).some((f) => f.severity === 'error')) continue;
    const key = makeKey(Object.fromEntries(keyFields.map((f, i) => [f, ids[i]!])));
    readings.push({ key, run, quantity: { ...number!, unit: unit! }, constant: run === '', place: row.whole });
  }
  return { value: table.value && readings, findings: ambiguousOnce(findings).sort((a, b) => comparePlaces(a.place, b.place)) };
}

/** How things are spoken: kind, id, and forms separated by semicolons. */
export function readNames(source: Source, options: TableOptions = {}): Outcome<(Named & { kind: NameKind })[]> {
  const table = readTable(source, ['kind', 'id', 'spoken'], options);
  const { findings } = table;
  const names: (Named & { kind: NameKind })[] = [];
  const known = options.alone ? isOwnId : isId;
  for (const row of table.value ?? []) {
    const kind = row.cell('kind');
    const id = row.cell('id');
    if (!(nameKinds as readonly string[]).includes(kind)) {
      findings.push(bad('table-value', row.place('kind'), `"${kind}" is not a kind of name; expected ${nameKinds.join(', ')}${meant(kind, nameKinds)}`, kind));
      continue;
    }
    if (!known(id)) {
      findings.push(bad('table-id', row.place('id'), id ? `"${id}" cannot be an id: ${idRule}` : 'an id is missing here', id));
      continue;
    }
    const spoken = row.cell('spoken').split(';').map((s) => s.trim()).filter(Boolean);
    names.push({ kind: kind as NameKind, id, name: spoken[0] ?? id, spoken, place: row.whole });
  }
  return { value: table.value && names, findings };
}

/** Rows under a header that must have exactly these columns, in any order; a column `note` is passed over. */
/** What a decimal comma leaves of a row: the value in two cells, both of digits, and one cell too many. */
function cutAtComma(cells: readonly string[], value: number | undefined, width: number, delimiter: string): string {
  const [whole, decimals] = value === undefined ? [] : cells.slice(value, value + 2).map((c) => c.trim());
  if (delimiter !== ',' || cells.length !== width + 1 || !whole || !decimals || !/^[-+−]?\d+$/.test(whole) || !/^\d+$/.test(decimals)) return '';
  return `; if ${whole},${decimals} is one value, write ${whole}.${decimals}`;
}

function readTable(source: Source, columns: readonly string[], options: TableOptions = {}): Outcome<TableRow[]> {
  const findings: Finding[] = [];
  const rows: TableRow[] = [];
  const delimiter = options.delimiter ?? ',';
  let index: Map<string, number> | undefined;
  let width = 0;
  let headerFailed = false;
  scanCsv(source.text, options, (cells, line, offset) => {
    if (!index) {
      index = new Map(cells.map((c, i) => [c.trim(), i]));
      width = cells.length;
      headerFailed = !headerIsRight(source, cells, columns, offset, delimiter, findings);
      return headerFailed ? false : undefined;
    }
    const whole = source.wholeLine(line);
    if (cells.length !== width) {
      const place = cells.length > width ? cellPlace(source, offset, width, delimiter) : whole;
      findings.push(bad('table-ragged', place, `this row has ${count(cells.length, 'cell')}, the header has ${width}${cutAtComma(cells, index.get('value'), width, delimiter)}`, String(cells.length)));
      return;
    }
    rows.push({
      whole,
      cell: (name) => cells[index!.get(name)!]!.trim(),
      place: (name) => cellPlace(source, offset, index!.get(name)!, delimiter),
    });
    return;
  }, (f) => findings.push(bad('table-form', source.place(f.start, f.end), f.message)));
  if (!index && findings.length === 0) findings.push(bad('table-empty', source.place(0), `the table is empty; expected the header ${columns.join(',')}`));
  else if (index && !headerFailed && rows.length === 0 && findings.length === 0) findings.push({ ...bad('table-empty', source.place(0), 'the table has a header and no rows'), severity: 'warning' });
  return { value: index && !headerFailed ? rows : undefined, findings };
}

function headerIsRight(source: Source, cells: string[], columns: readonly string[], offset: number, delimiter: string, findings: Finding[]): boolean {
  const names = cells.map((c) => c.trim());
  const other = [';', '\t', '|', ','].find((d) => d !== delimiter && names.length === 1 && names[0]!.split(d).length === columns.length);
  if (other) {
    findings.push(bad('table-header', source.wholeLine(1), `the columns are separated by ${other === '\t' ? 'tabs' : `"${other}"`}; expected "${delimiter}" (or say so in the record: delimiter: "${other === '\t' ? 'tab' : other}")`));
    return false;
  }
  const before = findings.length;
  names.forEach((name, i) => {
    const place = () => cellPlace(source, offset, i, delimiter);
    if (names.indexOf(name) < i) findings.push(bad('table-header', place(), `the column "${name}" stands twice`, name));
    else if (!columns.includes(name) && name !== 'note') findings.push(bad('table-header', place(), `unknown column "${name}"; expected ${columns.join(', ')}${meant(name, columns)}`, name));
  });
  const missing = columns.filter((c) => !names.includes(c));
  if (missing.length) findings.push(bad('table-header', source.place(offset, offset + source.line(source.place(offset).line).length), `the header lacks ${missing.map((m) => `"${m}"`).join(', ')}; expected ${columns.join(',')}`));
  return findings.length === before;
}

/** What stands in the way of reading `text` as a number. */
function whyNoNumber(text: string, decimalComma = false): string {
  if (text === '') return 'a value is missing here';
  if (/^[+-]?(nan|inf(inity)?)$/i.test(text)) return `"${text}" is not a finite number`;
  if (!decimalComma && /^[+-]?\d+,\d+$/.test(text)) return `"${text}" has a decimal comma; write a point, or say decimal: comma where the table is named`;
  if (decimalComma && /^[+-]?\d+\.\d+$/.test(text)) return `"${text}" has a decimal point, and the table's decimal sign is said to be a comma`;
  if (/^[+-]?0x[0-9a-f]+$/i.test(text)) return `"${text}" is hexadecimal; write the decimal number`;
  if (/^[+-]?\d+(_\d+)+$/.test(text)) return `"${text}" has underscores; write ${text.replace(/_/g, '')}`;
  return `"${text}" is not a number`;
}

const largest = Exact.of(10n ** 18n);
const smallest = Exact.of(1n, 10n ** 18n);

/** Beyond what is measured of PC hardware in any unit, and what the arithmetic of charts could not hold. */
export function beyondMeasure(value: Exact): boolean {
  const size = value.abs();
  return size.compare(largest) > 0 || (size.sign() !== 0 && size.compare(smallest) < 0);
}

/** A comma before three digits, where nothing says whether it groups thousands. It is read as grouping. */
export function ambiguousComma(digits: string, place: Place): Finding {
  return {
    code: 'value-ambiguous', severity: 'warning', place, said: digits, subject: digits, suggest: digits.replace(',', ''),
    message: `"${digits}" is read as ${digits.replace(',', '')}; write it without the comma, or as ${digits.replace(',', '.')} if the comma is a decimal sign`,
  };
}

/** A file with one such number has them by the dozen, all of one kind: they are told at the first. */
export function ambiguousOnce(findings: Finding[]): Finding[] {
  const all = findings.filter((f) => f.code === 'value-ambiguous');
  const [first] = all;
  if (!first || all.length === 1) return findings;
  const told = { ...first, message: `${first.message} (and so with ${count(all.length - 1, 'more number')})` };
  return findings.flatMap((f) => (f === first ? [told] : f.code === 'value-ambiguous' ? [] : [f]));
}

export function unknownUnit(code: string, place: Place, name: string): Finding {
  if (!name) return bad(code, place, 'a unit is missing here', '');
  const near = nearest(name, [...units.values()].flatMap((u) => [u.id, u.symbol, u.one, u.many, ...u.also]).filter((u) => u.length > 1));
  return { ...bad(code, place, `unknown unit "${name}"${near ? `; did you mean ${near}?` : ''}`, name), ...(near && { suggest: near }) };
}

/** "; did you mean X?" or nothing. */
function meant(word: string, known: Iterable<string>): string {
  const near = nearest(word, known);
  return near ? `; did you mean ${near}?` : '';
}

export function count(n: number, noun: string): string {
  return `${n} ${noun}${n === 1 ? '' : 's'}`;
}

function bad(code: string, place: Place, message: string, said?: string): Finding {
  return { code, severity: 'error', place, message: sentence(message), ...(said !== undefined && { said }) };
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
