// Sound levels averaged as plain numbers.
import { type Check, yaml } from './check.js';
import { reportStated } from './stated.js';

export const decibelsAveraged: Check = {
  name: 'decibels-averaged',
  says: 'A stated mean of sound levels is the arithmetic one, and the mean of their energies is another.',
  why: 'Decibels are logarithms: the mean level of 40 and 50 dB is 47.4 dB, not 45 (mean level of ISO 3744). For runs within a decibel the two agree.',
  severity: 'error',
  right: { record: yaml(`
    title: Right
    setups: {near: {name: Near side}, far: {name: Far side}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: near, workload: scene}
        noise/card: {load: "50 dB(A)"}
      - for: {setup: far, workload: scene}
        noise/card: {load: "40 dB(A)"}
    stated:
      - {mean: [near//scene/noise/card/load], is: 50 dB(A)}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {near: {name: Near side}, far: {name: Far side}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: near, workload: scene}
        noise/card: {load: "50 dB(A)"}
      - for: {setup: far, workload: scene}
        noise/card: {load: "40 dB(A)"}
    stated:
      - {mean: [near//scene/noise/card/load, far//scene/noise/card/load], is: 45 dB(A)} # expect
  `) },
  run: (context) => reportStated(context, 'decibels', (w) => `says ${w.said}, the arithmetic mean of decibels; the mean level is ${w.suggest} (${w.why})`),
};
