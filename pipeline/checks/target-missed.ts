// A target that the readings do not meet.
import { type Fact, isFact } from '../facts/index.js';
import { convert, type Exact, show, differenceUnit } from '../quantities/index.js';
import { type Check, type Context, yaml } from './check.js';
import { isLoad, measured } from './measured.js';
import { readingPlaces, tell } from './words.js';

export const targetMissed: Check = {
  name: 'target-missed',
  says: 'A reading under load does not meet the target declared for it.',
  why: 'A clock, a voltage or a noise level that was set but not reached is not the setting that the name promises.',
  severity: 'warning',
  thresholds: ['target-missed', 'target-missed-level', 'target-missed-temperature'],
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    settings: {uv: {name: Undervolt, kind: undervolt, target: {voltage/core: 0.900 V, frequency/core: 2400 MHz}}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, setting: uv, workload: scene}, voltage/core: {load: 0.900 0.906 0.900 V}, frequency/core: {load: 2395 2400 2405 MHz}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    settings: {uv: {name: Undervolt, kind: undervolt, target: {voltage/core: 0.900 V, frequency/core: 2400 MHz}}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, setting: uv, workload: scene}
        voltage/core: {load: 0.950 0.956 0.950 V} # expect
        frequency/core: {load: 2250 2265 2250 MHz} # expect
  `) },
  run({ facts, limits }) {
    return measured(facts).flatMap(({ key, at, readings, mean }) => {
      const targetKey = mean && isLoad(at) ? facts.constantFor(key, 'target') : undefined;
      const target = targetKey && facts.value(targetKey);
      if (!mean || !target || !isFact(target)) return [];
      const goal = convert(target.value, target.unit, mean.unit);
      if (!goal) return [];
      const off = mean.value.minus(goal);
      if (off.abs().compare(allowed(mean, goal, limits)) <= 0) return [];
      if (off.sign() === reachedAt[mean.unit.dimension as 'frequency']) return [];
      const short = show(off.abs(), differenceUnit(mean.unit), mean.decimals);
      return [{
        place: readings[0]!.place, subject: key, said: mean.shown, recorded: target.shown, derivation: `${mean.shown} − ${target.shown}`,
        message: `${tell(facts.about, key)} says ${mean.shown}, ${short} ${off.sign() < 0 ? 'below' : 'above'} its target of ${target.shown}`,
        related: readingPlaces(target.readings, () => 'the target'),
      }];
    });
  },
};

function allowed(mean: Fact, goal: Exact, limits: Context['limits']): Exact {
  if (mean.unit.dimension === 'sound-level') return limits.exact('target-missed-level');
  if (mean.unit.dimension === 'temperature' || mean.unit.dimension === 'temperature-difference') return limits.exact('target-missed-temperature');
  return goal.abs().times(limits.share('target-missed'));
}

/** A clock above its target has reached it, and so has a temperature below its own. */
const reachedAt = { frequency: 1, 'frame-rate': 1, temperature: -1 };
