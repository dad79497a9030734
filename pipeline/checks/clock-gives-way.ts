// A clock that falls because the power is at its limit.
import { isFact, isIdle } from '../facts/index.js';
import { convert, Exact } from '../quantities/index.js';
import type { Trace } from '../records/index.js';
import { mean as averageOf } from '../statistics/index.js';
import { type Check, type Context, type Report, yaml } from './check.js';
import { grouped, isLoad, measured, testOf } from './measured.js';
import { brief, within } from './series.js';
import { hasValues, keyOf } from './traces.js';
import { count, derivation, nameOf, readingPlaces, tell } from './words.js';

const rows = (samples: [string, number, number][]): string => ['t,stage,power,clock', ...samples.map(([stage, p, f], i) => `${i * 5},${stage},${p},${f}`)].join('\n') + '\n';
const idle = Array.from({ length: 8 }, (): [string, number, number] => ['idle', 20, 2400]);

const record = (title: string, mark: string) => yaml(`
    title: ${title}
    setups: {bench: {name: Open bench}}
    settings: {stock: {name: Stock, kind: stock, limit: {power/board: 300 W}}}
    workloads: {scene: {name: Test scene}}
    layouts: {log: {time: {column: t, unit: s}, phases: {column: stage, map: {idle: idle, load: load}}, columns: {power: power/board W, clock: frequency/core MHz}}}
    logs:
      - {files: run-1.csv, layout: log, for: {setup: bench, setting: stock, workload: scene}, run: "1"}${mark}
`);

export const clockGivesWay: Check = {
  name: 'clock-gives-way',
  says: 'A clock falls while the power is at its limit.',
  why: 'The limit, not the cooling or the chip, then decides the speed. That is a result worth telling, and settings compared under it compare limits.',
  severity: 'note',
  thresholds: ['at-its-limit', 'clock-falls'],
  right: { record: record('Right', ''), files: { 'run-1.csv': rows([...idle, ...Array.from({ length: 12 }, (): [string, number, number] => ['load', 240, 2400])]) } },
  wrong: { record: record('Wrong', ' # expect'), files: { 'run-1.csv': rows([...idle, ...Array.from({ length: 12 }, (_, i): [string, number, number] => ['load', 298, 2300 - i * 5])]) } },
  run: (context) => {
    const logged = fromTraces(context);
    const told = new Set(logged.map((r) => r.subject!.split('/').slice(0, 3).join('/')));
    return [...logged, ...fromMeans(context).filter((r) => !told.has(r.subject!.split('/').slice(0, 3).join('/')))];
  },
};

interface Fall {
  clock: Trace;
  phase: string;
  power: number;
  limit: number;
  before: number;
  during: number;
}

function fromTraces(context: Context): Report[] {
  const { facts } = context;
  const runs = grouped(facts.traces.filter(hasValues), (t) => `${t.setup}/${t.setting}/${t.workload}#${t.run}`);
  const falls = [...runs.values()].flatMap((traces) => {
    const power = traces.find((t) => t.unit.dimension === 'power' && !isLimit(t));
    const clocks = traces.filter((t) => t.unit.dimension === 'frequency' && !/memory/.test(t.part));
    return power ? clocks.flatMap((clock) => fallOf(clock, power, traces.find(isLimit), context) ?? []) : [];
  });
  return [...grouped(falls, ({ clock, phase }) => keyOf(clock, phase)).entries()].map(([key, all]) => {
    const { clock, before, during, power, limit } = all[0]!;
    const unit = clock.unit.symbol;
    return {
      place: clock.place, subject: key, said: `${brief(during)} ${unit}`, recorded: `${brief(before)} ${unit}`, derivation: `${brief(power)} W of ${brief(limit)} W`,
      message: `${tell(facts.about, key)}: the clock falls from ${brief(before)} to ${brief(during)} ${unit} while the power is at its limit (${brief(power)} W of ${brief(limit)} W), in ${count(all.length, 'run')}`,
      related: all.slice(1).map((f) => ({ place: f.clock.place, label: `run ${f.clock.run}` })),
    };
  });
}

function fallOf(clock: Trace, power: Trace, limitTrace: Trace | undefined, context: Context): Fall | undefined {
  const window = power.windows.find((w) => !isIdle(w.phase));
  if (!window) return undefined;
  const drawn = averageOf(within(power, window).values);
  const limit = limitTrace ? averageOf(within(limitTrace, window).values) : declared(power, window.phase, context);
  if (!(limit !== undefined && drawn >= limit * context.limits.share('at-its-limit').toNumber())) return undefined;
  const during = averageOf(within(clock, window).values);
  const earlier = within(clock, { phase: '', start: -Infinity, end: window.start }).values;
  const inside = within(clock, window).values;
  const before = Math.max(...(earlier.length ? earlier : inside.slice(0, Math.max(1, inside.length >> 3))));
  if (!(during < before * (1 - context.limits.share('clock-falls').toNumber()))) return undefined;
  return { clock, phase: window.phase, power: drawn, limit, before, during };
}

function isLimit(t: Trace): boolean {
  return t.unit.dimension === 'power' && (/limit/.test(t.measure) || /limit/.test(t.part));
}

/** The declared limit in the unit of the trace. */
function declared(power: Trace, phase: string, { facts }: Context): number | undefined {
  const key = facts.constantFor(keyOf(power, phase), 'limit');
  const limit = key && facts.value(key);
  return limit && isFact(limit) ? convert(limit.value, limit.unit, power.unit)?.toNumber() : undefined;
}

/** Without logs: power at its limit under load, and a clock below its target or rated value. */
function fromMeans({ facts, limits }: Context): Report[] {
  const loads = measured(facts).filter(({ at }) => isLoad(at));
  return [...grouped(loads, ({ at }) => `${testOf(at)} ${at.phase}`).values()].flatMap((all) => {
    const power = all.find(({ key, mean }) => {
      const limitKey = mean?.unit.dimension === 'power' ? facts.constantFor(key, 'limit') : undefined;
      const limit = limitKey && facts.value(limitKey);
      const top = limit && isFact(limit) && convert(limit.value, limit.unit, mean!.unit);
      return top && mean!.value.compare(top.times(limits.share('at-its-limit'))) >= 0;
    });
    if (!power) return [];
    return all.flatMap(({ key, readings, mean }) => {
      if (mean?.unit.dimension !== 'frequency') return [];
      const goalKey = facts.constantFor(key, 'target') ?? facts.constantFor(key, 'rated');
      const goal = goalKey && facts.value(goalKey);
      const due = goal && isFact(goal) ? convert(goal.value, goal.unit, mean.unit) : undefined;
      if (!due || !goal || !isFact(goal) || mean.value.compare(due.times(Exact.of(1).minus(limits.share('clock-falls')))) >= 0) return [];
      return [{
        place: readings[0]!.place, subject: key, said: mean.shown, recorded: goal.shown, derivation: derivation(power.mean!),
        message: `${tell(facts.about, key)} says ${mean.shown} of ${goal.shown} while the power is at its limit (${power.mean!.shown}, ${nameOf(facts.about, 'setting', power.at.setting)})`,
        related: readingPlaces(power.readings, (r) => `power, run ${r.run}`),
      }];
    });
  });
}
