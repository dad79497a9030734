// A power limit that never acts.
import { isFact } from '../facts/index.js';
import { convert, show, unit } from '../quantities/index.js';
import { type Check, yaml } from './check.js';
import { grouped, isLoad, measured } from './measured.js';
import { nameOf, readingPlaces, tell } from './words.js';

export const limitNotReached: Check = {
  name: 'limit-not-reached',
  says: 'The power of a power-limit setting stays well below the limit in every workload.',
  why: 'A limit that is not reached limits nothing; its results are those of the setting without it.',
  severity: 'note',
  thresholds: ['limit-not-reached'],
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    settings: {low: {name: Low limit, kind: power-limit, limit: {power/board: 200 W}}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, setting: low, workload: scene}, power/board: {load: 199 200 199 W}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    settings: {low: {name: Low limit, kind: power-limit, limit: {power/board: 200 W}}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, setting: low, workload: scene}, power/board: {load: 150 151 150 W}} # expect
  `) },
  run({ episode, facts, limits }) {
    const loads = measured(facts).filter(({ at, mean }) => isLoad(at) && mean?.unit.dimension === 'power' && episode.settings.get(at.setting)?.kind === 'power-limit');
    return [...grouped(loads, ({ at }) => `${at.setup}/${at.setting}/${at.part}`).values()].flatMap((all) => {
      const most = all.reduce((a, b) => (b.mean!.value.compare(a.mean!.value) > 0 ? b : a));
      const limitKey = facts.constantFor(most.key, 'limit');
      const limit = limitKey && facts.value(limitKey);
      if (!limit || !isFact(limit)) return [];
      const power = convert(most.mean!.value, most.mean!.unit, limit.unit);
      if (!power || power.compare(limit.value.times(limits.share('limit-not-reached'))) >= 0) return [];
      const share = show(power.over(limit.value).over(unit('%').factor), unit('%'), 0);
      return [{
        place: most.readings[0]!.place, subject: most.key, said: most.mean!.shown, recorded: limit.shown, derivation: `${most.mean!.shown} ÷ ${limit.shown} = ${share}`,
        message: `${tell(facts.about, most.key)} says ${most.mean!.shown}, and ${nameOf(facts.about, 'setting', most.at.setting)} allows ${limit.shown}: the limit did not act`,
        related: readingPlaces(limit.readings, () => 'the limit'),
      }];
    });
  },
};
