// Temperatures without a room.
import { type Check, yaml } from './check.js';
import { grouped, isHot, measured, testOf } from './measured.js';
import { tell } from './words.js';

export const roomMissing: Check = {
  name: 'room-missing',
  says: 'Temperatures stand in the record without the temperature of the room.',
  why: 'A core at 67 °C says little without the room: the same cooler in a warmer room reads higher by as much. Write `room: 21 °C`, or a reading of part room for each test.',
  severity: 'warning',
  right: { record: yaml(`
    title: Right
    room: 21 °C
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, workload: scene}, temperature/core: {load: 67 67 68 °C}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, workload: scene}, temperature/core: {load: 67 67 68 °C}} # expect
  `) },
  run({ episode, facts }) {
    const hot = measured(facts).filter(isHot);
    const bare = hot.filter(({ key }) => !facts.roomFor(key));
    if (bare.length === 0) return [];
    if (bare.length === hot.length) {
      const first = bare[0]!.readings[0]!;
      return [{ place: first.log ? episode.place : first.place, subject: 'room', message: 'temperatures are recorded and the temperature of the room is not; no rise over the room can be told' }];
    }
    return [...grouped(bare, ({ at }) => testOf({ ...at, workload: '' })).entries()].map(([test, all]) => ({
      place: all[0]!.readings[0]!.place, subject: test, message: `${tell(facts.about, all[0]!.key)} has no room temperature, and others have one`,
    }));
  },
};
