// An instrument whose sheet speaks of another kind of quantity than it reads.
import { convert, differenceUnit, Exact, type Unit } from '../quantities/index.js';
import { type Instrument, splitKey } from '../records/index.js';
import { type Check, yaml } from './check.js';
import { listed } from './words.js';

export const instrumentUnit: Check = {
  name: 'instrument-unit',
  says: 'The resolution or the accuracy of an instrument is in a unit that none of its readings has.',
  why: 'Steps and limits of error count in the uncertainty of what an instrument reads. In another kind of unit they count nowhere, and figures look surer than they are.',
  severity: 'warning',
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    instruments: [{name: wall meter, measures: [power], resolution: 0.1 W, accuracy: ±(0.5 % + 2 digits)}]
    readings:
      - {for: {setup: bench}, power/wall: {idle: 40.1 40.3 40.2 W}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    instruments:
      - {name: wall meter, measures: [power], resolution: 0.1 V, accuracy: ±1 % of range 16 A} # expect
    readings:
      - {for: {setup: bench}, power/wall: {idle: 40.1 40.3 40.2 W}}
  `) },
  run({ episode: { instruments, readings } }) {
    return instruments.flatMap((instrument) => {
      const units = new Map(readings.filter((r) => !r.constant && reads(instrument, r.key)).map((r) => [r.quantity.unit.id, r.quantity.unit]));
      if (units.size === 0) return [];
      const fits = (u: Unit): boolean => [...units.values()].some((own) => convert(Exact.of(1), differenceUnit(u), differenceUnit(own)) !== undefined);
      const odd = [
        ...(instrument.resolution && !fits(instrument.resolution.unit) ? [{ what: 'resolution', unit: instrument.resolution.unit }] : []),
        ...(instrument.limits?.constant ?? []).filter((q) => !fits(q.unit)).map((q) => ({ what: 'accuracy', unit: q.unit })),
      ];
      if (odd.length === 0) return [];
      return [{
        place: instrument.place, subject: instrument.name,
        message: `${instrument.name} reads in ${listed([...units.values()].map((u) => u.symbol))}, and its ${listed(odd.map((o) => `${o.what} is in ${o.unit.symbol}`))}; it counts nowhere`,
      }];
    });
  },
};

function reads(instrument: Instrument, key: string): boolean {
  const at = splitKey(key);
  return !!at && [at.measure, `${at.measure}/${at.part}`].some((name) => instrument.measures.includes(name));
}
