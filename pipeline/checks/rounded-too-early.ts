// A difference of rounded figures.
import { type Check, yaml } from './check.js';
import { reportStated } from './stated.js';

export const roundedTooEarly: Check = {
  name: 'rounded-too-early',
  says: 'A stated difference was taken between rounded figures.',
  why: 'Differences are taken before rounding; between the rounded figures they come out one off. Viewers subtract what they see, so say so where the two differ.',
  severity: 'warning',
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}, case: {name: Closed case}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, workload: scene}
        temperature/core: {load: 66 66 67 °C}
      - for: {setup: case, workload: scene}
        temperature/core: {load: 72 73 73 °C}
    stated:
      - {difference: [case//scene/temperature/core/load, bench//scene/temperature/core/load], is: 6 K}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}, case: {name: Closed case}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, workload: scene}
        temperature/core: {load: 66 66 67 °C}
      - for: {setup: case, workload: scene}
        temperature/core: {load: 72 73 73 °C}
    stated:
      - {difference: [case//scene/temperature/core/load, bench//scene/temperature/core/load], is: 7 K} # expect
  `) },
  run: (context) => reportStated(context, 'rounded-too-early', (w) => `says ${w.said}, the record gives ${w.suggest}: ${w.slip!.says}`),
};
