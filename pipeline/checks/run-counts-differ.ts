// Fewer runs here than there.
import { type Check, yaml } from './check.js';
import { grouped, measured, quantityOf, testOf } from './measured.js';
import { count, listed, tell } from './words.js';

export const runCountsDiffer: Check = {
  name: 'run-counts-differ',
  says: 'A reading has fewer runs than the same reading of the other tests. A run set aside counts as a run.',
  why: 'A mean of two beside means of three weighs one bad run more, and often a run was forgotten in the table.',
  severity: 'warning',
  right: { record: yaml(`
    title: Right
    setups: {a: {name: Ash}, b: {name: Birch}, c: {name: Cedar}}
    readings:
      - {for: {setup: a}, power/wall: {idle: 40 41 40 W}}
      - {for: {setup: b}, power/wall: {idle: 44 45 44 W}}
      - {for: {setup: c}, power/wall: {idle: 47 47 46 W}}
  `) },
  wrong: { record: yaml(`
    title: Wrong
    setups: {a: {name: Ash}, b: {name: Birch}, c: {name: Cedar}}
    readings:
      - {for: {setup: a}, power/wall: {idle: 40 41 40 W}}
      - {for: {setup: b}, power/wall: {idle: 44 45 W}} # expect
      - {for: {setup: c}, power/wall: {idle: 47 47 46 W}}
  `) },
  run({ facts }) {
    const runs = (key: string): number => facts.readings(key, { aside: true }).length;
    const few = [...grouped(measured(facts), ({ at }) => quantityOf(at)).values()].flatMap((alike) => {
      const usual = mostCommon(alike.map(({ key }) => runs(key)));
      return alike.filter(({ key }) => runs(key) < usual).map((m) => ({ ...m, usual }));
    });
    return [...grouped(few, ({ at, key, usual }) => `${testOf(at)} ${runs(key)} ${usual}`).values()].map((all) => {
      const { key, at, readings, usual } = all[0]!;
      const also = all.length > 1 ? ` (and ${count(all.length - 1, 'reading')} more of this test)` : '';
      return {
        place: readings[0]!.place, subject: all.length > 1 ? testOf(at) : key, said: count(runs(key), 'run'), recorded: count(usual, 'run'),
        message: `${tell(facts.about, key)} has ${count(runs(key), 'run')} where its like have ${count(usual, 'run')}${also}: ${readings.length === 1 ? 'run' : 'runs'} ${listed(readings.map((r) => r.run))}`,
      };
    });
  },
};

/** The larger one where two are equally common. */
export function mostCommon(numbers: readonly number[]): number {
  const times = [...grouped(numbers, String).values()].sort((a, b) => b.length - a.length || b[0]! - a[0]!);
  return times[0]?.[0] ?? 0;
}
