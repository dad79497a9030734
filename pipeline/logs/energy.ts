// Energy from a power column: integrated over the whole of each phase, by trapezoids over the actual times.
import { Exact, type Quantity, showNumber } from '../quantities/index.js';
import type { Lines } from '../places/index.js';
import type { Integral } from '../statistics/index.js';
import { integralOf, lineOfGap } from './bucket-integral.js';
import type { LogColumn, LogEnergy, LogLayout } from './layout.js';
import { busyPhases, gapOf, wholePhases, type WholePhase } from './phases.js';
import type { ReadColumn, ReadLog } from './read-log.js';
import type { LogValue } from './sensor-log.js';
import type { Window } from './windows.js';

/** Gaps are bridged by a straight line, and told; where they take more than this share of a phase, what adds up over it is not given. Common practice, no published source. */
export const mostBridged = 0.05;

export function energyValues(log: ReadLog, layout: LogLayout, windows: readonly Window[], source: Lines): LogValue[] {
  const phases = layout.energies.length ? busyPhases(wholePhases(log, layout, windows)) : [];
  return layout.energies.flatMap((energy) => {
    const at = layout.columns.findIndex((c) => c.phase === undefined && `${c.measure}/${c.part}` === energy.of);
    const column = layout.columns[at];
    return column ? phases.flatMap((p) => ofPhase(log, p, energy, column, log.columns[at]!, source) ?? []) : [];
  });
}

function ofPhase(log: ReadLog, { phase, rows }: WholePhase, energy: LogEnergy, column: LogColumn, { values, figures }: ReadColumn, source: Lines): LogValue | undefined {
  const sum = integralOf(log, values, rows, gapOf(log), (b) => figures.area(b, log.ends[b]! - log.times[b]!), figures);
  if (sum.time <= 0) return undefined;
  const [firstLine, lastLine] = [log.lines[rows[0]![0]]!, log.lastLines[rows.at(-1)![1] - 1]!];
  if (sum.gaps > 0) tellBridged(sum, phase, column, log, source, () => lineOfGap(log, values, rows, gapOf(log)));
  if (sum.bridged > mostBridged * sum.time) return undefined;
  const joules = Exact.fromNumber(sum.area).times(column.unit.factor);
  const [measure = '', part = ''] = energy.as.split('/');
  const samples = figures.span(rows).count;
  const bridged = sum.gaps ? `; ${seconds(sum.bridged)} of them bridged by straight lines` : '';
  return {
    measure, part, phase, quantity: threeDigits(joules.over(energy.unit.factor), energy), constant: false, firstLine, lastLine, samples,
    lasted: { window: sum.time, phase: sum.time }, place: source.wholeLine(firstLine),
    how: `power summed by trapezoids over ${seconds(sum.time)}${bridged}`,
  };
}

/** Shown with three digits and kept to seven: the sensor's own error is far larger. */
function threeDigits(value: Exact, { unit }: LogEnergy): Quantity {
  const before = Math.floor(Math.log10(Math.abs(value.toNumber()) || 1)) + 1;
  return { value: value.round(7 - before), unit, decimals: Math.max(0, 3 - before) };
}

function tellBridged({ bridged, gaps, time }: Integral, phase: string, column: LogColumn, log: ReadLog, source: Lines, line: () => number): void {
  const many = bridged > mostBridged * time;
  const gone = `${seconds(bridged)} of the ${seconds(time)} of ${phase} have no "${column.at.name}" (${gaps} gap${gaps === 1 ? '' : 's'})`;
  const says = many ? `${gone}: too much to bridge, and no energy is given` : `${gone}; for the energy a straight line was drawn across`;
  log.faults.add(`energy ${column.at.name} ${phase}`, 'log-energy-gap', many ? 'error' : 'warning', () => source.wholeLine(line()), says, { said: column.at.name });
}

export function seconds(s: number): string {
  return `${showNumber(Exact.fromNumber(s), s >= 100 ? 0 : 1)} s`;
}
