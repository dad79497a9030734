// A run whose log ends long before those of its sister runs.
import { isIdle } from '../facts/index.js';
import type { Reading } from '../records/index.js';
import { type Check, type Context, type Report, yaml } from './check.js';
import { grouped, type Measured, measured, testOf } from './measured.js';
import { listed, nameOf } from './words.js';

const logLayout = `
    layouts: {log: {time: {column: t, unit: s}, phases: {column: stage, map: {load: load}}, windows: {load: last 60 s}, columns: {core: temperature/core °C}}}`;
const log = (seconds: number): string => ['t,stage,core', ...Array.from({ length: seconds / 10 + 1 }, (_, i) => `${i * 10},load,${70 + (i % 2)}`)].join('\n') + '\n';
const example = (title: string): string => yaml(`
    title: ${title}
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}${logLayout}
    logs:
      - {files: "run-{run}.csv", layout: log, for: {setup: bench, workload: scene}}
`);

export const runLengthDiffers: Check = {
  name: 'run-length-differs',
  says: 'The log of a run is much shorter, or much longer, than those of the other runs of its test.',
  why: 'A log that was cut between two lines has no broken line to give it away, and "the last minute" of it is another minute of the test. What counts is how long the phase had lasted when the averaged window ended; for idle, which is waited for, how long the window itself lasts.',
  severity: 'warning',
  thresholds: ['run-length-differs'],
  right: { record: example('Right'), files: { 'run-1.csv': log(300), 'run-2.csv': log(310), 'run-3.csv': log(290) } },
  wrong: { record: `${example('Wrong').trimEnd()} # expect: run-length-differs@run-3.csv:20\n`, files: { 'run-1.csv': log(300), 'run-2.csv': log(310), 'run-3.csv': log(180) } },
  run(context) {
    const found = measured(context.facts).flatMap((m) => oddLengths(m, context));
    return [...grouped(found, ({ report, run }) => `${report.subject} ${run}`).values()].map((all) => all[0]!.report);
  },
};

function oddLengths({ at, readings }: Measured, { facts, limits }: Context): { report: Report; run: string }[] {
  const timed = readings.flatMap((r) => (r.log?.lasted ? [{ r, seconds: isIdle(at.phase) && !r.log.steady?.finds ? r.log.lasted.window : r.log.lasted.phase }] : []));
  if (timed.length < 2) return [];
  const usual = [...timed].sort((a, b) => a.seconds - b.seconds)[timed.length >> 1]!.seconds;
  const share = limits.share('run-length-differs').toNumber();
  return timed.filter(({ seconds }) => seconds < share * usual || usual < share * seconds).map(({ r, seconds }) => {
    const others = timed.filter((o) => o.r !== r);
    const where = [at.setup, at.setting, at.workload].map((id, i) => (id ? nameOf(facts.about, (['setup', 'setting', 'workload'] as const)[i]!, id) : '')).filter(Boolean).join(', ');
    return {
      run: r.run,
      report: {
        place: lastLineOf(r), subject: testOf(at), said: told(seconds), recorded: told(usual),
        message: `${where ? `${where}: ` : ''}run ${r.run} has ${told(seconds)} of ${nameOf(facts.about, 'phase', at.phase).toLowerCase()}, ${others.length === 1 ? 'run' : 'runs'} ${listed(others.map((o) => o.r.run))} ${listed([...new Set(others.map((o) => told(o.seconds)))])}; what is averaged is another part of the test${seconds < usual ? ' (does the log break off?)' : ''}`,
        related: others.map((o) => ({ place: lastLineOf(o.r), label: `the end of run ${o.r.run}` })),
      },
    };
  });
}

function lastLineOf({ place, log }: Reading): Report['place'] {
  const line = log?.lastLine ?? place.line;
  return { file: place.file, line, column: 1, endLine: line, endColumn: 2 };
}

function told(seconds: number): string {
  return `${Math.round(seconds)} s`;
}
