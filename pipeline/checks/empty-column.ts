// A column of a log without a single value.
import { type Check, yaml } from './check.js';
import { makeKey } from '../records/index.js';
import { grouped } from './measured.js';
import { hasValues } from './traces.js';
import { count, tell } from './words.js';

const record = (title: string, mark: string) => yaml(`
    title: ${title}
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    layouts: {log: {time: {column: t, unit: s}, phases: {column: stage, map: {load: load}}, columns: {core: temperature/core °C, fan: fan_speed/fan rpm}}}
    logs:
      - {files: run-1.csv, layout: log, for: {setup: bench, workload: scene}, run: "1"}${mark}
`);

export const emptyColumn: Check = {
  name: 'empty-column',
  says: 'A column of a log that the record reads has no value at all.',
  why: 'The sensor does not exist or was not read. Better to know than to have the quantity missing from every table without a word.',
  severity: 'warning',
  right: { record: record('Right', ''), files: { 'run-1.csv': 't,stage,core,fan\n0,load,70,900\n1,load,70,910\n' } },
  wrong: { record: record('Wrong', ' # expect'), files: { 'run-1.csv': 't,stage,core,fan\n0,load,70,\n1,load,70,\n' } },
  run({ facts }) {
    return [...grouped(facts.traces.filter((t) => !hasValues(t)), (t) => makeKey({ measure: t.measure, part: t.part })).entries()].map(([key, empty]) => {
      const all = facts.traces.filter((t) => t.measure === empty[0]!.measure && t.part === empty[0]!.part).length;
      return {
        place: empty[0]!.place, subject: key, said: 'no value',
        message: `${tell(facts.about, key)}: the column is empty in ${empty.length === all ? `${all === 1 ? 'the one log' : `all ${count(all, 'log')}`}` : `${count(empty.length, 'log')} of ${all}`} that should have it`,
        related: empty.slice(1, 6).map((t) => ({ place: t.place, label: [t.setup, t.setting, t.workload, `run ${t.run}`].filter(Boolean).join('/') })),
      };
    });
  },
};
