// The method promises another number of runs than there are.
import { type Check, type Report, yaml } from './check.js';
import { measured } from './measured.js';
import { promisedRuns } from './promised-runs.js';
import { mostCommon } from './run-counts-differ.js';
import { count } from './words.js';

export const runsNotAsSaid: Check = {
  name: 'runs-not-as-said',
  says: 'The method speaks of a number of runs that the record does not have.',
  why: 'The method is read aloud and shown on the conditions card; it must describe this record and not the last one.',
  severity: 'warning',
  right: { record: yaml(`
    title: Right
    method: [Each figure is the mean of three runs.]
    setups: {a: {name: Ash}}
    readings:
      - {for: {setup: a}, power/wall: {idle: 40 41 40 W}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    method:
      - Each figure is the mean of five runs. # expect
    setups: {a: {name: Ash}}
    readings:
      - {for: {setup: a}, power/wall: {idle: 40 41 40 W}}
  `) },
  run({ episode, facts }) {
    const usual = mostCommon(measured(facts).map(({ key }) => facts.readings(key, { aside: true }).length));
    if (usual === 0) return [];
    return promisedRuns(episode).flatMap(({ runs, place }): Report[] => {
      if (runs === usual) return [];
      const report = { place, subject: 'method', said: count(runs, 'run'), recorded: count(usual, 'run') };
      return usual === 1
        ? [{ ...report, severity: 'note', message: `the method says ${count(runs, 'run')}, most readings are one figure; with the runs themselves their spread could be told` }]
        : [{ ...report, message: `the method says ${count(runs, 'run')}, most readings have ${count(usual, 'run')}` }];
    });
  },
};
