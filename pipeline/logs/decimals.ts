// Decimal fractions of any length, for sums that must be exact.
import { Exact } from '../quantities/index.js';

/** A decimal fraction without a common denominator to look for. */
export interface Decimal {
  n: bigint;
  decimals: number;
}

/** The shortest decimal that means this very binary number. */
export function decimalOf(value: number): Decimal {
  const [digits = '', power = '0'] = String(value).split('e');
  const point = digits.indexOf('.');
  const decimals = (point < 0 ? 0 : digits.length - point - 1) - Number(power);
  const n = BigInt(digits.replace('.', ''));
  return decimals < 0 ? { n: n * 10n ** BigInt(-decimals), decimals: 0 } : { n, decimals };
}

export function plus(a: Decimal, b: Decimal): Decimal {
  if (a.decimals === b.decimals) return { n: a.n + b.n, decimals: a.decimals };
  return a.decimals < b.decimals ? plus(b, a) : { n: a.n + b.n * 10n ** BigInt(a.decimals - b.decimals), decimals: a.decimals };
}

export const zero: Decimal = { n: 0n, decimals: 0 };

export function exact({ n, decimals }: Decimal): Exact {
  return Exact.of(n, 10n ** BigInt(decimals));
}

/** Whether a number needs no more decimals than these. */
export function isStep(v: number, decimals: number): boolean {
  const scaled = v * 10 ** decimals;
  return Math.abs(scaled - Math.round(scaled)) <= Math.abs(scaled) * 2 ** -50;
}
