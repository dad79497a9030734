// A percent of a temperature on a scale with an arbitrary zero.
import { type Check, yaml } from './check.js';
import { reportStated } from './stated.js';

export const percentOfTemperature: Check = {
  name: 'percent-of-temperature',
  says: 'A percent, share or ratio is taken of a temperature in °C or °F.',
  why: 'Their zero is arbitrary: 60 °C to 54 °C would be 10 %, and the same two temperatures in °F 7 %. Tell the difference, or a percent of the rise over the room.',
  severity: 'error',
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}, case: {name: Closed case}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, workload: scene}
        temperature/core: {load: 54 54 54 °C}
      - for: {setup: case, workload: scene}
        temperature/core: {load: 60 60 60 °C}
    stated:
      - {difference: [bench//scene/temperature/core/load, case//scene/temperature/core/load], is: -6 K}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}, case: {name: Closed case}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, workload: scene}
        temperature/core: {load: 54 54 54 °C}
      - for: {setup: case, workload: scene}
        temperature/core: {load: 60 60 60 °C}
    stated:
      - {percent_change: [bench//scene/temperature/core/load, case//scene/temperature/core/load], is: -10 %} # expect
  `) },
  run: (context) => reportStated(context, 'temperature-percent', (w) => `says ${w.said} of a temperature in °C or °F, whose zero is arbitrary${w.suggest ? `; the difference is ${w.suggest}` : ''}`),
};
