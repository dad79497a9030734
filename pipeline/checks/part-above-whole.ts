// A part that is greater than the whole it belongs to.
import { convert } from '../quantities/index.js';
import { type Check, yaml } from './check.js';
import { grouped, measured, quantityOf, testOf } from './measured.js';
import { nameOf, readingPlaces, tell } from './words.js';

/** Parts that stand for the whole of what is measured, the outermost first. */
const wholes = ['wall', 'mains', 'input', 'total', 'system', 'whole', 'all'];
const additive = ['power', 'energy', 'mass', 'money', 'data'];

export const partAboveWhole: Check = {
  name: 'part-above-whole',
  says: 'A part has more power, energy or mass than the whole that it belongs to.',
  why: 'A card cannot draw more than the wall gives, and an output not more than the input: an efficiency above one. Two readings were swapped, or were not taken at the same time.',
  severity: 'error',
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, workload: scene}, power/wall: {load: 380 381 380 W}, power/board: {load: 248 248 248 W}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, workload: scene}
        power/wall: {load: 248 248 248 W}
        power/board: {load: 380 381 380 W} # expect
  `) },
  run({ facts }) {
    const fit = measured(facts).filter(({ mean }) => mean && additive.includes(mean.unit.dimension));
    return [...grouped(fit, ({ at }) => `${testOf(at)} ${quantityOf({ ...at, part: '' })}`).values()].flatMap((all) => {
      const whole = wholes.map((w) => all.find(({ at }) => at.part === w)).find((m) => m !== undefined);
      if (!whole) return [];
      return all.flatMap(({ key, readings, mean }) => {
        const own = key === whole.key ? undefined : convert(mean!.value, mean!.unit, whole.mean!.unit);
        if (!own || own.compare(whole.mean!.value) <= 0) return [];
        return [{
          place: readings[0]!.place, subject: key, said: mean!.shown, recorded: whole.mean!.shown,
          message: `${tell(facts.about, key)} says ${mean!.shown}, more than the whole: ${whole.mean!.shown} of ${nameOf(facts.about, 'part', whole.at.part)}`,
          slip: 'the two may have changed places', related: readingPlaces(whole.readings, (r) => `the whole, run ${r.run}`),
        }];
      });
    });
  },
};
