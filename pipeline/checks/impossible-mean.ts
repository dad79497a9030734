// A mean that so many whole-number runs cannot have.
import { type Check, yaml } from './check.js';
import { reportStated } from './stated.js';
import { count } from './words.js';

export const impossibleMean: Check = {
  name: 'impossible-mean',
  says: 'A stated mean is one that the given number of whole-number runs cannot have, whatever they were.',
  why: 'Three whole degrees have a mean that ends in .0, .3 or .7. Anything else was typed wrong or belongs to other runs (Brown & Heathers 2017).',
  severity: 'error',
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, workload: scene}
        temperature/core: {load: 71 71 72 °C}
    stated:
      - {mean: [bench//scene/temperature/core/load], is: 71.3 °C}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, workload: scene}
        temperature/core: {load: 71 71 72 °C}
    stated:
      - {mean: [bench//scene/temperature/core/load], is: 71.5 °C} # expect
  `) },
  run: (context) => reportStated(context, 'impossible-mean', (w) => `says ${w.said}, a mean that ${count(w.fact!.readings.length, 'whole-number run')} cannot have; the record gives ${w.suggest} (${w.fact!.formula})`),
};
