// A value told elsewhere that the readings do not give.
import { type Check, yaml } from './check.js';
import { reportStated } from './stated.js';

export const statedValue: Check = {
  name: 'stated-value',
  says: 'A stated value is not what the readings give.',
  why: 'What stands in a thumbnail or a pinned comment was copied by hand, often before the last run. The readings are the one source.',
  severity: 'error',
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    settings: {stock: {name: Stock, kind: stock}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, setting: stock}
        temperature/core: {idle: 28 28 28 °C}
      - for: {setup: bench, setting: stock, workload: scene}
        temperature/core: {load: 49 49 49 °C}
    stated:
      - {rise: [bench/stock/scene/temperature/core/load, bench/stock//temperature/core/idle], is: 21 K, where: thumbnail}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    settings: {stock: {name: Stock, kind: stock}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, setting: stock}
        temperature/core: {idle: 28 28 28 °C}
      - for: {setup: bench, setting: stock, workload: scene}
        temperature/core: {load: 49 49 49 °C}
    stated:
      - {rise: [bench/stock/scene/temperature/core/load, bench/stock//temperature/core/idle], is: 25 K, where: thumbnail} # expect
  `) },
  run: (context) => reportStated(context, 'value', (w) => `says ${w.said}, the record gives ${w.recorded} (${w.fact!.formula})`),
};
