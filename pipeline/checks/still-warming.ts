// An averaged window in which the part still gets warmer.
import { isIdle } from '../facts/index.js';
import { type Check, yaml } from './check.js';
import { brief, slope } from './series.js';
import { byQuantity, courses, keyOf, oncePerTest } from './traces.js';
import { listed, tell } from './words.js';

const logLayout = `
    layouts: {log: {time: {column: t, unit: s}, phases: {column: stage, map: {load: load}}, columns: {core: temperature/core °C}}}`;

const rows = (values: number[]): string => ['t,stage,core', ...values.map((v, i) => `${i * 10},load,${v}`)].join('\n') + '\n';

export const stillWarming: Check = {
  name: 'still-warming',
  says: 'A temperature still rises within the window that its load figure is averaged from.',
  why: 'A mean taken before the part is in balance is too low, and depends on how long one waited. Standards call a part steady when it rises by at most 1 K in 5 min (IEC 62368-1, B.1.6).',
  severity: 'note',
  thresholds: ['still-warming', 'still-warming-least'],
  right: {
    record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}${logLayout}
    logs:
      - {files: run-1.csv, layout: log, for: {setup: bench, workload: scene}, run: "1"}
  `), files: { 'run-1.csv': rows([71, 71, 70, 71, 71, 72, 71, 71, 71, 70, 71, 71]) } },
  wrong: {
    record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}${logLayout}
    logs:
      - {files: run-1.csv, layout: log, for: {setup: bench, workload: scene}, run: "1"} # expect
  `), files: { 'run-1.csv': rows([60, 61, 63, 64, 65, 66, 67, 68, 68, 69, 69, 70]) } },
  run({ facts, limits }) {
    const found = byQuantity(facts.traces.filter((t) => t.unit.dimension === 'temperature')).flatMap((runs) => {
      const rising = runs.flatMap((trace) => courses(trace).filter((c) => !isIdle(c.phase)).flatMap((c) => {
        const degrees = trace.unit.id === 'degF' ? 1.8 : 1;
        const perMinute = slope(c.times, c.values) * 60;
        const over = (perMinute / 60) * c.seconds;
        return perMinute > limits.number('still-warming') * degrees && over >= limits.number('still-warming-least') * degrees ? [{ trace, phase: c.phase, perMinute, over, seconds: c.seconds }] : [];
      }));
      const [worst] = [...rising].sort((a, b) => b.over - a.over);
      if (!worst) return [];
      const { trace, phase, perMinute, over, seconds } = worst;
      const key = keyOf(trace, phase);
      const symbol = trace.unit.id === 'degF' ? '°F' : 'K';
      return [{
        trace, place: trace.place, subject: key, said: `${brief(over)} ${symbol} in ${brief(seconds)} s`, recorded: `${brief(perMinute)} ${symbol}/min`,
        message: `${tell(facts.about, key)}: still rising in the averaged window of ${rising.length === 1 ? `run ${trace.run}` : `runs ${listed(rising.map((r) => r.trace.run))}`}; in run ${trace.run} by ${brief(over)} ${symbol} in ${brief(seconds)} s`,
        related: rising.filter((r) => r !== worst).map((r) => ({ place: r.trace.place, label: `run ${r.trace.run}` })),
      }];
    });
    return oncePerTest(found, facts.about);
  },
};
