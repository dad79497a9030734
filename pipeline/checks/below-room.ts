// Nothing that is cooled with air is colder than the air.
import { isFact } from '../facts/index.js';
import { convert, unit } from '../quantities/index.js';
import { type Check, yaml } from './check.js';
import { isHot, measured } from './measured.js';
import { readingPlaces, tell } from './words.js';

export const belowRoom: Check = {
  name: 'below-room',
  says: 'A temperature is below the room temperature of its test.',
  why: 'Without a chiller nothing gets colder than the room; the sensor, the room or the unit is wrong.',
  severity: 'error',
  thresholds: ['below-room'],
  right: { record: yaml(`
    title: Right
    room: 21 °C
    setups: {bench: {name: Open bench}}
    readings:
      - {for: {setup: bench}, temperature/core: {idle: 28 28 28 °C}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    room: 21 °C
    setups: {bench: {name: Open bench}}
    readings:
      - {for: {setup: bench}, temperature/core: {idle: 18 18 18 °C}} # expect
  `) },
  run({ facts, limits }) {
    return measured(facts).filter(isHot).flatMap(({ key, readings, mean }) => {
      const roomKey = facts.roomFor(key);
      const room = roomKey && facts.value(roomKey);
      if (!mean || !room || !isFact(room)) return [];
      const own = convert(mean.value, mean.unit, unit('degC'))!;
      const air = convert(room.value, room.unit, unit('degC'));
      if (!air || own.compare(air.minus(limits.exact('below-room'))) >= 0) return [];
      return [{
        place: readings[0]!.place, subject: key, said: mean.shown, recorded: room.shown,
        message: `${tell(facts.about, key)} says ${mean.shown}, below the room's ${room.shown}`, related: readingPlaces(room.readings, () => 'the room'),
      }];
    });
  },
};
