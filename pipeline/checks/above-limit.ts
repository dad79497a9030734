// A mean above the limit that the record declares.
import { isFact } from '../facts/index.js';
import { convert, Exact } from '../quantities/index.js';
import { type Check, yaml } from './check.js';
import { measured } from './measured.js';
import { readingPlaces, tell } from './words.js';

export const aboveLimit: Check = {
  name: 'above-limit',
  says: 'A reading is above the limit declared for it.',
  why: 'Either the limit did not hold, which is a result worth telling, or the limit or the reading was noted wrong.',
  severity: 'warning',
  thresholds: ['above-limit'],
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    settings: {low: {name: Low limit, kind: power-limit, limit: {power/board: 200 W}}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, setting: low, workload: scene}, power/board: {load: 199 200 201 W}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    settings: {low: {name: Low limit, kind: power-limit, limit: {power/board: 200 W}}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, setting: low, workload: scene}, power/board: {load: 212 213 212 W}} # expect
  `) },
  run({ facts, limits }) {
    return measured(facts).flatMap(({ key, readings, mean }) => {
      const limitKey = mean && facts.constantFor(key, 'limit');
      const limit = limitKey && facts.value(limitKey);
      if (!mean || !limit || !isFact(limit)) return [];
      const top = convert(limit.value, limit.unit, mean.unit);
      const logarithmic = mean.unit.dimension === 'temperature' || mean.unit.dimension === 'sound-level';
      const allowed = top && (logarithmic ? top : top.times(Exact.of(1).plus(limits.share('above-limit'))));
      if (!allowed || mean.value.compare(allowed) <= 0) return [];
      return [{
        place: readings[0]!.place, subject: key, said: mean.shown, recorded: limit.shown, derivation: mean.formula,
        message: `${tell(facts.about, key)} says ${mean.shown}, above its limit of ${limit.shown}`, related: readingPlaces(limit.readings, () => 'the limit'),
      }];
    });
  },
};
