// A clock that falls because the power or a temperature is at its limit.
import { isFact, isIdle, quantityName, withFields } from '../facts/index.js';
import { convert, differenceUnit, Exact, unit } from '../quantities/index.js';
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
  says: 'A clock falls while the power or a temperature is at its limit.',
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
  /** "the power is at its limit (298 W of 300 W)". */
  held: string;
  derivation: string;
  before: number;
  during: number;
}

function fromTraces(context: Context): Report[] {
  const { facts } = context;
  const runs = grouped(facts.traces.filter(hasValues), (t) => `${t.setup}/${t.setting}/${t.workload}#${t.run}`);
  const falls = [...runs.values()].flatMap((traces) => {
    const clocks = traces.filter((t) => t.unit.dimension === 'frequency' && !/memory/.test(t.part));
    const power = traces.find((t) => t.unit.dimension === 'power' && !isLimit(t));
    const hot = traces.filter((t) => t.unit.dimension === 'temperature');
    const held = [...(power ? [power] : []), ...hot].map((t) => atLimit(t, traces.find(isLimit), context)).find((h) => h !== undefined);
    return held ? clocks.flatMap((clock) => fallOf(clock, held, context) ?? []) : [];
  });
  return [...grouped(falls, ({ clock, phase }) => keyOf(clock, phase)).entries()].map(([key, all]) => {
    const { clock, before, during, held, derivation: of } = all[0]!;
    const symbol = clock.unit.symbol;
    return {
      place: clock.place, subject: key, said: `${brief(during)} ${symbol}`, recorded: `${brief(before)} ${symbol}`, derivation: of,
      message: `${tell(facts.about, key)}: the clock falls from ${brief(before)} to ${brief(during)} ${symbol} while ${held}, in ${count(all.length, 'run')}${heldBack(context, key)}`,
      related: all.slice(1).map((f) => ({ place: f.clock.place, label: `run ${f.clock.run}` })),
    };
  });
}

/** What the log was asked besides: "; it was held back for 99 % of the time". */
function heldBack({ facts }: Context, key: string): string {
  const share = withFields(key, { measure: 'throttled_share' });
  const fact = facts.readings(share).length ? facts.value(share) : undefined;
  return isFact(fact) ? `; it was held back for ${fact.shown} of the time` : '';
}

interface Held {
  window: Trace['windows'][number];
  says: string;
  derivation: string;
}

/** The first stretch of load, where the trace stands at its limit in it. */
function atLimit(trace: Trace, limitTrace: Trace | undefined, context: Context): Held | undefined {
  const window = trace.windows.find((w) => !isIdle(w.phase));
  if (!window) return undefined;
  const hot = trace.unit.dimension === 'temperature';
  const level = averageOf(within(trace, window).values);
  const limit = limitTrace && !hot ? averageOf(within(limitTrace, window).values) : declared(trace, window.phase, context);
  if (limit === undefined || !(level >= (hot ? limit - kelvinBelow(trace) : limit * context.limits.share('at-its-limit').toNumber()))) return undefined;
  const derivation = `${brief(level)} ${trace.unit.symbol} of ${brief(limit)} ${trace.unit.symbol}`;
  return { window, derivation, says: `the ${hot ? quantityName(context.facts.about, trace.measure, trace.part).toLowerCase() : 'power'} is at its limit (${derivation})` };
}

/** A temperature within 1 K of its limit is at it. */
function kelvinBelow(trace: Trace): number {
  return convert(Exact.of(1), unit('K'), differenceUnit(trace.unit))!.toNumber();
}

function fallOf(clock: Trace, { window, says, derivation }: Held, context: Context): Fall | undefined {
  const during = averageOf(within(clock, window).values);
  const earlier = within(clock, { phase: '', start: -Infinity, end: window.start }).values;
  const inside = within(clock, window).values;
  const before = Math.max(...(earlier.length ? earlier : inside.slice(0, Math.max(1, inside.length >> 3))));
  if (!(during < before * (1 - context.limits.share('clock-falls').toNumber()))) return undefined;
  return { clock, phase: window.phase, held: says, derivation, before, during };
}

function isLimit(t: Trace): boolean {
  return t.unit.dimension === 'power' && (/limit/.test(t.measure) || /limit/.test(t.part));
}

/** The declared limit in the unit of the trace. */
function declared(trace: Trace, phase: string, { facts }: Context): number | undefined {
  const key = facts.constantFor(keyOf(trace, phase), 'limit');
  const limit = key && facts.value(key);
  return limit && isFact(limit) ? convert(limit.value, limit.unit, trace.unit)?.toNumber() : undefined;
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
