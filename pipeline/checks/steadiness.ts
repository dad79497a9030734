// What the rule of a layout found in its logs, for checks that speak of steadiness.
import type { Facts } from '../facts/index.js';
import { differenceUnit } from '../quantities/index.js';
import type { Trace } from '../records/index.js';
import { type Approach, fitApproach } from '../statistics/index.js';
import { brief, within } from './series.js';

export type Window = Trace['windows'][number];
export type Steady = NonNullable<Window['steady']>;

export interface Looked {
  /** The column that decides. */
  trace: Trace;
  window: Window;
  steady: Steady;
}

/** One for each run and phase that a rule looked at. */
export function looked(facts: Facts): Looked[] {
  return facts.traces.flatMap((trace) => {
    const own = [trace.measure, trace.part].filter(Boolean).join('/');
    return trace.windows.flatMap((window) => (window.steady?.by === own ? [{ trace, window, steady: window.steady }] : []));
  });
}

/** The course of the whole phase as an exponential approach. */
export function approachOf({ trace, steady }: Looked): Approach | undefined {
  const { times, values } = within(trace, { phase: '', start: steady.since, end: steady.until });
  return fitApproach(times, values);
}

/** "rose by 4.20 K in the last 60 s"; undefined where the phase is shorter than a span, and for a rule without one. */
export function lastMove({ trace, steady }: Looked): string | undefined {
  if (!steady.last) return undefined;
  const { change, span } = steady.last;
  return `${change < 0 ? 'fell' : 'rose'} by ${Math.abs(change).toFixed(2)} ${differenceUnit(trace.unit).symbol} in the last ${secondsOf(span)}`;
}

export function secondsOf(s: number): string {
  return `${brief(s).replace(/\.0$/, '')} s`;
}

/** How far off it still was, in words, and the fit that tells it; undefined where no exponential fits. */
export function farOff(one: Looked): { words: string; derivation?: string; gap: number } | undefined {
  const fit = approachOf(one);
  if (!fit) return undefined;
  const { unit } = one.trace;
  const step = differenceUnit(unit).symbol;
  const { gap, final, timeConstant: tau, amplitude } = fit;
  const span = one.steady.last?.span;
  const derivation = `${brief(final.value)} ${unit.symbol} ${amplitude.value < 0 ? '−' : '+'} ${brief(Math.abs(amplitude.value))} ${step} · e^(−t/${brief(tau.value)} s), from samples that count as ${brief(fit.effective)} independent ones; at 95 % the final value is ${range(final, unit.symbol)}, the time constant ${range(tau, 's')}`;
  if (!Number.isFinite(tau.high)) return { gap: Infinity, derivation, words: `where it was heading cannot be told yet: the course is too straight (time constant at least ${brief(tau.low)} s)` };
  if (span && !explains(gap.value * (1 - Math.exp(span / tau.value)), one.steady.last!.change)) return { gap: 0, words: 'that is no approach to a level' };
  const side = gap.value < 0 ? 'below' : 'above';
  return { gap: Math.abs(gap.value), derivation, words: `it was still ${brief(Math.abs(gap.value))} ${step} ${side} where it was heading (${brief(final.value)} ${unit.symbol}, time constant ${brief(tau.value)} s)` };
}

/** The movement that the fit has over the last span is the one that was seen. */
function explains(fitted: number, seen: number): boolean {
  return Math.abs(fitted - seen) <= 0.5 * Math.abs(seen);
}

function range({ low, high }: { low: number; high: number }, symbol: string): string {
  if (!Number.isFinite(high)) return `above ${brief(low)} ${symbol}`;
  if (!Number.isFinite(low)) return `below ${brief(high)} ${symbol}`;
  return `${brief(low)} to ${brief(high)} ${symbol}`;
}
