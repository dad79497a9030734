// A level that the room itself nearly has.
import { backgroundOf, isFact } from '../facts/index.js';
import { showNumber } from '../quantities/index.js';
import { backgroundCorrection } from '../statistics/index.js';
import { type Check, yaml } from './check.js';
import { measured } from './measured.js';
import { brief } from './series.js';
import { readingPlaces, tell } from './words.js';

export const backgroundTooNear: Check = {
  name: 'background-too-near',
  says: 'A sound level stands less than 6 dB above its background.',
  why: 'The meter then hears the room as much as the thing; below 6 dB the level cannot be corrected any more and is only an upper bound (ISO 3744).',
  severity: 'warning',
  thresholds: ['background-too-near'],
  right: { record: yaml(`
    title: Right
    setups: {pump: {name: Pump}}
    workloads: {heater: {name: Heater}}
    readings:
      - for: {setup: pump, workload: heater}
        noise/pump: {load: 37.4 37.2 37.0 dB(A)}
        noise/background: {load: 24.0 24.1 24.0 dB(A)}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {pump: {name: Pump}}
    workloads: {heater: {name: Heater}}
    readings:
      - for: {setup: pump, workload: heater}
        noise/pump: {load: 27.4 27.2 27.0 dB(A)} # expect
        noise/background: {load: 24.0 24.1 24.0 dB(A)}
  `) },
  run({ facts, limits }) {
    return measured(facts).flatMap(({ key, readings, mean }) => {
      const near = mean?.unit.dimension === 'sound-level' ? backgroundOf(facts, key) : undefined;
      const room = near === undefined ? undefined : facts.value(near);
      if (!mean || !isFact(room) || room.unit.id !== mean.unit.id) return [];
      const above = mean.value.minus(room.value);
      if (above.compare(limits.exact('background-too-near')) >= 0) return [];
      const by = `${showNumber(above, mean.decimals)} dB`;
      const correction = above.sign() > 0 ? `; the background alone adds ${brief(backgroundCorrection(above.toNumber()))} dB` : '';
      return [{
        place: readings[0]!.place, subject: key, said: mean.shown, recorded: room.shown, derivation: `${mean.shown} − ${room.shown} = ${by}`,
        message: `${tell(facts.about, key)} says ${mean.shown}, ${by} above its background of ${room.shown}${correction}`, related: readingPlaces(room.readings, () => 'the background'),
      }];
    });
  },
};
