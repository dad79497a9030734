// An idle window that begins before the part is idle.
import { isIdle } from '../facts/index.js';
import { type Check, yaml } from './check.js';
import { brief, ends } from './series.js';
import { byQuantity, courses, keyOf, oncePerTest } from './traces.js';
import { listed, tell } from './words.js';

const logLayout = `
    layouts: {log: {time: {column: t, unit: s}, phases: {column: stage, map: {idle: idle}}, columns: {core: temperature/core °C}}}`;

const rows = (values: number[]): string => ['t,stage,core', ...values.map((v, i) => `${i * 5},idle,${v}`)].join('\n') + '\n';

export const idleNotSettled: Check = {
  name: 'idle-not-settled',
  says: 'The values of a log still drift within the idle window.',
  why: 'The first seconds of a log are often not idle yet: the logger itself has woken the part, or it still cools down from the run before. Begin the window later, or wait longer.',
  severity: 'warning',
  thresholds: ['idle-not-settled-temperature', 'idle-not-settled'],
  right: {
    record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}${logLayout}
    logs:
      - {files: run-1.csv, layout: log, for: {setup: bench, workload: scene}, run: "1"}
  `), files: { 'run-1.csv': rows([38, 38, 39, 38, 38, 38, 38, 39, 38, 38, 38, 38]) } },
  wrong: {
    record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}${logLayout}
    logs:
      - {files: run-1.csv, layout: log, for: {setup: bench, workload: scene}, run: "1"} # expect
  `), files: { 'run-1.csv': rows([50, 49, 48, 47, 46, 45, 45, 44, 44, 43, 43, 43]) } },
  run({ facts, limits }) {
    const found = byQuantity(facts.traces).flatMap((runs) => {
      const drifting = runs.flatMap((trace) => courses(trace).filter((c) => isIdle(c.phase)).flatMap((c) => {
        const { first, last } = ends(c.values);
        const allowed = trace.unit.dimension === 'temperature' ? limits.number('idle-not-settled-temperature') * (trace.unit.id === 'degF' ? 1.8 : 1)
          : trace.unit.dimension === 'power' ? Math.abs(last) * limits.share('idle-not-settled').toNumber() : Infinity;
        return Math.abs(first - last) > allowed ? [{ trace, phase: c.phase, first, last }] : [];
      }));
      const [worst] = [...drifting].sort((a, b) => Math.abs(b.first - b.last) - Math.abs(a.first - a.last));
      if (!worst) return [];
      const { trace, phase, first, last } = worst;
      const key = keyOf(trace, phase);
      return [{
        trace, place: trace.place, subject: key, said: `${brief(first)} ${trace.unit.symbol}`, recorded: `${brief(last)} ${trace.unit.symbol}`,
        message: `${tell(facts.about, key)}: the idle window of ${drifting.length === 1 ? `run ${trace.run}` : `runs ${listed(drifting.map((d) => d.trace.run))}`} has not settled; in run ${trace.run} it goes from ${brief(first)} to ${brief(last)} ${trace.unit.symbol}`,
        slip: first > last ? 'still cooling down from what ran before' : 'the part was not at rest yet when the log began',
        related: drifting.filter((d) => d !== worst).map((d) => ({ place: d.trace.place, label: `run ${d.trace.run}` })),
      }];
    });
    return oncePerTest(found, facts.about);
  },
};
