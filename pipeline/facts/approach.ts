// The course of one run on its way to a level, fitted: what it approaches, and how fast.
import { type Reading, splitKey, type Trace } from '../records/index.js';
import { type Approach, fitApproach } from '../statistics/index.js';
import type { Fact } from './fact.js';
import type { Facts, Underivable } from './facts.js';
import { figure } from './figure.js';

export const approachVariants = ['time-constant', 'final'] as const;

const fitted = new WeakMap<Trace, Map<string, Approach | Underivable>>();

/** Of a run's whole phase, whatever stretch of it was averaged. */
export function approachIn(facts: Facts, { key, run, log }: Reading): Approach | Underivable {
  const phase = splitKey(key)?.phase ?? '';
  const trace = log && facts.traceOf(key, run);
  if (!trace) return { why: `run ${run} of ${key} is no mean of a log that was kept` };
  const own = fitted.get(trace) ?? new Map<string, Approach | Underivable>();
  fitted.set(trace, own);
  let fit = own.get(phase);
  if (!fit) own.set(phase, (fit = fitIn(trace, phase, log.lasted?.phase) ?? { why: `the course of run ${run} of ${key} tells no approach to a level` }));
  return fit;
}

/** Undefined where no exponential fits, where the course is too straight to bound it, and where its end moves in another way than the fit. */
function fitIn(trace: Trace, phase: string, lasted: number | undefined): Approach | undefined {
  const window = trace.windows.find((w) => w.phase === phase);
  if (!window) return undefined;
  const since = window.steady?.since ?? (lasted === undefined ? window.start : window.end - lasted);
  const until = window.steady?.until ?? window.end;
  const within = trace.times.flatMap((t, i) => (t >= since - 1e-9 && t <= until + 1e-9 && Number.isFinite(trace.values[i]!) ? [i] : []));
  const fit = fitApproach(within.map((i) => trace.times[i]!), within.map((i) => trace.values[i]!));
  if (!fit || ![fit.timeConstant.high, fit.final.low, fit.final.high].every(Number.isFinite)) return undefined;
  const { last } = window.steady ?? {};
  const moved = last && fit.gap.value * (1 - Math.exp(last.span / fit.timeConstant.value));
  // Where next to nothing moves any more, noise is all that is seen of it.
  const noise = 3 * fit.rest;
  return moved === undefined || Math.abs(moved - last!.change) <= Math.max(0.5 * Math.abs(last!.change), noise) ? fit : undefined;
}

/** "67.3 °C − 24.1 K · e^(−t/38.2 s)": one run's course, time counted from where its phase began. */
export function courseInWords({ final, amplitude, timeConstant }: Approach, unit: string, step: string): string {
  return `${figure(final.value, 4)} ${unit} ${amplitude.value < 0 ? '−' : '+'} ${figure(Math.abs(amplitude.value), 3)} ${step} · e^(−t/${figure(timeConstant.value, 3)} s)`;
}

/** Standard uncertainty of a single run's figure as its own course leaves it, and its degrees of freedom; what other runs would give is not in it. */
export function uncertainOfFit(facts: Facts, { variant, readings: [reading] }: Fact): { standard: number; dof: number } | undefined {
  const fit = reading && approachIn(facts, reading);
  if (!fit || 'why' in fit) return undefined;
  return { standard: (variant === 'final' ? fit.final : fit.timeConstant).standardError, dof: Math.max(1, fit.effective - 3) };
}
