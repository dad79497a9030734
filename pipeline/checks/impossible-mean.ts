// A mean that so many whole-number runs cannot have.
import { show } from '../quantities/index.js';
import { type Check, type Context, type Report, yaml } from './check.js';
import { instrumentFor, isMeanOfRuns, stepIn } from './finer-than-instrument.js';
import { meanIsPossible } from './grim.js';
import { measured } from './measured.js';
import { promisedRuns } from './promised-runs.js';
import { reportStated } from './stated.js';
import { count, tell } from './words.js';

export const impossibleMean: Check = {
  name: 'impossible-mean',
  says: 'A mean, stated or entered, is one that the given number of runs cannot have, whatever they were.',
  why: 'Three whole degrees have a mean that ends in .0, .3 or .7. Anything else was typed wrong or belongs to other runs (Brown & Heathers 2017).',
  severity: 'error',
  right: { record: yaml(`
    title: Right
    method: [Each figure is the mean of three runs.]
    instruments: [{name: probe, measures: [temperature/memory], resolution: 1 °C}]
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - {for: {setup: bench, workload: scene}, temperature/core: {load: 71 71 72 °C}, temperature/memory: {load: 80.67 °C}}
    stated:
      - {mean: [bench//scene/temperature/core/load], is: 71.3 °C}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    method: [Each figure is the mean of three runs.]
    instruments: [{name: probe, measures: [temperature/memory], resolution: 1 °C}]
    setups: {bench: {name: Open bench}}
    workloads: {scene: {name: Test scene}}
    readings:
      - for: {setup: bench, workload: scene}
        temperature/core: {load: 71 71 72 °C}
        temperature/memory: {load: 80.5 °C} # expect
    stated:
      - {mean: [bench//scene/temperature/core/load], is: 71.5 °C} # expect
  `) },
  run: (context) => [
    ...entered(context),
    ...reportStated(context, 'impossible-mean', (w) => `says ${w.said}, a mean that ${count(w.fact!.readings.length, 'whole-number run')} cannot have; the record gives ${w.suggest} (${w.fact!.formula})`),
  ],
};

/** A single figure that is the mean of as many runs as the method says, each a whole number of the instrument's steps. */
function entered({ episode, facts }: Context): Report[] {
  const runs = promisedRuns(episode)[0]?.runs ?? 1;
  return measured(facts).flatMap(({ key, readings }) => {
    const [only] = readings;
    const instrument = !only!.log && isMeanOfRuns(readings, episode) ? instrumentFor(episode.instruments, only!) : undefined;
    const step = instrument && stepIn(instrument, only!);
    const { value, decimals, unit } = only!.quantity;
    if (!instrument || !step || step.sign() <= 0 || meanIsPossible(value, decimals, runs, step)) return [];
    const said = show(value, unit, decimals);
    return [{
      place: only!.place, subject: key, said, recorded: `steps of ${show(step, unit, decimals)}`, derivation: `mean of ${count(runs, 'run')}, each in steps of ${show(step, unit, decimals)}`,
      message: `${tell(facts.about, key)} says ${said}, a mean that ${count(runs, 'run')} in steps of ${show(instrument.resolution!.value, instrument.resolution!.unit, instrument.resolution!.decimals)} cannot have`,
      related: [{ place: instrument.place, label: instrument.name }],
    }];
  });
}
