// A window that was to be found where a quantity is steady, and it never was.
import { type Check, type Report, yaml } from './check.js';
import { grouped } from './measured.js';
import { farOff, lastMove, looked, secondsOf } from './steadiness.js';
import { keyOf } from './traces.js';
import { count, listed, tell } from './words.js';

const record = (title: string, mark: string) => yaml(`
    title: ${title}
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    layouts:
      log:
        time: {column: t, unit: s}
        phases: {column: stage, map: {load: load}}
        windows: {load: steady}
        steady: {change: 1 K, within: 60 s}
        columns: {core: temperature/core °C}
    logs:
      - {files: run-1.csv, layout: log, for: {setup: bench, workload: scene}, run: "1"}${mark}
`);

/** 40 K of warming with a time constant of 60 s. */
const warming = (samples: number): string => ['t,stage,core', ...Array.from({ length: samples }, (_, i) => `${i * 5},load,${(75 - 40 * Math.exp(-i / 12)).toFixed(1)}`)].join('\n') + '\n';

export const neverSteady: Check = {
  name: 'never-steady',
  says: 'A window was to be found where a quantity is steady, and it never was.',
  why: 'The figure is then a mean on the way to somewhere: it depends on how long one waited. How far it still had to go is told by a least-squares fit of an exponential approach, its uncertainty widened for samples that resemble each other. Run longer, or say under "steady" what is steady enough.',
  severity: 'warning',
  right: { record: record('Right', ''), files: { 'run-1.csv': warming(90) } },
  wrong: { record: record('Wrong', ' # expect'), files: { 'run-1.csv': warming(24) } },
  run({ facts }) {
    const never = looked(facts).filter(({ steady }) => steady.finds && steady.start === undefined);
    return [...grouped(never, ({ trace, window }) => keyOf(trace, window.phase)).entries()].map(([key, runs]): Report => {
      const told = runs.map((one) => ({ one, off: farOff(one) }));
      const worst = told.reduce((a, b) => ((b.off?.gap ?? 0) > (a.off?.gap ?? 0) ? b : a));
      const { trace, steady } = worst.one;
      const all = runs.length === 1 ? `run ${trace.run}` : `runs ${listed(runs.map((r) => r.trace.run))}`;
      const short = steady.tooShort ? `; the phase lasts ${secondsOf(steady.until - steady.since)}, shorter than that span` : '';
      const inRun = runs.length > 1 ? `in run ${trace.run} ` : '';
      const move = lastMove(worst.one);
      const moved = move && `${inRun}it ${move}`;
      const clauses = [moved, worst.off && `${moved ? '' : inRun}${worst.off.words}`].filter(Boolean).join(', and ');
      return {
        place: trace.place, subject: key, recorded: steady.rule, ...(move && { said: move }), ...(worst.off?.derivation && { derivation: worst.off.derivation }),
        message: `${tell(facts.about, key)}: never steady in ${all} (${steady.rule})${short}${clauses ? `; ${clauses}` : ''}. ${runs.length === 1 ? 'Its end was' : `The ends of the ${count(runs.length, 'run')} were`} averaged instead`,
        related: runs.filter((r) => r !== worst.one).map((r) => ({ place: r.trace.place, label: `run ${r.trace.run}` })),
      };
    });
  },
};
