// What a sensor may do to a log without one cell being wrong: stick, read zero, change its unit.
import type { LogColumn, LogLayout } from './layout.js';
import { wholePhases } from './phases.js';
import type { ReadLog } from './read-log.js';
import { type Course, stuckIn } from './stuck.js';
import { changeInWords, isBeyond, type UnitJump, unitJump } from './unit-jump.js';
import type { Window } from './windows.js';
import { type Zeros, zerosAmong } from './zeros.js';
import type { Lines } from '../places/index.js';

/** Quantities that never stand still to the last digit while they are measured; clocks, duties and set voltages do. */
const lively: ReadonlySet<string> = new Set(['temperature', 'power', 'current', 'flow', 'sound-level']);
/** Phases in which power, clocks and voltages may be zero. */
const resting: ReadonlySet<string> = new Set(['idle', 'standby', 'sleep', 'off', 'rest']);
/** Quantities that are zero only where nothing is measured; fans and pumps do stop. */
const neverZero: ReadonlySet<string> = new Set(['temperature', 'power', 'voltage', 'frequency', 'sound-level']);

export function tellSensorFaults(log: ReadLog, layout: LogLayout, windows: readonly Window[], source: Lines): void {
  const phases = wholePhases(log, layout, windows);
  const sensors = layout.columns.map((column, index) => ({ column, index, ...log.columns[index]! })).filter(({ column, empty }) => column.phase === undefined && !empty);
  sensors.forEach((sensor) => {
    const { column, index, values, figures } = sensor;
    const others = sensors.filter((s) => s !== sensor);
    const jump = unitJump(values, column.unit.dimension, log.phases, others.filter((o) => o.column.unit.dimension !== 'temperature').map((o) => o.values), (b) => log.rows[b]! > 1);
    if (jump) {
      log.faults.add(`unit ${name(column)}`, 'log-unit-changes', 'error', () => source.wholeLine(lineOfJump(log, index, jump)), `the column "${name(column)}" goes from ${short(jump.before)} to ${short(jump.after)} from one line to the next, ${changeInWords[jump.how]}; its unit seems to change here`, { said: short(jump.after) });
      return;
    }
    if (neverZero.has(column.unit.dimension)) {
      for (const w of windows) {
        const zeros = zerosAmong(figures, w.rows, (b) => {
          const { lines, values: each } = log.samplesOf(b);
          return { lines, values: each[index]! };
        });
        const mayRest = resting.has(w.phase) && column.unit.dimension !== 'temperature' && column.unit.dimension !== 'sound-level';
        if (zeros && !(mayRest && zeros.share >= 0.5)) tellZeros(log, column, w, zeros, source);
      }
    }
    if (lively.has(column.unit.dimension)) {
      // The power of one part does not follow that of another; heat spreads.
      const fellows = column.unit.dimension === 'temperature' ? others.filter((o) => o.column.unit.dimension === 'temperature').map((o) => o.values) : [];
      for (const { phase, rows } of phases) {
        for (const [from, to] of rows) {
          const still = stuckIn(courseOf(log, index), { from, to }, !resting.has(phase), fellows);
          if (!still || (still.value === 0 && neverZero.has(column.unit.dimension))) continue;
          log.faults.add(`stuck ${name(column)}`, 'log-sensor-sticks', 'warning', () => source.wholeLine(still.line), `the column "${name(column)}" says ${still.value} for ${Math.round(still.seconds)} s from this line on, to the last digit, within ${phase}; a sensor that still measures does not do that`, { said: String(still.value) });
        }
      }
    }
  });
}

function tellZeros(log: ReadLog, column: LogColumn, w: Window, { first, line, count, all }: Zeros, source: Lines): void {
  const often = count === undefined ? 'time and again' : `${count} time${count === 1 ? '' : 's'}`;
  const says = count === all
    ? `on every line of ${w.phase}: nothing was measured; leave the column out`
    : `from here on, ${often} in the ${all} lines of ${w.phase}, and is never near it on the others; a mean of both is too low`;
  log.faults.add(`zero ${name(column)}`, 'log-reads-zero', 'warning', () => source.wholeLine(line ?? log.lines[first]!), `the column "${name(column)}" reads zero ${says}`, { said: '0' });
}

function courseOf(log: ReadLog, index: number): Course {
  const { values, figures } = log.columns[index]!;
  const samplesOf = (b: number): ReturnType<Course['samplesOf']> => {
    const { lines, values: each } = log.samplesOf(b);
    return { lines, values: each[index]! };
  };
  return { times: log.times, ends: log.ends, values, figures, samplesOf };
}

/** Of a long log the bucket of the jump is read again with those beside it: a few samples in another unit hardly move the mean of a bucket. */
function lineOfJump(log: ReadLog, index: number, jump: UnitJump): number {
  for (const b of [jump.row - 1, jump.row, jump.row + 1]) {
    if (!(log.rows[b]! > 1)) continue;
    const { lines, values } = log.samplesOf(b);
    const at = values[index]!.findIndex((v) => isBeyond(jump, v));
    if (at >= 0) return lines[at]!;
  }
  return log.lines[jump.row]!;
}

function name({ at }: LogColumn): string {
  return at.name;
}

function short(x: number): string {
  return String(Number(x.toPrecision(4)));
}
