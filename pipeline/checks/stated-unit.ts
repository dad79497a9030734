// A stated value in a unit that it cannot have.
import { type Check, yaml } from './check.js';
import { reportStated } from './stated.js';

export const statedUnit: Check = {
  name: 'stated-unit',
  says: 'A stated value has a unit that the readings do not have, or the number is right in another unit.',
  why: 'Volts told as millivolts, watts as watt-hours or gigahertz as megahertz are wrong a thousandfold, and read past easily.',
  severity: 'error',
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, workload: scene}
        frequency/core: {load: 2450 2450 2450 MHz}
    stated:
      - {mean: [bench//scene/frequency/core/load], is: 2.45 GHz}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, workload: scene}
        frequency/core: {load: 2450 2450 2450 MHz}
        power/board: {load: 248 248 248 W}
    stated:
      - {mean: [bench//scene/frequency/core/load], is: 2.45 MHz} # expect
      - {mean: [bench//scene/power/board/load], is: 248 Wh} # expect
  `) },
  run: (context) => reportStated(context, 'unit', (w) => `says ${w.said}, the record gives ${w.recorded}: ${w.slip ? 'the number is right and the unit is not' : `${w.stated.quantity.unit.symbol || 'no unit'} is no unit of it`}`),
};
