// A difference turned into another scale as if it were a temperature.
import { type Check, yaml } from './check.js';
import { reportStated } from './stated.js';

export const differenceAsTemperature: Check = {
  name: 'difference-as-temperature',
  says: 'A stated temperature difference was converted as if it were a temperature.',
  why: 'A rise of 20 °C is a rise of 36 °F or 20 K. Converters that take it for a temperature say 68 °F or 293 K.',
  severity: 'error',
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench}
        temperature/core: {idle: 33 33 33 °C}
      - for: {setup: bench, workload: scene}
        temperature/core: {load: 53 53 53 °C}
    stated:
      - {rise: [bench//scene/temperature/core/load, bench///temperature/core/idle], is: 36 °F}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench}
        temperature/core: {idle: 33 33 33 °C}
      - for: {setup: bench, workload: scene}
        temperature/core: {load: 53 53 53 °C}
    stated:
      - {rise: [bench//scene/temperature/core/load, bench///temperature/core/idle], is: 68 °F} # expect
      - {rise: [bench//scene/temperature/core/load, bench///temperature/core/idle], is: 293 K} # expect
  `) },
  run: (context) => reportStated(context, 'as-temperature', (w) => `says ${w.said}, the record gives ${w.suggest}: ${w.slip!.says}`),
};
