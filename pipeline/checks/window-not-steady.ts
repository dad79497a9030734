// A window given by hand that holds what the record's own rule of steadiness would leave out.
import { convert, differenceUnit, Exact, unit } from '../quantities/index.js';
import { mean } from '../statistics/index.js';
import { type Check, type Context, type Report, yaml } from './check.js';
import { grouped } from './measured.js';
import { brief, within } from './series.js';
import { farOff, lastMove, type Looked, looked, secondsOf } from './steadiness.js';
import { keyOf } from './traces.js';
import { listed, tell } from './words.js';

const record = (title: string, window: string, mark: string) => yaml(`
    title: ${title}
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    layouts:
      log:
        time: {column: t, unit: s}
        phases: {column: stage, map: {load: load}}
        windows: {load: ${window}}
        steady: {change: 1 K, within: 60 s}
        columns: {core: temperature/core °C}
    logs:
      - {files: run-1.csv, layout: log, for: {setup: bench, workload: scene}, run: "1"}${mark}
`);

const warming = ['t,stage,core', ...Array.from({ length: 90 }, (_, i) => `${i * 5},load,${(75 - 40 * Math.exp(-i / 12)).toFixed(1)}`)].join('\n') + '\n';

export const windowNotSteady: Check = {
  name: 'window-not-steady',
  says: 'A window given by hand holds what the rule under "steady" leaves out, and its mean moves by it.',
  why: 'The record says what steady means and averages something else. Both are kept: the figure is that of the window given by hand, and this says what the rule would have given.',
  severity: 'note',
  thresholds: ['window-moves-temperature', 'window-moves'],
  right: { record: record('Right', 'last 120 s', ''), files: { 'run-1.csv': warming } },
  wrong: { record: record('Wrong', 'from 60 s', ' # expect'), files: { 'run-1.csv': warming } },
  run(context) {
    const { facts } = context;
    const unlike = looked(facts).flatMap((one) => compare(one, context) ?? []);
    return [...grouped(unlike, ({ one: { trace, window } }) => keyOf(trace, window.phase)).entries()].map(([key, all]): Report => {
      const worst = all.reduce((a, b) => (b.off > a.off ? b : a));
      const { trace, steady } = worst.one;
      return {
        place: trace.place, subject: key, recorded: steady.rule, ...(worst.derivation && { derivation: worst.derivation }),
        message: `${tell(facts.about, key)}: the window given by hand is not steady in ${all.length === 1 ? `run ${trace.run}` : `runs ${listed(all.map((a) => a.one.trace.run))}`} (${steady.rule}); ${all.length > 1 ? `in run ${trace.run} ` : ''}${worst.words}`,
        related: all.filter((a) => a !== worst).map((a) => ({ place: a.one.trace.place, label: `run ${a.one.trace.run}` })),
      };
    });
  },
};

/** What was never steady is told before what was so later. */
const foremost = 1e9;

interface Unlike {
  one: Looked;
  off: number;
  words: string;
  derivation?: string;
}

function compare(one: Looked, { limits }: Context): Unlike | undefined {
  const { trace, window, steady } = one;
  if (steady.finds || steady.tooShort) return undefined;
  if (steady.start === undefined) {
    const far = farOff(one);
    return { one, off: foremost + Math.min(far?.gap ?? 0, foremost), words: `it never was${[lastMove(one), far?.words].filter(Boolean).map((w, i) => `${i ? ', and ' : ': it '}${w}`).join('')}`, ...(far?.derivation && { derivation: far.derivation }) };
  }
  const [given, found] = [window, { phase: '', start: steady.start, end: steady.until }].map((w) => mean(within(trace, w).values));
  const off = Math.abs(given! - found!);
  const kelvin = trace.unit.dimension === 'temperature' && convert(Exact.fromNumber(off), differenceUnit(trace.unit), unit('K'))?.toNumber();
  const moves = kelvin ? kelvin > limits.number('window-moves-temperature') : off > Math.abs(found!) * limits.share('window-moves').toNumber();
  if (!moves) return undefined;
  const symbol = trace.unit.symbol;
  return { one, off, words: `it is so from ${secondsOf(steady.start - steady.since)} after the phase began on, which gives ${brief(found!)} instead of ${brief(given!)} ${symbol}` };
}
