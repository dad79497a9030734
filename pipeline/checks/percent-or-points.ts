// Percent said of percentage points, and the other way round.
import { type Check, yaml } from './check.js';
import { reportStated } from './stated.js';

export const percentOrPoints: Check = {
  name: 'percent-or-points',
  says: 'Percent is stated where it is percentage points, or points where it is percent.',
  why: 'From 80 % to 88 % is 8 points and 10 percent. Calling one the other changes the result.',
  severity: 'error',
  right: { record: yaml(`
    title: Right
    setups: {old: {name: Old supply}, new: {name: New supply}}
    workloads: {half: {name: Half load}}
    readings:
      - for: {setup: old, workload: half}
        efficiency/output: {load: 80 80 80 %}
      - for: {setup: new, workload: half}
        efficiency/output: {load: 88 88 88 %}
    stated:
      - {points: [new//half/efficiency/output/load, old//half/efficiency/output/load], is: 8 points}
      - {percent_change: [new//half/efficiency/output/load, old//half/efficiency/output/load], is: 10 %}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {old: {name: Old supply}, new: {name: New supply}}
    workloads: {half: {name: Half load}}
    readings:
      - for: {setup: old, workload: half}
        efficiency/output: {load: 80 80 80 %}
      - for: {setup: new, workload: half}
        efficiency/output: {load: 88 88 88 %}
    stated:
      - {percent_change: [new//half/efficiency/output/load, old//half/efficiency/output/load], is: 8 %} # expect
      - {points: [new//half/efficiency/output/load, old//half/efficiency/output/load], is: 8 %} # expect
  `) },
  run: (context) => reportStated(context, 'percent-or-points', (w) => `says ${w.said}${w.recorded ? `, the record gives ${w.recorded}` : ''}: ${w.slip?.says ?? w.why}`),
};
