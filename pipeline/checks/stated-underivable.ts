// A value told elsewhere that cannot come from what it names.
import { type Check, yaml } from './check.js';
import { reportStated } from './stated.js';

export const statedUnderivable: Check = {
  name: 'stated-underivable',
  says: 'A stated value cannot come from the readings that it names.',
  why: 'A figure that does not follow from the record cannot be shown to be right, and was often meant for other readings.',
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
        temperature/core: {load: 67 67 68 °C}
    stated:
      - {difference: [bench/stock/scene/power/board/load, bench/stock/scene/temperature/core/load], is: 180 W} # expect
      - {rank.better: [bench/stock/scene/power/board/load, bench/stock/scene/power/board/load], is: 1} # expect
  `) },
  run: (context) => reportStated(context, 'underivable', (w) => `says ${w.said}, which the record cannot give: ${w.why}`),
};
