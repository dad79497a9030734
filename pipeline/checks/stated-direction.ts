// The right size with the wrong sign.
import { type Check, yaml } from './check.js';
import { reportStated } from './stated.js';

export const statedDirection: Check = {
  name: 'stated-direction',
  says: 'A stated difference or change has the right size and the wrong direction.',
  why: 'The subject stands first and the base last; a cooler setting told as warmer is worse than a number a little off.',
  severity: 'error',
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    settings: {stock: {name: Stock, kind: stock}, low: {name: Low limit, kind: power-limit}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, setting: stock, workload: scene}
        power/board: {load: 415 415 415 W}
      - for: {setup: bench, setting: low, workload: scene}
        power/board: {load: 355 355 355 W}
    stated:
      - {difference: [bench/low/scene/power/board/load, bench/stock/scene/power/board/load], is: -60 W}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    settings: {stock: {name: Stock, kind: stock}, low: {name: Low limit, kind: power-limit}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, setting: stock, workload: scene}
        power/board: {load: 415 415 415 W}
      - for: {setup: bench, setting: low, workload: scene}
        power/board: {load: 355 355 355 W}
    stated:
      - {difference: [bench/low/scene/power/board/load, bench/stock/scene/power/board/load], is: 60 W} # expect
  `) },
  run: (context) => reportStated(context, 'direction', (w) => `says ${w.said}, the record gives ${w.recorded} (${w.fact!.formula}): the other direction`),
};
