// A value told elsewhere that no reading stands behind.
import { type Check, yaml } from './check.js';
import { reportStated } from './stated.js';

export const statedWithoutReadings: Check = {
  name: 'stated-without-readings',
  says: 'A stated value names readings that the record does not have.',
  why: 'A figure that rests on nothing in the record cannot be shown to be right, and was often meant for another reading.',
  severity: 'error',
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    settings: {stock: {name: Stock, kind: stock}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, setting: stock, workload: scene}
        power/board: {load: 247 248 248 W}
    stated:
      - {mean: [bench/stock/scene/power/board/load], is: 248 W}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    settings: {stock: {name: Stock, kind: stock}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, setting: stock, workload: scene}
        power/board: {load: 247 248 248 W}
    stated:
      - {rise: [bench/stock/scene/power/board/load, bench/stock//power/board/idle], is: 230 W} # expect
  `) },
  run: (context) => reportStated(context, 'without-readings', (w) => `says ${w.said}, and the record has nothing that it could rest on: ${w.why}`),
};
