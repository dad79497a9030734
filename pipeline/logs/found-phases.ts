// Idle and load of a log that does not say its phases, by a quantity that is low in the one and high in the other.
import { levelBorder } from '../statistics/index.js';
import type { LogLayout } from './layout.js';
import type { ReadLog } from './read-log.js';
import type { Lines } from '../places/index.js';

/** What lasts no longer than this, in seconds, is a jerk and no phase. Common practice, no published source. */
const jerk = 5;

interface Run {
  from: number;
  to: number;
  high: boolean;
}

/**
 * The log with its phases and the layout as if a column said them: load is the longest stretch on the high level, idle the
 * longest on the low one before it (or after, where there is none before); everything else is left out. A log that says its
 * phases is given back as it is.
 */
export function withPhases(log: ReadLog, layout: LogLayout, source: Lines): { log: ReadLog; layout: LogLayout } {
  if (!layout.phasesBy) return { log, layout };
  const column = layout.columns[layout.phasesBy.column]!;
  const { values } = log.columns[layout.phasesBy.column]!;
  const asIf: LogLayout = { ...layout, phaseColumn: { at: column.at, place: layout.phasesBy.place } };
  const phases = Array.from({ length: values.length }, () => '');
  const border = levelBorder(values, column.unit.dimension !== 'share');
  if (border === undefined) {
    log.faults.add('levels', 'log-phase-missing', 'error', () => source.wholeLine(log.lines[0]!), `idle and load cannot be told apart by "${column.at.name}": its values do not stand on two levels`, { said: column.at.name });
    return { log: { ...log, phases }, layout: asIf };
  }
  const runs = calm(runsOf(values, border), log.times, log.ends);
  const length = (r: Run): number => log.ends[r.to - 1]! - log.times[r.from]!;
  const longest = (of: readonly Run[]): Run | undefined => of.reduce<Run | undefined>((a, b) => (a && length(a) >= length(b) ? a : b), undefined);
  const load = longest(runs.filter((r) => r.high))!;
  const rest = runs.filter((r) => !r.high);
  const idle = longest(rest.filter((r) => r.to <= load.from && length(r) > jerk)) ?? longest(rest);
  phases.fill('load', load.from, load.to);
  if (idle) phases.fill('idle', idle.from, idle.to);
  return { log: { ...log, phases }, layout: asIf };
}

function runsOf(values: Float64Array, border: number): Run[] {
  const runs: Run[] = [];
  let high = false;
  for (let i = 0; i < values.length; i++) {
    if (!Number.isNaN(values[i]!)) high = values[i]! > border;
    const last = runs.at(-1);
    if (last && last.high === high) last.to = i + 1;
    else runs.push({ from: i, to: i + 1, high });
  }
  return runs;
}

/** Jerks go to what is around them, the shortest first. */
function calm(runs: Run[], times: Float64Array, ends: Float64Array): Run[] {
  for (;;) {
    const lengths = runs.map((r) => ends[r.to - 1]! - times[r.from]!);
    const shortest = lengths.reduce((best, l, i) => (l < lengths[best]! ? i : best), 0);
    if (runs.length < 3 || lengths[shortest]! > jerk) return runs;
    const around = runs.slice(Math.max(0, shortest - 1), shortest + 2);
    const high = shortest === 0 ? runs[1]!.high : runs[shortest - 1]!.high;
    runs.splice(Math.max(0, shortest - 1), around.length, { from: around[0]!.from, to: around.at(-1)!.to, high });
  }
}
