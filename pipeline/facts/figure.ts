// A computed figure as text: statistics are binary numbers, shown with as many digits as they are worth.
import { Exact } from '../quantities/index.js';

/** With three significant digits or as many as asked for, without an exponent; digits before the point all stand. */
export function figure(x: number, digits = 3): string {
  if (x === 0 || !Number.isFinite(x)) return '0';
  return Exact.fromNumber(x).toFixed(Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(x)))));
}
