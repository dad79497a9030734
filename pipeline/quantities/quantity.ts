// A value with its unit, as a person wrote it: `61 °C`, `1.05 V`, `2400 MHz`, `1:30`.
import { Exact } from './exact.js';
import { findUnit, type Unit, unit } from './units.js';

export interface Quantity {
  value: Exact;
  unit: Unit;
  /** How many decimals were written: the precision stated. */
  decimals: number;
}

export interface WrittenNumber {
  value: Exact;
  decimals: number;
}

// A group of thousands never begins with a zero: "0,985" is a decimal comma.
// No-break, narrow no-break and thin space group digits; an ordinary space does not: "610 615 612 W" are three runs.
const grouping = "\u00a0\u202f\u2009'’";
const point = new RegExp(`^[+-]?(?:[1-9]\\d{0,2}(?:[,${grouping}]\\d{3})+|\\d*)(?:\\.\\d+)?(?:[eE][+-]?\\d{1,3})?$`);
const comma = new RegExp(`^[+-]?(?:[1-9]\\d{0,2}(?:[. ${grouping}]\\d{3})+|\\d*)(?:,\\d+)?$`);
const longest = 60;

/**
 * Reads a number as people write it: true minus signs, "1,234.5"; with `decimalComma` "1.234,5" and "1 234,5" instead.
 * Returns undefined for anything else, "NaN", "Infinity" and more than 60 characters included.
 */
export function readNumber(text: string, options: { decimalComma?: boolean } = {}): WrittenNumber | undefined {
  let t = text.trim().replace(/^[−–‒]/, '-');
  if (t.length > longest || !(options.decimalComma ? comma : point).test(t)) return undefined;
  t = options.decimalComma ? t.replace(/[^\d,+-]/g, '').replace(',', '.') : t.replace(/[^\d.eE+-]/g, '');
  const value = Exact.parse(t);
  return value && { value, decimals: decimalsOf(t) };
}

function decimalsOf(t: string): number {
  const written = /\.(\d+)/.exec(t)?.[1]?.length ?? 0;
  return Math.max(0, written - Number(/[eE](.+)$/.exec(t)?.[1] ?? 0));
}

/** Reads "61 °C", "83%", "$499", "1:30" (minutes and seconds, as seconds), "1:02:03" and "1:30 h". `why` says in words what is wrong. */
export function readQuantity(text: string, fallback?: Unit): { quantity: Quantity } | { why: string } {
  const t = text.trim();
  const time = clock(t);
  if (time) return { quantity: time };
  const money = /^([$€£])\s*(.+)$/u.exec(t);
  const m = money ? undefined : /^([+\-−–‒]?[\d.,'’\u00a0\u202f\u2009 ]*\d(?:[eE][+-]?\d+)?)\s*(.*)$/su.exec(t);
  const digits = money ? money[2]! : m?.[1];
  const name = money ? money[1]! : (m?.[2] ?? '').trim();
  if (digits === undefined) return { why: `no number in "${t}"` };
  const number = readNumber(digits);
  if (!number) return { why: misread(digits.trim()) };
  if (!name && !fallback) return { why: `"${t}" has no unit` };
  const found = name ? findUnit(name) : fallback!;
  if (!found) return { why: `unknown unit "${name}"` };
  return { quantity: { ...number, unit: found } };
}

/** "1:30" and "1:02:03"; with "h" behind it the first figure counts hours. */
function clock(t: string): Quantity | undefined {
  const m = /^(\d{1,3}):([0-5]\d)(?::([0-5]\d))?(\.\d+)?(?:\s*(h|min))?$/.exec(t);
  if (!m || (m[5] && m[3])) return undefined;
  const [h, min, s] = m[3] ? [m[1]!, m[2]!, m[3]] : m[5] === 'h' ? [m[1]!, m[2]!, '0'] : ['0', m[1]!, m[2]!];
  const value = Exact.of(Number(h) * 3600 + Number(min) * 60 + Number(s)).plus(Exact.parse(`0${m[4] ?? ''}`)!);
  return { value, unit: unit('s'), decimals: m[4] ? m[4].length - 1 : 0 };
}

/** "1,234": a thousand and more to some, a little over one to others; nothing in the number itself tells which. */
export function isAmbiguous(text: string): boolean {
  return /^[+\-−–‒]?[1-9]\d{0,2},\d{3}$/.test(text.trim());
}

function misread(digits: string): string {
  if (/^[^,.]*,\d+$/.test(digits)) return `"${digits}" has a decimal comma; write a point`;
  if (/\d \d/.test(digits)) return `"${digits}" is more than one number`;
  return `"${digits.length > longest ? `${digits.slice(0, longest)}…` : digits}" is not a number`;
}
