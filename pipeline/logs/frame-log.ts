// A log of frame durations: the frames that count, the figures asked of them, and each frame as a trace.
import { Exact, type Quantity, showNumber, unit } from '../quantities/index.js';
import type { Lines, Outcome } from '../places/index.js';
import { quantileSorted, warmUpFrames } from '../statistics/index.js';
import { leastGap, tellFrameFaults } from './frame-faults.js';
import type { FrameLayout, FrameSkip, LogLayout } from './layout.js';
import type { LogText } from './log-text.js';
import { exactSum, shownDecimals } from './means.js';
import { frameTime, framesOf, lowInWords, lowRate, meanRate, stutterFigure, stutterInWords, timeInWords } from './pacing.js';
import { type ReadFrames, readFrames } from './read-log.js';
import type { LogResult, LogTrace, LogValue } from './sensor-log.js';

export function frameLog(source: LogText, layout: LogLayout, frames: FrameLayout): Outcome<LogResult> {
  const { value: log, findings } = readFrames(source, { ...layout, frames }, leastGap);
  if (!log) return { value: undefined, findings };
  const { decimals } = log;
  const { durations: all, lines: allLines } = realFrames(log, frames, source);
  tellFrameFaults(log, all, allLines, frames, layout, source);
  const skipped = framesSkipped(all, frames);
  if (frames.skip === undefined) tellWarmUp(all, allLines, frames, log, source);
  const durations = all.subarray(skipped);
  const lines = allLines.subarray(skipped);
  if (durations.length === 0) {
    if (log.faults.list().length === 0) log.faults.add('empty', 'log-empty', 'error', () => source.wholeLine(1), `the log has no frames beyond the ${skipped} that are passed over`);
    return { value: undefined, findings: [...findings, ...log.faults.list()] };
  }
  const f = framesOf(durations, decimals, frames.unit);
  const whole = f.total.toNumber();
  const [firstLine, lastLine] = [lines[0]!, lines.at(-1)!];
  const passed = passedOver(skipped, frames.skip);
  const give = (as: string, quantity: Quantity, words: string): LogValue => {
    const [measure = '', part = ''] = as.split('/');
    return { measure, part, phase: frames.phase, quantity, constant: false, firstLine, lastLine, samples: durations.length, lasted: { window: whole, phase: whole }, place: source.wholeLine(firstLine), how: [words, passed].filter(Boolean).join('; ') };
  };
  const values: LogValue[] = [
    ...(frames.average ? [give(frames.average, meanRate(f), 'frames over time')] : []),
    ...frames.lows.map((low) => give(low.as, lowRate(f, low.definition), lowInWords(low.definition))),
    ...frames.times.map((time) => give(time.as, frameTime(f, time.definition), timeInWords(time.definition))),
    ...frames.stutters.map((stutter) => give(stutter.as, stutterFigure(f, stutter.definition), stutterInWords(stutter.definition))),
    ...(frames.count ? [give(frames.count, { value: Exact.of(durations.length), unit: unit('frame-count'), decimals: 0 }, 'frames counted')] : []),
  ];
  const traces: LogResult['traces'] = [];
  if (frames.each) {
    const [measure = '', part = ''] = frames.each.split('/');
    const mean = exactSum(durations, decimals).over(Exact.of(durations.length)).round(decimals + 2);
    values.push(give(frames.each, { value: mean, unit: frames.unit, decimals: shownDecimals(mean, decimals, durations.length) }, 'mean of the frame times'));
    traces.push({ measure, part, unit: frames.unit, ...trace(durations, frames.unit.factor.toNumber(), frames.phase) });
  }
  return { value: { values, traces }, findings: [...findings, ...log.faults.list()] };
}

/** The lines that hold a frame; one that took no time, or less, is a fault and no frame. */
function realFrames(log: ReadFrames, frames: FrameLayout, source: Lines): { durations: Float64Array; lines: Float64Array } {
  const { values } = log;
  const durations = new Float64Array(values.length);
  const lines = new Float64Array(values.length);
  let n = 0;
  for (let i = 0; i < values.length; i++) {
    const d = values[i]!;
    const line = log.lines[i]!;
    if (d <= 0) log.faults.add('duration', 'log-value', 'error', () => source.wholeLine(line), `a frame cannot last ${d} ${frames.unit.symbol}`, { said: String(d) });
    else if (!Number.isNaN(d)) {
      durations[n] = d;
      lines[n++] = line;
    }
  }
  return { durations: durations.subarray(0, n), lines: lines.subarray(0, n) };
}

function framesSkipped(durations: Float64Array, { skip, unit: u }: FrameLayout): number {
  const rule: FrameSkip = skip ?? { kind: 'frames', frames: 0 };
  if (rule.kind === 'frames') return Math.min(rule.frames, durations.length);
  if (rule.kind === 'warm-up') return warmUpFrames(durations);
  const seconds = u.factor.toNumber();
  let n = 0;
  for (let t = 0; n < durations.length && t < rule.seconds; n++) t += durations[n]! * seconds;
  return n;
}

/** What the rule of the record left out, to stand with each figure. */
function passedOver(skipped: number, skip: FrameSkip | undefined): string {
  return skipped === 0 ? '' : `${skipped === 1 ? 'the first frame' : `the first ${skipped} frames`} passed over${skip?.kind === 'warm-up' ? ' as a warm-up' : ''}`;
}

function tellWarmUp(durations: Float64Array, lines: Float64Array, { unit: u }: FrameLayout, log: ReadFrames, source: Lines): void {
  const n = warmUpFrames(durations);
  if (n === 0) return;
  const usual = showNumber(Exact.fromNumber(quantileSorted(durations.slice(n).sort(), 0.5)), 1);
  const which = n === 1 ? 'The first frame' : `The first ${n} frames`;
  log.faults.add('warm-up', 'log-warm-up', 'warning', () => source.wholeLine(lines[0]!), `${which} took up to ${showNumber(Exact.fromNumber(Math.max(...durations.subarray(0, n))), 1)} ${u.symbol} where half of the others take ${usual} ${u.symbol} or less: a warm-up, and no rule says whether it counts; say skip: warm-up, or a number of frames or seconds (skip: 0 counts them all)`, { said: String(durations[0]!) });
}

/** Longer traces are of stretches of frames. */
const mostFrames = 65_536;

/** Each frame at the moment at which it is done; of very many, as many stretches of equally many frames: their means, shortest and longest. */
function trace(durations: Float64Array, seconds: number, phase: string): Pick<LogTrace, 'times' | 'values' | 'lows' | 'highs' | 'windows'> {
  const each = Math.ceil(durations.length / mostFrames);
  const [times, values, lows, highs]: [number[], number[], number[], number[]] = [[], [], [], []];
  let t = 0;
  for (let from = 0; from < durations.length; from += each) {
    const to = Math.min(from + each, durations.length);
    let [sum, low, high] = [0, Infinity, 0];
    for (let i = from; i < to; i++) {
      const d = durations[i]!;
      t += d * seconds;
      sum += d;
      low = Math.min(low, d);
      high = Math.max(high, d);
    }
    times.push(t);
    values.push(sum / (to - from));
    lows.push(low);
    highs.push(high);
  }
  return { times, values, ...(each > 1 && { lows, highs }), windows: [{ phase, start: 0, end: t }] };
}
