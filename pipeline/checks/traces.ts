// Traces by what they show and by test, for checks that look at logs.
import type { About } from '../facts/index.js';
import type { Trace } from '../records/index.js';
import type { Report } from './check.js';
import { grouped } from './measured.js';
import { within } from './series.js';
import { listed, what } from './words.js';

/** Traces of several runs of one quantity in one test, in the order of the record. */
export function byQuantity(traces: readonly Trace[]): Trace[][] {
  return [...grouped(traces, (t) => [t.setup, t.setting, t.workload, t.measure, t.part].join('/')).values()];
}

export function keyOf(trace: Trace, phase: string): string {
  return [trace.setup, trace.setting, trace.workload, trace.measure, trace.part, phase].join('/');
}

export function hasValues(trace: Trace): boolean {
  return trace.values.some((v) => Number.isFinite(v));
}

/** Windows with enough samples to speak of a course; one that was never steady is told by the rule that looked for it. */
export function courses(trace: Trace): { phase: string; times: number[]; values: number[]; seconds: number }[] {
  return trace.windows.filter((w) => !(w.steady?.finds && w.steady.start === undefined)).flatMap((w) => {
    const { times, values } = within(trace, w);
    return values.length >= 8 ? [{ phase: w.phase, times, values, seconds: times.at(-1)! - times[0]! }] : [];
  });
}

/** One finding a test, that of its first quantity, with the others named. */
export function oncePerTest(found: (Report & { trace: Trace })[], about: About): Report[] {
  return [...grouped(found, ({ trace: t }) => `${t.setup}/${t.setting}/${t.workload}`).values()].map((all) => {
    const { trace: _, ...first } = all[0]!;
    return { ...first, message: [first.message, ...(all.length > 1 ? [`so with ${listed(all.slice(1).map(({ trace }) => what(about, keyOf(trace, ''))))}`] : [])].join('; ') };
  });
}
