// Rows as loggers write them: a number, a word or nothing a cell. They are read from the bytes as they lie, without a string.
// Whatever is not plain is not judged here: the strict reader looks at it, and gives the same for what is.
import { NumberCells } from './cells.js';

/** What is wanted of a cell: nothing, its text, or (from `number` on) its number in the slot `kind - number`. */
export const unread = 0;
export const word = 1;
export const number = 2;

/** In `decimals`: the cell says that there is no value; the number itself stands in `digits`, as its digits are too many or have an exponent. */
export const missing = 255;
export const odd = 254;

/** A whole number of so many digits is held without loss, and so is it divided by a power of ten. */
export const safeDigits = 15;
/** And of so many it fits into 32 bits. */
const shortDigits = 9;
/** Rows that are held before they are handed on. */
export const batch = 256;
export const powers = Float64Array.from({ length: 23 }, (_, i) => Number(`1e${i}`));

export class PlainRow {
  /** By slot and row of the batch (`slot * batch + row`): the digits as a whole number, or where `decimals` is `odd` the number. */
  readonly digits: Float64Array;
  /** How many of the digits are decimals. */
  readonly decimals: Uint8Array;
  /** Of a number that is `odd`. */
  readonly oddDecimals: Float64Array;
  /** By column, where its text is wanted: [from, to) in the bytes. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly #kinds: Uint8Array;
  readonly #delimiter: number;
  readonly #sign: number;
  readonly #comment: number;
  readonly #cells: NumberCells;
  readonly #missing: ReadonlySet<string>;
  readonly #mayLackLast: boolean;

  /** `kinds` has one entry a column; with `mayLackLast` the last column may be absent. Delimiter and comment are single bytes. */
  constructor(kinds: Uint8Array, o: { delimiter: number; comment: number; decimalComma: boolean; missing: ReadonlySet<string>; mayLackLast: boolean }) {
    const slots = Math.max(0, ...kinds) + 1;
    this.digits = new Float64Array(slots * batch);
    this.decimals = new Uint8Array(slots * batch);
    this.oddDecimals = new Float64Array(slots * batch);
    this.from = new Int32Array(kinds.length);
    this.to = new Int32Array(kinds.length);
    this.#kinds = kinds;
    this.#delimiter = o.delimiter;
    this.#sign = o.decimalComma ? 44 : 46;
    this.#comment = o.comment;
    this.#cells = new NumberCells(o.decimalComma);
    this.#missing = o.missing;
    this.#mayLackLast = o.mayLackLast && kinds.at(-1) === unread;
  }

  /** Reads one row as row `r` of the batch, and gives where the next line begins; 0 where the row is not plain, or does not end, with its line end, before `end`. */
  read(bytes: Buffer, at: number, end: number, r: number): number {
    const kinds = this.#kinds;
    const delimiter = this.#delimiter;
    const sign = this.#sign;
    const width = kinds.length;
    let b = bytes[at]!;
    if (b === 10 || b === 13 || b === this.#comment) return 0;
    let i = at;
    for (let c = 0; ; c++) {
      const kind = kinds[c]!;
      const from = i;
      b = bytes[i]!;
      if (kind >= number && b !== 34) {
        const slot = (kind - number) * batch + r;
        const negative = b === 45;
        if (negative || b === 43) b = bytes[++i]!;
        const start = i;
        let digits = 0;
        let digit = b - 48;
        while (digit >= 0 && digit <= 9) {
          digits = (Math.imul(digits, 10) + digit) | 0;
          digit = bytes[++i]! - 48;
        }
        let n = i - start;
        let decimals = 0;
        if (digit === sign - 48 && sign !== delimiter) {
          const point = ++i;
          digit = bytes[i]! - 48;
          while (digit >= 0 && digit <= 9) {
            digits = (Math.imul(digits, 10) + digit) | 0;
            digit = bytes[++i]! - 48;
          }
          decimals = i - point;
          n += decimals;
        }
        b = digit + 48;
        if (n > 0 && n <= shortDigits && (b === delimiter || b === 10 || b === 13)) {
          this.digits[slot] = negative ? -digits : digits;
          this.decimals[slot] = decimals;
        } else if (i === from && (b === delimiter || b === 10 || b === 13)) {
          this.decimals[slot] = missing;
        } else {
          i = this.#over(bytes, from, end);
          if (i < 0 || !this.#longCell(bytes, from, i, slot)) return 0;
          b = bytes[i]!;
        }
      } else {
        i = b === 34 ? this.#quoted(bytes, i, end) : this.#over(bytes, i, end);
        if (i < 0 || (kind >= number && !this.#oddCell(bytes, from + 1, i - 1, (kind - number) * batch + r))) return 0;
        if (kind === word) {
          const inner = b === 34 ? 1 : 0;
          this.from[c] = from + inner;
          this.to[c] = i - inner;
        }
        b = bytes[i]!;
      }
      if (b !== delimiter) {
        if (c + 1 < width && !(this.#mayLackLast && c + 2 === width)) return 0;
        break;
      }
      i++;
      if (c + 1 < width) continue;
      // Loggers end each line with a delimiter; what stands behind it is no cell, if nothing does.
      b = bytes[i]!;
      if (b !== 10 && b !== 13) return 0;
      break;
    }
    if (b === 13) {
      if (i + 1 >= end) return 0;
      if (bytes[i + 1] === 10) i++;
    }
    return i < end ? i + 1 : 0;
  }

  /** Makes row `r` the first. */
  move(r: number): void {
    for (let at = 0; at < this.digits.length; at += batch) {
      this.digits[at] = this.digits[at + r]!;
      this.decimals[at] = this.decimals[at + r]!;
      this.oddDecimals[at] = this.oddDecimals[at + r]!;
    }
  }

  /** Behind an unquoted cell; -1 where a quote stands in it or it does not end. */
  #over(bytes: Buffer, at: number, end: number): number {
    const delimiter = this.#delimiter;
    let i = at;
    for (let b = bytes[i]!; b !== delimiter && b !== 10 && b !== 13; b = bytes[++i]!) if (b === 34 || (b === 0 && i >= end)) return -1;
    return i;
  }

  /** Behind the closing quote of a cell without quotes and line ends in it; -1 for any other. */
  #quoted(bytes: Buffer, at: number, end: number): number {
    let i = at + 1;
    for (let b = bytes[i]!; b !== 34; b = bytes[++i]!) if (b === 10 || b === 13 || (b === 0 && i >= end)) return -1;
    const next = bytes[++i]!;
    return next === this.#delimiter || next === 10 || next === 13 ? i : -1;
  }

  /** Up to `safeDigits` digits, or an odd cell. */
  #longCell(bytes: Buffer, from: number, to: number, slot: number): boolean {
    const negative = bytes[from] === 45;
    let digits = 0;
    let n = 0;
    let point = -1;
    for (let i = negative ? from + 1 : from; i < to; i++) {
      const b = bytes[i]!;
      if (b >= 48 && b <= 57) {
        digits = digits * 10 + (b - 48);
        n++;
      } else if (b === this.#sign && point < 0) point = i;
      else return this.#oddCell(bytes, from, to, slot);
    }
    if (n === 0 || n > safeDigits) return this.#oddCell(bytes, from, to, slot);
    this.digits[slot] = negative ? -digits : digits;
    this.decimals[slot] = point < 0 ? 0 : to - point - 1;
    return true;
  }

  #oddCell(bytes: Buffer, from: number, to: number, slot: number): boolean {
    for (let i = from; i < to; i++) if (bytes[i]! > 127) return false;
    const text = bytes.toString('latin1', from, to);
    const value = this.#cells.read(text);
    if (Number.isNaN(value)) {
      const trimmed = text.trim();
      if (trimmed !== '' && !this.#missing.has(trimmed)) return false;
      this.decimals[slot] = missing;
      return true;
    }
    this.decimals[slot] = odd;
    this.digits[slot] = value;
    this.oddDecimals[slot] = this.#cells.decimals;
    return true;
  }
}
