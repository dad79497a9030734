// More decimals than the instrument can show.
import { instrumentOf, stepOfInstrument } from '../facts/index.js';
import { type Exact, show } from '../quantities/index.js';
import type { Instrument, Reading } from '../records/index.js';
import { type Check, type Context, yaml } from './check.js';
import { grouped } from './measured.js';
import { promisedRuns } from './promised-runs.js';
import { weighStated } from './stated.js';
import { count, derivation, listed, readingPlaces, runsOf, tell } from './words.js';

export const finerThanInstrument: Check = {
  name: 'finer-than-instrument',
  says: 'A reading is finer than the step of its instrument, or a stated mean has far more decimals than its runs.',
  why: 'A thermometer in whole degrees does not read 61.4 °C. The decimals were made up, averaged unseen, or come from another instrument. Averages that a log makes are left alone.',
  severity: 'warning',
  right: { record: yaml(`
    title: Right
    instruments: [{name: wall meter, measures: [power], resolution: 0.5 W}]
    setups: {bench: {name: Open bench}}
    readings:
      - {for: {setup: bench}, power/wall: {idle: 40.0 40.5 40.0 W}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    instruments: [{name: wall meter, measures: [power], resolution: 0.5 W}]
    setups: {bench: {name: Open bench}}
    readings:
      - {for: {setup: bench}, power/wall: {idle: 40.0 40.3 40.0 W}} # expect
      - {for: {setup: bench}, temperature/core: {idle: 38 38 39 °C}}
    stated:
      - {mean: [bench///temperature/core/idle], is: 38.3333 °C} # expect
  `) },
  run(context) {
    const { episode, facts } = context;
    const read = [...grouped(episode.readings.filter((r) => !r.constant && !r.aside && !r.log), (r) => r.key).values()].flatMap((all) => {
      const instrument = instrumentFor(episode.instruments, all[0]!);
      const fine = all.filter((r) => instrument && !isStep(r, instrument) && !isMeanOfRuns(all, episode));
      if (!instrument || fine.length === 0) return [];
      const step = instrument.resolution!;
      return [{
        place: fine[0]!.place, subject: fine[0]!.key, said: runsOf(fine), recorded: show(step.value, step.unit, step.decimals),
        message: `${tell(facts.about, fine[0]!.key)} says ${runsOf(fine)}; ${instrument.name} reads in steps of ${show(step.value, step.unit, step.decimals)} (${fine.length === all.length ? 'every run' : `run ${listed(fine.map((r) => r.run))}`})`,
        related: [{ place: instrument.place, label: instrument.name }, ...readingPlaces(fine.slice(1))],
      }];
    });
    const stated = weighStated(context).flatMap(({ stated: { quantity, where, valuePlace }, fact }) => {
      if (fact?.kind !== 'mean' || fact.readings.some((r) => r.log) || quantity.unit.id !== fact.unit.id) return [];
      const carried = Math.max(...fact.readings.map((r) => r.quantity.decimals));
      if (quantity.decimals <= carried + 2) return [];
      const said = show(quantity.value, quantity.unit, quantity.decimals);
      return [{
        place: valuePlace, subject: fact.id, said, recorded: fact.shown, suggest: fact.shown, derivation: derivation(fact), related: readingPlaces(fact.readings),
        message: `${where ? `${where}: ` : ''}says ${said}, ${count(quantity.decimals - carried, 'decimal')} more than its runs carry (${runsOf(fact.readings)})`,
      }];
    });
    return [...read, ...stated];
  },
};

/** The one that read it, where it states a step of that kind. */
export function instrumentFor(instruments: Context['episode']['instruments'], reading: Reading): Instrument | undefined {
  const instrument = instrumentOf(instruments, reading.key, reading.quantity.unit);
  return instrument && stepIn(instrument, reading) ? instrument : undefined;
}

/** The instrument's step as a difference in the reading's unit. */
export function stepIn(instrument: Instrument, { quantity }: Reading): Exact | undefined {
  return stepOfInstrument(instrument, quantity.unit);
}

/** One figure where the method speaks of several runs is their mean, and judged as such by impossible-mean. */
export function isMeanOfRuns(readings: readonly Reading[], episode: Context['episode']): boolean {
  return readings.length === 1 && (promisedRuns(episode)[0]?.runs ?? 1) > 1;
}

function isStep(reading: Reading, instrument: Instrument): boolean {
  const step = stepIn(instrument, reading)!;
  return step.sign() <= 0 || reading.quantity.value.over(step).d === 1n;
}
