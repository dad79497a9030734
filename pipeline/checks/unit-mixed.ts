// One quantity in units of two kinds.
import { differenceUnit, findUnit } from '../quantities/index.js';
import { commonMeasures, type Reading, splitKey } from '../records/index.js';
import { type Check, yaml } from './check.js';
import { grouped } from './measured.js';
import { nameOf, readingPlaces, tell } from './words.js';

/** Measures whose name leaves the kind of unit open: a fan speed may be a share, a ratio a factor. */
const free = new Set(['ratio', 'price', 'fan_speed', 'pump_speed', 'flow', 'pressure', 'utilisation', 'efficiency']);

export const unitMixed: Check = {
  name: 'unit-mixed',
  says: 'A measure has a unit of another kind than its name or its other readings, or the runs of one reading have different units.',
  why: 'Watts beside watt-hours, or kelvin beside °C, cannot be averaged or compared; one of them was typed wrong.',
  severity: 'error',
  right: { record: yaml(`
    title: Right
    setups: {a: {name: Ash}, b: {name: Birch}}
    readings:
      - {for: {setup: a}, power/wall: {idle: 40 41 40 W}, energy/wall: {idle: 20 20 21 Wh}}
      - {for: {setup: b}, power/wall: {idle: 44 45 44 W}, energy/wall: {idle: 22 22 22 Wh}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {a: {name: Ash}, b: {name: Birch}, c: {name: Cedar}}
    readings:
      - {for: {setup: a}, power/wall: {idle: 40 41 40 W}}
      - {for: {setup: b}, power/wall: {idle: 44 45 44 Wh}} # expect
      - {for: {setup: c}, power/wall: {idle: [42 W, 0.043 kW, 42 W]}} # expect
      - {for: {setup: c}, voltage/rail: {idle: 5.02 5.02 5.01 A}} # expect
  `) },
  run({ episode, facts }) {
    const kind = (r: Reading): string => r.quantity.unit.dimension;
    const counted = episode.readings.filter((r) => !r.aside && !r.key.endsWith('/offset'));
    const kinds = [...grouped(counted, (r) => `${splitKey(r.key)!.measure}/${splitKey(r.key)!.part}`).values()].flatMap((all) => {
      const groups = [...grouped(all, kind).values()].sort((a, b) => b.length - a.length);
      const usual = groups[0]![0]!;
      return groups.slice(1).flatMap((odd) => [...grouped(odd, (r) => r.key).values()].map(([r]) => ({
        place: r!.place, subject: r!.key, said: r!.quantity.unit.symbol,
        message: `${tell(facts.about, r!.key)} is given in ${r!.quantity.unit.symbol}, the other readings of it in ${usual.quantity.unit.symbol}: units of two kinds`,
        related: readingPlaces([usual], (u) => tell(facts.about, u.key)),
      })));
    });
    const runs = [...grouped(counted, (r) => r.key).values()].flatMap((all) => {
      const odd = all.find((r) => r.quantity.unit.id !== all[0]!.quantity.unit.id && kind(r) === kind(all[0]!));
      return odd ? [{
        place: odd.place, subject: odd.key, said: odd.quantity.unit.symbol, suggest: all[0]!.quantity.unit.symbol,
        message: `${tell(facts.about, odd.key)} has runs in ${all[0]!.quantity.unit.symbol} and in ${odd.quantity.unit.symbol}; write them all in one unit`,
        related: readingPlaces([all[0]!]),
      }] : [];
    });
    const told = new Set(kinds.map((k) => k.subject));
    const named = [...grouped(counted.filter((r) => !r.constant && !told.has(r.key)), (r) => r.key).values()].flatMap(([r]) => {
      const measure = splitKey(r!.key)!.measure;
      const usual = episode.measures.get(measure)?.unit ?? (free.has(measure) ? undefined : findUnit(commonMeasures.get(measure)?.unit ?? ''));
      if (!usual || kind(r!) === usual.dimension || kind(r!) === differenceUnit(usual).dimension) return [];
      return [{ place: r!.place, subject: r!.key, said: r!.quantity.unit.symbol, message: `${tell(facts.about, r!.key)} is given in ${r!.quantity.unit.symbol}, which is no unit of ${nameOf(facts.about, 'measure', measure).toLowerCase()}` }];
    });
    return [...kinds, ...named, ...runs];
  },
};
