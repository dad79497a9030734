// How long a clock was held back: it stands below where it could, while the power or a temperature is at its limit.
import { convert, Exact, type Quantity, type Unit, unit } from '../quantities/index.js';
import type { Lines } from '../places/index.js';
import type { Integral } from '../statistics/index.js';
import { integralOf, lineOfGap } from './bucket-integral.js';
import { mostBridged, seconds } from './energy.js';
import { heldBack, type Watched } from './held-back.js';
import type { LogLayout, LogThrottle } from './layout.js';
import { busyPhases, gapOf, wholePhases } from './phases.js';
import type { ReadLog } from './read-log.js';
import type { LogValue } from './sensor-log.js';
import type { Window } from './windows.js';

/** What the record states for a measure and part of the log's test: its limit, target or rating. */
export type StatedFor = (measure: string, part: string, phase: 'limit' | 'target' | 'rated') => Quantity | undefined;

/** Within this of its limit, a temperature is at it. */
const kelvinBelowLimit = 1;

interface Column extends Watched {
  unit: Unit;
  name: string;
}

/** Seconds throttled, and their share of the phase, for every phase but idle (and for that where there is no other). */
export function throttleValues(log: ReadLog, layout: LogLayout, windows: readonly Window[], source: Lines, stated: StatedFor): LogValue[] {
  const { throttle } = layout;
  const clock = throttle && columnOf(log, layout, throttle.clock);
  if (!throttle || !clock) return [];
  const limits = throttle.limits.flatMap((path) => {
    const column = columnOf(log, layout, path);
    const limit = column && limitOf(log, layout, path, column.unit, stated);
    if (column && limit === undefined) {
      log.faults.add(`limit ${path}`, 'log-limit-missing', 'warning', () => throttle.place, `nothing states the limit of ${path}, so it cannot be told when it was reached; give it under constants (${path}/limit), with the setting, or as a column`, { said: path });
    }
    return column && limit !== undefined ? [{ column, least: column.unit.dimension === 'temperature' ? limit - Exact.of(kelvinBelowLimit).over(column.unit.factor).toNumber() : limit * throttle.at }] : [];
  });
  const top = limits.length ? topOf(clock, throttle, stated) : undefined;
  if (top === undefined) return [];
  const below = top * (1 - throttle.below);
  const { first: held, last, area } = heldBack(log, clock, below, limits);
  return busyPhases(wholePhases(log, layout, windows)).flatMap(({ phase, rows }) => {
    const sum = integralOf(log, held, rows, gapOf(log), (b) => area[b]!, { firstIn: (b) => held[b]!, lastIn: (b) => last[b]! });
    if (sum.time <= 0) return [];
    if (sum.gaps > 0) tellCarried(sum, phase, clock.name, log, source, () => lineOfGap(log, held, rows, gapOf(log)));
    if (sum.bridged > mostBridged * sum.time) return [];
    const [firstLine, lastLine] = [log.lines[rows[0]![0]]!, log.lastLines[rows.at(-1)![1] - 1]!];
    const samples = rows.reduce((n, [from, to]) => n + log.rows.subarray(from, to).reduce((a, b) => a + b, 0), 0);
    const how = `time with the clock more than ${percent(throttle.below)} below ${Math.round(top)} ${clock.unit.symbol} and ${limits.map(({ column }) => column.name).join(' or ')} at the limit (${limits.map(({ column }) => (column.unit.dimension === 'temperature' ? 'within 1 K' : `from ${percent(throttle.at)}`)).join(', ')}), over ${seconds(sum.time)}${sum.gaps ? `; ${seconds(sum.bridged)} of them bridged` : ''}`;
    const give = (as: string | undefined, quantity: Quantity): LogValue[] => {
      const [measure = '', part = ''] = as?.split('/') ?? [];
      return as ? [{ measure, part, phase, quantity, constant: false, firstLine, lastLine, samples, lasted: { window: sum.time, phase: sum.time }, place: source.wholeLine(firstLine), how }] : [];
    };
    return [
      ...give(throttle.time, { value: Exact.fromNumber(sum.area).round(3), unit: unit('s'), decimals: 0 }),
      ...give(throttle.share, { value: Exact.fromNumber((100 * sum.area) / sum.time).round(3), unit: unit('%'), decimals: 0 }),
    ];
  });
}

function tellCarried({ bridged, gaps, time }: Integral, phase: string, clock: string, log: ReadLog, source: Lines, line: () => number): void {
  const many = bridged > mostBridged * time;
  const gone = `${seconds(bridged)} of the ${seconds(time)} of ${phase} have no "${clock}", or nothing that limits it (${gaps} gap${gaps === 1 ? '' : 's'})`;
  const says = many ? 'too much to bridge, and no throttled time is given' : 'for the throttled time half of each gap counts as what was before it and half as what was behind it';
  log.faults.add(`throttle ${phase}`, 'log-throttle-gap', many ? 'error' : 'warning', () => source.wholeLine(line()), `${gone}${many ? ': ' : '; '}${says}`, { said: clock });
}

function columnOf(log: ReadLog, layout: LogLayout, path: string): Column | undefined {
  const i = layout.columns.findIndex((c) => c.phase === undefined && `${c.measure}/${c.part}` === path);
  const column = layout.columns[i];
  return column && !log.columns[i]!.empty ? { index: i, values: log.columns[i]!.values, figures: log.columns[i]!.figures, unit: column.unit, name: column.at.name } : undefined;
}

/** A column that the log repeats comes before what the record states. */
function limitOf(log: ReadLog, layout: LogLayout, path: string, u: Unit, stated: StatedFor): number | undefined {
  const [measure = '', part = ''] = path.split('/');
  const i = layout.columns.findIndex((c) => c.phase === 'limit' && c.measure === measure && c.part === part);
  if (i >= 0) {
    const first = log.columns[i]!.values.find((v) => !Number.isNaN(v));
    return first === undefined ? undefined : convert(Exact.fromNumber(first), layout.columns[i]!.unit, u)?.toNumber();
  }
  const limit = stated(measure, part, 'limit');
  return limit && convert(limit.value, limit.unit, u)?.toNumber();
}

/** Where the clock could stand: its target or rating, else the highest that this log shows. */
function topOf(clock: Column, throttle: LogThrottle, stated: StatedFor): number | undefined {
  const [measure = '', part = ''] = throttle.clock.split('/');
  const said = stated(measure, part, 'target') ?? stated(measure, part, 'rated');
  const due = said && convert(said.value, said.unit, clock.unit)?.toNumber();
  if (due !== undefined) return due;
  let top = -Infinity;
  for (let b = 0; b < clock.values.length; b++) if (clock.figures.high(b) > top) top = clock.figures.high(b);
  return Number.isFinite(top) ? top : undefined;
}

function percent(share: number): string {
  return `${Math.round(share * 1000) / 10} %`;
}
