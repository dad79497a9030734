// Shares that cannot be.
import { type Check, yaml } from './check.js';
import { measured } from './measured.js';
import { tell } from './words.js';

export const shareOutOfRange: Check = {
  name: 'share-out-of-range',
  says: 'A utilisation, an efficiency, a duty or a humidity is below 0 % or above 100 %.',
  why: 'These are shares of a whole. More than all of it is a typing mistake or another quantity.',
  severity: 'error',
  thresholds: ['share-range'],
  right: { record: yaml(`
    title: Right
    setups: {bench: {name: Open bench}}
    readings:
      - {for: {setup: bench}, efficiency/output: {load: 91.2 91.3 91.2 %}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {bench: {name: Open bench}}
    readings:
      - {for: {setup: bench}, efficiency/output: {load: 91.2 191.3 91.2 %}} # expect
  `) },
  run({ facts, limits }) {
    const range = limits.range('share-range');
    return measured(facts).flatMap(({ key, at, readings }) => {
      if (!/utili[sz]ation|efficiency|duty|usage|humidity|occupancy/.test(`${at.measure} ${at.part}`)) return [];
      const odd = readings.find(({ quantity: { value, unit } }) => unit.dimension === 'share' && (value.times(unit.factor).compare(range.low) < 0 || value.times(unit.factor).compare(range.high) > 0));
      if (!odd) return [];
      const said = `${odd.quantity.value.toFixed(odd.quantity.decimals)} ${odd.quantity.unit.symbol}`;
      return [{ place: odd.place, subject: key, said, recorded: range.written, message: `${tell(facts.about, key)} says ${said} in run ${odd.run}; it lies within ${range.written}` }];
    });
  },
};
