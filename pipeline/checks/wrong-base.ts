// A percentage taken of something else than its base.
import { type Check, yaml } from './check.js';
import { reportStated } from './stated.js';

export const wrongBase: Check = {
  name: 'wrong-base',
  says: 'A stated percentage or ratio is right for another base than the one it names; the finding says which.',
  why: 'From 415 W to 355 W is 14 % less, of 415. Taken of 355 it looks like 17 %, and nobody can tell from the number alone.',
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
      - {percent_change: [bench/low/scene/power/board/load, bench/stock/scene/power/board/load], is: -14 %}
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
      - {percent_change: [bench/low/scene/power/board/load, bench/stock/scene/power/board/load], is: -17 %} # expect
  `) },
  run: (context) => reportStated(context, 'wrong-base', (w) => `says ${w.said}, the record gives ${w.recorded} (${w.fact!.formula}); ${w.said} comes out ${w.slip!.says}`),
};
