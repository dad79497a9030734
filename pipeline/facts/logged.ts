// How a reading came of its log, in words: what its samples are worth, and where the window came from.
import { differenceUnit } from '../quantities/index.js';
import type { Reading } from '../records/index.js';
import { figure } from './figure.js';

/** Undefined where the log says no more than its rows. */
export function loggedInWords({ log, quantity: { unit } }: Reading): string | undefined {
  if (!log) return undefined;
  const { effective, standardError, samples } = log;
  const fewer = effective !== undefined && standardError ? `these count as ${figure(effective, effective < 10 ? 2 : 3)} independent ones; standard uncertainty of their mean ${figure(standardError, 2)} ${differenceUnit(unit).symbol}` : '';
  return [log.how, samples > 1 && fewer.trim(), windowInWords(log.steady)].filter(Boolean).join('; ') || undefined;
}

function windowInWords(steady: NonNullable<Reading['log']>['steady']): string {
  if (!steady) return '';
  const { finds, start, since, rule, by } = steady;
  const reason = `(${rule}, by ${by})`;
  if (start === undefined) return finds ? `never steady ${reason}, its end was averaged` : `window given by hand; never steady ${reason}`;
  const from = `steady from ${figure(start - since)} s of the phase on ${reason}`;
  return finds ? from : `window given by hand; ${from}`;
}
