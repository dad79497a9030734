// A low frame rate of which nobody says which low it is.
import { type Check, yaml } from './check.js';
import { grouped, measured } from './measured.js';
import { tell } from './words.js';

const low = /(^|[-_ ])(low|lows|\d*pct|p\d+|percentile)([-_ ]|$)/;

const record = (title: string, measure: string, mark: string) => yaml(`
    title: ${title}
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    measures: {frame_rate: ${measure}}
    readings:
      - for: {setup: bench, workload: scene}
        frame_rate/average: {load: 96.2 96.1 96.4 fps}
        frame_rate/low: {load: 49.8 49.7 49.9 fps}${mark}
`);

export const lowUndefined: Check = {
  name: 'low-undefined',
  says: 'A low frame rate does not say how it is defined.',
  why: 'At least four figures go by that name, and on one log they may be 25, 49.5, 49.8 and 50 frames per second: the mean rate of the slowest hundredth of the frames or of the time, the rate at a percentile of frame times, a percentile of rates. Give the measure a definition, or take the low from a frame log, which states it.',
  severity: 'note',
  right: { record: record('Right', '{definition: "low: mean rate of the slowest 1 % of frames"}', '') },
  wrong: { record: record('Wrong', '{better: higher}', ' # expect') },
  run({ facts }) {
    const lows = measured(facts).filter(({ at, mean }) => mean?.unit.dimension === 'frame-rate' && (low.test(at.part) || low.test(at.measure)) && !facts.about.measures.get(at.measure)?.definition);
    return [...grouped(lows, ({ at }) => `${at.measure}/${at.part}`).values()].map((all) => {
      const { key, readings, mean } = all[0]!;
      return {
        place: readings[0]!.place, subject: key, said: mean!.shown,
        message: `Nothing says how ${tell(facts.about, key)} is defined; give the measure a definition, such as "low: mean rate of the slowest 1 % of frames"`,
        related: all.slice(1, 4).map((m) => ({ place: m.readings[0]!.place, label: 'so with this' })),
      };
    });
  },
};
