// The idle before one run is not the idle before the others.
import { isIdle } from '../facts/index.js';
import { differenceUnit, Exact, show } from '../quantities/index.js';
import { type Check, type Context, yaml } from './check.js';
import { grouped, isRoom, type Measured, measured, testOf } from './measured.js';
import { type OddRun, oddRun } from './odd-run.js';
import { stepOf } from './run-spread.js';
import { listed, readingPlaces, runsOf, tell, what } from './words.js';

export const idleUnlike: Check = {
  name: 'idle-unlike',
  says: 'The idle before one run differs from the idle before all the others.',
  why: 'A part that has not cooled down, or has not warmed up yet, starts its run from another place; a rise from idle then differs by as much. Idles that wander without one being odd are told by runs-disagree.',
  severity: 'warning',
  thresholds: ['idle-unlike-temperature', 'idle-unlike'],
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    readings:
      - {for: {setup: bench}, temperature/core: {idle: 38 38 39 °C}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    readings:
      - {for: {setup: bench}, temperature/core: {idle: 37 44 43 °C}} # expect
  `) },
  run(context) {
    const odd = measured(context.facts).flatMap((m) => {
      const one = isIdle(m.at.phase) ? idleUnlikeOf(m, context) : undefined;
      return one ? [{ ...m, one }] : [];
    });
    return [...grouped(odd, ({ at, one }) => `${testOf(at)} ${one.run.run}`).values()].map((all) => {
      const { key, mean, one } = all[0]!;
      const gap = show(one.gap, differenceUnit(mean!.unit), mean!.decimals);
      const also = all.slice(1).map((m) => what(context.facts.about, m.key));
      return {
        place: one.run.place, subject: key, said: runsOf([one.run]), recorded: runsOf(one.others), derivation: `${gap} from the nearest of the others`,
        message: `${tell(context.facts.about, key)}: before run ${one.run.run} it was ${runsOf([one.run])} ${mean!.unit.symbol}, before ${one.others.length > 2 ? 'the others' : `runs ${listed(one.others.map((r) => r.run))}`} ${listed(one.others.map((r) => runsOf([r])))}${also.length ? `; so with ${listed(also)}` : ''}`,
        ...(mean!.unit.dimension === 'temperature' && { slip: 'the part had not come to rest between the runs' }), related: readingPlaces(one.others),
      };
    });
  },
};

/** The odd run of an idle reading, where it is further off than the threshold. */
export function idleUnlikeOf({ at, readings, mean }: Measured, context: Context): OddRun | undefined {
  const odd = mean && oddRun(readings);
  if (!odd || mean.value.sign() === 0 || isRoom(at)) return undefined;
  const { limits } = context;
  const isTemperature = mean.unit.dimension === 'temperature';
  if (!isTemperature && !['power', 'current', 'rotation', 'sound-level'].includes(mean.unit.dimension)) return undefined;
  const kelvin = limits.exact('idle-unlike-temperature').times(mean.unit.id === 'degF' ? Exact.of(9, 5) : Exact.of(1));
  const allowed = isTemperature ? kelvin : mean.value.abs().times(limits.share('idle-unlike'));
  return odd.gap.compare(allowed) > 0 && odd.gap.compare(stepOf(readings, context)) > 0 ? odd : undefined;
}
