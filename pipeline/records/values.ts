// Values as people write them: one or several runs, with their unit said once or every time.
import type { Finding, Place } from '../places/index.js';
import { findUnit, isAmbiguous, type Quantity, readQuantity, type Unit } from '../quantities/index.js';
import type { Values } from './values-shape.js';
import type { Reader } from './document.js';
import type { Written } from './shape.js';
import { ambiguousComma, beyondMeasure, unknownUnit } from './tables.js';

export interface Run {
  /** "" for a single value, which stands for no run of its own. */
  run: string;
  quantity: Quantity;
  place: Place;
}

/** Stands for the value of a run that has none. */
const missing = 'x';
const spreadOrRange = /±|\+\/-|\d\s*(?:\p{L}\S*\s*)?(?:[–—]|\bto\b|\.\.+|\s-\s)\s*\d/u;

/** A single quantity; a finding where it is none. */
export function quantityOf(w: Written, reader: Reader, fallback?: Unit): Quantity | undefined {
  return readOne(w.text, w.place, reader.findings, fallback);
}

function readOne(text: string, place: Place, findings: Finding[], fallback?: Unit): Quantity | undefined {
  const why = notPlain(text);
  const q = why === undefined ? readQuantity(text, fallback) : { why };
  if ('quantity' in q) {
    const digits = /^[^\d+−-]*([+−-]?[\d.,]*\d)/.exec(text.trim())?.[1] ?? '';
    if (isAmbiguous(digits)) findings.push(ambiguousComma(digits, place));
    if (!beyondMeasure(q.quantity.value)) return q.quantity;
    findings.push({ code: 'value-form', severity: 'error', place, said: text, message: `"${text}" is too large or too small for anything measured` });
    return undefined;
  }
  const unknown = /^unknown unit "(.*)"$/s.exec(q.why);
  if (unknown) findings.push(unknownUnit('unit-unknown', place, unknown[1]!));
  else if (/ has no unit$/.test(q.why)) findings.push({ code: 'unit-missing', severity: 'error', place, said: text, message: `"${text}" has no unit; write it behind the number` });
  else findings.push({ code: 'value-form', severity: 'error', place, said: text, message: q.why.charAt(0).toUpperCase() + q.why.slice(1) });
  return undefined;
}

/** Forms that YAML or the eye takes for something else than the number meant. */
function notPlain(text: string): string | undefined {
  const t = text.trim();
  if (t === '') return 'a value is missing here';
  if (/^[+-]?0x[0-9a-f]+/i.test(t)) return `"${t}" is hexadecimal; write the decimal number`;
  if (/^[+-]?0o[0-7]+/i.test(t)) return `"${t}" is octal; write the decimal number`;
  if (/^[+-]?0\d+(?![\d:.])/.test(t)) return `"${t}" begins with a zero; write ${t.replace(/^([+-]?)0+(?=\d)/, '$1')}`;
  if (/\d_\d/.test(t)) return `"${t}" has underscores; write ${t.replace(/_/g, '')}`;
  if (/^[+-]?\.?(nan|inf(inity)?)\b/i.test(t)) return `"${t}" is not a finite number`;
  if (/^(yes|no|on|off|true|false)$/i.test(t)) return `"${t}" is a word, not a number`;
  if (/±|\+\/-/.test(t)) return `"${t}" states a spread; write the runs themselves, the spread is computed`;
  if (spreadOrRange.test(t) || /^\d[\d.]*-\d/.test(t)) return `"${t}" is a range; write the runs themselves, or one value`;
  if (/^[~≈<>≤≥]|^(about|circa|ca\.?)\s/i.test(t)) return `"${t}" is not exact; write the value that was read`;
  return undefined;
}

/** "67 67 68 °C", "67, 67, 68 °C", "67 °C, 67 °C", "67 x 68 °C" (run 2 is missing), or a single value. */
function readRuns(w: Written, reader: Reader, fallback?: Unit): Run[] {
  const pieces = spreadOrRange.test(w.text) ? [] : split(w.text);
  if (pieces.length <= 1) {
    const quantity = readOne(w.text, w.place, reader.findings, fallback);
    return quantity ? [{ run: '', quantity, place: w.place }] : [];
  }
  const at = (p: { start: number; end: number }): Place => (w.verbatim === undefined ? w.place : reader.source.place(w.verbatim + p.start, w.verbatim + p.end));
  const units = pieces.map((p) => unitAtEnd(p.text));
  const wrong = units.findIndex((u) => u && !findUnit(u));
  if (wrong >= 0) {
    const { end } = pieces[wrong]!;
    reader.findings.push(unknownUnit('unit-unknown', at({ start: end - units[wrong]!.length, end }), units[wrong]!));
    return [];
  }
  const found = units.map((u) => (u ? findUnit(u) : undefined));
  const said = theOne(found) ?? fallback;
  if (found.some((u) => u) && !theOne(found)) {
    reader.fail(w.place, 'value-form', `"${w.text}" has several units; write the runs of one reading in one unit, and a time as 1:30`, { said: w.text });
    return [];
  }
  const runs: Run[] = [];
  for (const [i, piece] of pieces.entries()) {
    if (piece.text === missing) continue;
    const quantity = readOne(piece.text, at(piece), reader.findings, said);
    if (quantity) runs.push({ run: String(i + 1), quantity, place: at(piece) });
  }
  const spaced = runs.findIndex((_, i) => i + 1 < runs.length && /^\d{1,2}$/.test(pieces[i]!.text) && /^\d{3}$/.test(pieces[i + 1]!.text.replace(/\D+$/, '')));
  if (spaced >= 0) {
    const [a, b] = [pieces[spaced]!.text, pieces[spaced + 1]!.text.replace(/\D+$/, '')];
    reader.fail(w.place, 'value-form', `"${a} ${b}" reads as two runs, ${a} and ${b}; write ${a}${b} or ${a},${b} if one number is meant, or a list [${a}, ${b}] if not`, { said: w.text });
  }
  return runs;
}

/** The unit behind the digits of a value, as written. */
function unitAtEnd(text: string): string | undefined {
  return /^[^\p{L}°%$€£µ"″×]*\d\s*([^\d\s.,:;_±~+\-–—'].*)$/su.exec(text)?.[1];
}

/** The unit that all those with a unit share: said once, it holds for the others too. */
function theOne(units: (Unit | undefined)[]): Unit | undefined {
  const said = units.filter((u) => u !== undefined);
  return said.every((u) => u.id === said[0]!.id) ? said[0] : undefined;
}

interface Piece {
  text: string;
  start: number;
  end: number;
}

/** Cuts a text of several values: at spaces before a number, and at commas and semicolons followed by a space. */
function split(text: string): Piece[] {
  const pieces: Piece[] = [];
  const between = /\s*[,;]\s+|\s+(?=[+−–$€£-]?[\d.]|x(?:\s|$))|(?<=(?:^|\s)x)\s+/gu;
  let from = 0;
  const push = (end: number) => {
    const raw = text.slice(from, end);
    const start = from + (raw.length - raw.trimStart().length);
    const t = raw.trim();
    if (t) pieces.push({ text: t, start, end: start + t.length });
  };
  for (const m of text.matchAll(between)) {
    push(m.index);
    from = m.index + m[0].length;
  }
  push(text.length);
  return pieces;
}

/** The runs of a value tree whose phases have been taken apart already. */
export function runsOf(values: Values, reader: Reader, fallback?: Unit): Run[] {
  if ('one' in values) return readRuns(values.one, reader, fallback);
  if ('list' in values) {
    commas(values.list, reader);
    const said = theOne(values.list.map((w) => findUnit(unitAtEnd(w.text.trim()) ?? ''))) ?? fallback;
    return values.list.flatMap((w, i) => {
      if (w.text === missing) return [];
      const quantity = readOne(w.text, w.place, reader.findings, said);
      return quantity ? [{ run: String(i + 1), quantity, place: w.place }] : [];
    });
  }
  return values.by.flatMap(({ key, value }) => {
    if (!('one' in value)) {
      reader.fail(key.place, 'record-form', `expected one value for run ${key.text}`, { said: key.text });
      return [];
    }
    const quantity = readOne(value.one.text, value.one.place, reader.findings, fallback);
    return quantity ? [{ run: key.text, quantity, place: value.one.place }] : [];
  });
}

/** [71,5 W] is two items to YAML: a number, and a number with a unit, with nothing but a comma between. */
function commas(list: Written[], reader: Reader): void {
  for (let i = 0; i + 1 < list.length; i++) {
    const [a, b] = [list[i]!, list[i + 1]!];
    if (a.place.line !== b.place.line || b.place.column - a.place.endColumn !== 1) continue;
    if (!/^[+-]?\d+$/.test(a.text) || !/^\d/.test(b.text)) continue;
    reader.findings.push({
      code: 'value-form', severity: 'error', place: { ...a.place, endColumn: b.place.endColumn }, said: `${a.text},${b.text}`, suggest: `${a.text}.${b.text}`,
      message: `"${a.text},${b.text}" reads as two values; write ${a.text}.${b.text} if one is meant, or a space after the comma if not`,
    });
  }
}

export function unitOf(w: Written, reader: Reader): Unit | undefined {
  const unit = findUnit(w.text);
  if (!unit) reader.findings.push(unknownUnit('unit-unknown', w.place, w.text));
  return unit;
}
