// A log of frame durations: frames over time, the lows by their stated definition, and each frame as a trace.
import { Exact, type Quantity, type Unit, unit } from '../quantities/index.js';
import type { Outcome, Source } from '../places/index.js';
import { quantileSorted, type QuantileType } from '../statistics/index.js';
import type { FrameLayout, LogLayout, LowDefinition } from './layout.js';
import { exactSum, shownDecimals } from './means.js';
import { readLog } from './read-log.js';
import type { LogResult, LogValue } from './sensor-log.js';

export function frameLog(source: Source, layout: LogLayout, frames: FrameLayout): Outcome<LogResult> {
  const { value: log, findings } = readLog(source, { ...layout, columns: [], frames });
  if (!log) return { value: undefined, findings };
  const { values: all, decimals } = log.columns[0]!;
  const durations: number[] = [];
  const lines: number[] = [];
  all.forEach((d, i) => {
    const line = log.lines[i]!;
    if (d <= 0) log.faults.add('duration', 'log-value', 'error', () => source.wholeLine(line), `a frame cannot last ${d} ${frames.unit.symbol}`, { said: String(d) });
    else if (i >= frames.skip && !Number.isNaN(d)) {
      durations.push(d);
      lines.push(line);
    }
  });
  if (durations.length === 0) {
    if (log.faults.list().length === 0) log.faults.add('empty', 'log-empty', 'error', () => source.wholeLine(1), `the log has no frames beyond the ${frames.skip} that are passed over`);
    return { value: undefined, findings: [...findings, ...log.faults.list()] };
  }
  const inSeconds = frames.unit.factor;
  const [firstLine, lastLine] = [lines[0]!, lines.at(-1)!];
  const total = exactSum(durations, decimals).times(inSeconds);
  const whole = total.toNumber();
  const give = (as: string, quantity: Quantity, samples: number): LogValue => {
    const [measure = '', part = ''] = as.split('/');
    return { measure, part, phase: frames.phase, quantity, constant: false, firstLine, lastLine, samples, lasted: { window: whole, phase: whole }, place: source.wholeLine(firstLine) };
  };
  const values: LogValue[] = [];
  if (frames.average) values.push(give(frames.average, rate(Exact.of(durations.length).over(total)), durations.length));
  for (const low of frames.lows) values.push(give(low.as, rate(lowRate(durations, decimals, inSeconds, low.definition)), durations.length));
  const traces: LogResult['traces'] = [];
  if (frames.each) {
    const [measure = '', part = ''] = frames.each.split('/');
    const mean = exactSum(durations, decimals).over(Exact.of(durations.length)).round(decimals + 2);
    values.push(give(frames.each, { value: mean, unit: frames.unit, decimals: shownDecimals(mean, decimals, durations.length) }, durations.length));
    traces.push({ measure, part, unit: frames.unit, ...trace(durations, inSeconds.toNumber(), frames.phase) });
  }
  return { value: { values, traces }, findings: [...findings, ...log.faults.list()] };
}

/** Frames per second, kept to four decimals and shown with one: 96.2 fps. */
function rate(value: Exact): Quantity {
  return { value: value.round(4), unit: unit('fps'), decimals: 1 };
}

/** Each frame at the moment at which it is done. */
function trace(durations: readonly number[], seconds: number, phase: string): { times: number[]; values: number[]; windows: { phase: string; start: number; end: number }[] } {
  let t = 0;
  const times = durations.map((d) => (t += d * seconds));
  return { times, values: [...durations], windows: [{ phase, start: 0, end: t }] };
}

function lowRate(durations: readonly number[], decimals: number, inSeconds: Unit['factor'], low: LowDefinition): Exact {
  const slowestFirst = [...durations].sort((a, b) => b - a);
  if (low.kind === 'slowest') {
    const n = Math.max(1, Math.round((durations.length * low.percent) / 100));
    return Exact.of(n).over(exactSum(slowestFirst.slice(0, n), decimals).times(inSeconds));
  }
  const one = Exact.of(1);
  if (low.kind === 'frame-time-percentile') return one.over(Exact.fromNumber(quantileSorted(slowestFirst.reverse(), low.percent / 100, low.type as QuantileType)).times(inSeconds));
  const rates = slowestFirst.map((d) => 1 / d);
  return Exact.fromNumber(quantileSorted(rates, low.percent / 100, low.type as QuantileType)).over(inSeconds);
}

/** A definition in words, to stand with the measure. */
export function lowInWords(low: LowDefinition): string {
  if (low.kind === 'slowest') return `mean rate of the slowest ${low.percent} % of frames`;
  const nth = `${low.percent}${ending(low.percent)} percentile`;
  return low.kind === 'frame-time-percentile' ? `rate at the ${nth} of frame times (type ${low.type})` : `${nth} of frame rates (type ${low.type})`;
}

function ending(n: number): string {
  if (!Number.isInteger(n) || (n % 100 > 10 && n % 100 < 14)) return 'th';
  return ['th', 'st', 'nd', 'rd'][n % 10] ?? 'th';
}
