// A level that could be freed of its background, and is told with it.
import { backgroundOf, isFact } from '../facts/index.js';
import { show, showNumber } from '../quantities/index.js';
import { type Check, yaml } from './check.js';
import { measured } from './measured.js';
import { readingPlaces, tell } from './words.js';

const record = (title: string, level: string) => yaml(`
    title: ${title}
    setups: {pump: {name: Pump}}
    workloads: {heater: {name: Heater}}
    readings:
      - for: {setup: pump, workload: heater}
        noise/pump: {load: ${level}
        noise/background: {load: 24.0 24.1 24.0 dB(A)}
`);

export const backgroundAdds: Check = {
  name: 'background-adds',
  says: 'A sound level holds half a decibel or more of its background.',
  why: 'From 6 dB above the background on a level can be corrected (ISO 3744): at 6 dB the background adds 1.3 dB, at 10 dB still 0.5 dB. Beside a quieter thing, whose level holds more of it, the difference comes out too small.',
  severity: 'note',
  thresholds: ['background-adds'],
  right: { record: record('Right', '37.4 37.2 37.0 dB(A)}') },
  wrong: { record: record('Wrong', '32.4 32.2 32.0 dB(A)} # expect') },
  run({ facts, limits }) {
    return measured(facts).flatMap(({ key, readings, mean }) => {
      const room = mean?.unit.dimension === 'sound-level' ? backgroundOf(facts, key) : undefined;
      const alone = room === undefined ? undefined : facts.derive('without_background', [key, room]);
      const background = room === undefined ? undefined : facts.value(room);
      if (!mean || !isFact(alone) || !isFact(background)) return [];
      const adds = mean.value.minus(alone.value);
      if (adds.compare(limits.exact('background-adds')) < 0) return [];
      const suggest = show(alone.value, alone.unit, alone.decimals);
      return [{
        place: readings[0]!.place, subject: key, said: mean.shown, recorded: suggest, derivation: alone.formula,
        message: `${tell(facts.about, key)} says ${mean.shown}, of which its background of ${background.shown} adds ${showNumber(adds, 1)} dB; without it the level is ${suggest}`,
        related: readingPlaces(background.readings, () => 'the background'),
      }];
    });
  },
};
