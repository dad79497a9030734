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

/**
 * Reads a number as people write it: true minus signs, "1,234.5", "1 234,5" only where `decimalComma` is set.
 * Returns undefined for anything else, "NaN" and "Infinity" included.
 */
export function readNumber(text: string, options: { decimalComma?: boolean } = {}): WrittenNumber | undefined {
  let t = text.trim().replace(/^[−–‒]/, '-');
  if (options.decimalComma) {
    if (!/^[+-]?(\d{1,3}([.  '’]\d{3})+|\d*)(,\d+)?$/.test(t)) return undefined;
    t = t.replace(/[.  '’]/g, '').replace(',', '.');
  } else {
    if (!/^[+-]?(\d{1,3}([,  '’]\d{3})+|\d*)(\.\d+)?([eE][+-]?\d{1,3})?$/.test(t)) return undefined;
    t = t.replace(/[,  '’]/g, '');
  }
  const value = Exact.parse(t);
  return value && { value, decimals: /\.(\d+)/.exec(t)?.[1]?.length ?? 0 };
}

/** Reads "61 °C", "83%", "$499", "1:30" (minutes and seconds, as seconds) and "1:02:03". `why` says in words what is wrong. */
export function readQuantity(text: string, fallback?: Unit): { quantity: Quantity } | { why: string } {
  const t = text.trim();
  const clock = /^(\d{1,3}):([0-5]\d)(?::([0-5]\d))?(\.\d+)?$/.exec(t);
  if (clock) {
    const parts = clock[3] ? [clock[1]!, clock[2]!, clock[3]] : ['0', clock[1]!, clock[2]!];
    const seconds = Number(parts[0]) * 3600 + Number(parts[1]) * 60 + Number(parts[2]);
    const value = Exact.of(seconds).plus(Exact.parse(`0${clock[4] ?? ''}`)!);
    return { quantity: { value, unit: unit('s'), decimals: clock[4] ? clock[4].length - 1 : 0 } };
  }
  const money = /^([$€£])\s*(.+)$/.exec(t);
  const m = money ? undefined : /^([+\-−–‒]?[\d.,'’   ]*\d(?:[eE][+-]?\d+)?)\s*(.*)$/su.exec(t);
  const digits = money ? money[2]! : m?.[1];
  const name = money ? money[1]! : (m?.[2] ?? '').trim();
  if (digits === undefined) return { why: `no number in "${t}"` };
  const number = readNumber(digits);
  if (!number) return { why: /,\d{1,2}$/.test(digits.trim()) ? `"${digits.trim()}" has a decimal comma; write a point` : `"${digits.trim()}" is not a number` };
  if (!name && !fallback) return { why: `"${t}" has no unit` };
  const found = name ? findUnit(name) : fallback!;
  if (!found) return { why: `unknown unit "${name}"` };
  return { quantity: { ...number, unit: found } };
}
