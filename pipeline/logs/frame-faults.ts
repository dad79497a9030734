// What may be wrong with a log of frame durations without one cell being wrong: frames that are missing, durations that stand still, a unit that changes.
import type { FrameLayout, LogLayout } from './layout.js';
import { tellCutNumber } from './cut-number.js';
import type { LogText } from './log-text.js';
import type { ReadFrames } from './read-log.js';
import { leastSamples, leastSeconds, stuckIn } from './stuck.js';
import { changeInWords, unitJump } from './unit-jump.js';

/** A time stamp that goes on by so many of its usual steps more than the frame lasted: coarse stamps go on by one. */
const steps = 3;

/** `durations` are the frames alone, `lines` where each of them stands. */
export function tellFrameFaults(log: ReadFrames, durations: Float64Array, lines: Float64Array, frames: FrameLayout, layout: LogLayout, source: LogText): void {
  tellBlanks(log, source);
  tellGaps(log, frames, source);
  const jump = unitJump(durations, 'duration', [], []);
  if (jump) {
    log.faults.add('unit', 'log-unit-changes', 'error', () => source.wholeLine(lines[jump.row]!), `the frame times go from ${short(jump.before)} to ${short(jump.after)} from one line to the next, ${changeInWords[jump.how]}; their unit seems to change here`, { said: short(jump.after) });
  } else tellStuck(log, durations, lines, frames, source);
  tellCutNumber(lines.at(-1) ?? 0, layout.delimiter, source, log.faults);
}

/** Lines without a frame time, of which later ones have one: columns of unequal length end with empty cells. */
function tellBlanks({ values, lines, bad, faults }: ReadFrames, source: LogText): void {
  if (bad > 0) return;
  let end = values.length;
  while (end > 0 && Number.isNaN(values[end - 1]!)) end--;
  for (let i = 0; i < end; i++) if (Number.isNaN(values[i]!)) faults.add('blank', 'log-gap', 'warning', () => source.wholeLine(lines[i]!), 'this line has no frame time, and later ones have: the frame is left out of every figure');
}

/** Where the log has time stamps: they go on by more than the frame lasted that they begin or end with. */
function tellGaps({ values, lines, jumps, step, faults }: ReadFrames, { unit }: FrameLayout, source: LogText): void {
  const seconds = unit.factor.toNumber();
  for (const { row, by } of jumps) {
    const [d, before] = [row, row - 1].map((r) => (values[r]! > 0 ? values[r]! * seconds : 0));
    const missing = by - Math.max(d!, before!);
    if (missing <= Math.max(leastGap, steps * step)) continue;
    faults.add('gap', 'log-gap', 'warning', () => source.wholeLine(lines[row]!), `no frame for ${Math.round(missing * 100) / 100} s before this line: its time is ${Math.round(by * 100) / 100} s after that of the line before, and its frame lasted ${short(values[row]!)} ${unit.symbol}`);
  }
}

/** Seconds; whatever the stamps are like, less is no gap. */
export const leastGap = 0.1;

function tellStuck({ faults }: ReadFrames, durations: Float64Array, lines: Float64Array, { unit }: FrameLayout, source: LogText): void {
  const seconds = unit.factor.toNumber();
  if (!standsStill(durations, seconds)) return;
  const times = new Float64Array(durations.length);
  for (let i = 0, t = 0; i < durations.length; i++) times[i] = t += durations[i]! * seconds;
  const [of, one] = [(b: number) => durations[b]!, () => 1];
  const course = { times, ends: times, values: durations, figures: { low: of, high: of, filledIn: one }, samplesOf: (b: number) => ({ lines: [lines[b]!], values: [durations[b]!] }) };
  const still = stuckIn(course, { from: 0, to: durations.length }, false, []);
  if (still) faults.add('stuck', 'log-sensor-sticks', 'warning', () => source.wholeLine(still.line), `each frame from this line on took ${still.value} ${unit.symbol} for ${Math.round(still.seconds)} s, to the last digit; frames that are still measured do not do that`, { said: String(still.value) });
}

/** Whether any frames that follow each other are equal for long enough to be looked at: of most logs nothing more need be held. */
function standsStill(durations: Float64Array, seconds: number): boolean {
  for (let i = 0, from = 0; i < durations.length; i++) {
    if (durations[i] !== durations[from]) from = i;
    if (i - from >= leastSamples - 1 && (i - from) * durations[i]! * seconds >= leastSeconds) return true;
  }
  return false;
}

function short(x: number): string {
  return String(Number(x.toPrecision(4)));
}
