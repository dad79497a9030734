// Under load, heat and power go up.
import { isFact } from '../facts/index.js';
import { convert } from '../quantities/index.js';
import { type Check, yaml } from './check.js';
import { isLoad, isRoom, measured } from './measured.js';
import { readingPlaces, tell } from './words.js';

export const loadNotAboveIdle: Check = {
  name: 'load-not-above-idle',
  says: 'A temperature, a power or a current under load is not above the same at idle.',
  why: 'Work makes heat. Where it does not, the phases were swapped, the workload did not start, or the sensor is another one.',
  severity: 'error',
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench}, temperature/core: {idle: 38 38 39 °C}}
      - {for: {setup: bench, workload: scene}, temperature/core: {load: 67 67 68 °C}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench}, temperature/core: {idle: 67 67 68 °C}}
      - {for: {setup: bench, workload: scene}, temperature/core: {load: 38 38 39 °C}} # expect
  `) },
  run({ facts }) {
    return measured(facts).flatMap(({ key, at, readings, mean }) => {
      if (!mean || !isLoad(at) || isRoom(at) || /cool|off|standby|sleep|rest|start/.test(at.phase) || /inlet|intake|outside/.test(at.part)) return [];
      if (!['temperature', 'power', 'current'].includes(mean.unit.dimension)) return [];
      const idleKey = facts.idleOf(key);
      const idle = idleKey && facts.value(idleKey);
      if (!idle || !isFact(idle)) return [];
      const low = convert(idle.value, idle.unit, mean.unit);
      if (!low || mean.value.compare(low) > 0) return [];
      return [{
        place: readings[0]!.place, subject: key, said: mean.shown, recorded: idle.shown,
        message: `${tell(facts.about, key)} says ${mean.shown}, not above the ${idle.shown} at idle`,
        slip: 'idle and load may have changed places', related: readingPlaces(idle.readings, (r) => `idle, run ${r.run}`),
      }];
    });
  },
};
